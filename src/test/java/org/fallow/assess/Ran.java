package org.fallow.assess;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * What the command answered.
 *
 * @param code exit code
 * @param printed on standard output
 * @param said on standard error
 */
record Ran(int code, String printed, String said) {

	static Ran assess(String... args) {
		StringWriter out = new StringWriter();
		StringWriter err = new StringWriter();
		int code = AssessCommand.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
		return new Ran(code, out.toString(), err.toString());
	}

}
