package org.fallow.platform;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;

/** Says a {@link StartFailure} in its own sentence. */
@Order(Ordered.HIGHEST_PRECEDENCE)
class StartFailureAnalyzer extends AbstractFailureAnalyzer<StartFailure> {

	@Override
	protected FailureAnalysis analyze(Throwable rootFailure, StartFailure failure) {
		return new FailureAnalysis(failure.sentence(), null, failure);
	}

}
