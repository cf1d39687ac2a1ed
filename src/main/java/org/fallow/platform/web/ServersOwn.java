package org.fallow.platform.web;

import java.io.IOException;

import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;

/**
 * Answers what the server itself refused, such as an address or a header that is none: a
 * sentence under the headers of every page, and a line in the log.
 */
class ServersOwn extends ErrorReportValve {

	private final ShortAnswer answer;

	ServersOwn(ShortAnswer answer) {
		this.answer = answer;
	}

	@Override
	protected void report(Request request, Response response, @Nullable Throwable cause) {
		int status = response.getStatus();
		if (status < HttpStatus.BAD_REQUEST.value() || response.getContentWritten() > 0
				|| !response.setErrorReported()) {
			return;
		}
		Failure failure = Failure.of(status, String.valueOf(request.getMethod()), null, cause).after(request);
		if (cause == null) {
			// what broke was logged where it broke
			failure.log();
		}
		try {
			this.answer.write(failure, request, response.getResponse());
		}
		catch (IOException | IllegalStateException ex) {
			// whoever asked is gone, or was answered already
			response.setSuspended(true);
		}
	}

}
