package org.fallow.platform;

import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.boot.diagnostics.FailureAnalysisReporter;

/**
 * Prints why the start failed on standard error, without a stack trace; Spring Boot's own
 * report is switched off in {@code application.properties}.
 */
class OneSentenceReporter implements FailureAnalysisReporter {

	@Override
	public void report(FailureAnalysis analysis) {
		System.err.println(analysis.getDescription());
		if (analysis.getAction() != null) {
			System.err.println(analysis.getAction());
		}
	}

}
