package org.fallow.platform;

import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;

/**
 * Says in one sentence why a configured database cannot be used: it does not answer, it
 * refuses the sign-in, it does not exist, or its disk is full. Any other database error
 * keeps its stack trace.
 */
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
class DatabaseFailureAnalyzer extends AbstractFailureAnalyzer<PSQLException> {

	private final Environment environment;

	DatabaseFailureAnalyzer(Environment environment) {
		this.environment = environment;
	}

	@Override
	protected @Nullable FailureAnalysis analyze(Throwable rootFailure, PSQLException failure) {
		String code = code(String.valueOf(failure.getSQLState()));
		if (code == null) {
			return null;
		}
		return new FailureAnalysis(StartSentences.sentence(code, address()), null, failure);
	}

	private static @Nullable String code(String sqlState) {
		if (sqlState.startsWith("08")) {
			return "start.database-does-not-answer";
		}
		if (sqlState.startsWith("28")) {
			return "start.database-refuses-sign-in";
		}
		return switch (sqlState) {
			case "3D000" -> "start.database-does-not-exist";
			case "53100" -> "start.database-disk-full";
			default -> null;
		};
	}

	/** The configured address up to its parameters, which may hold a password. */
	private String address() {
		String url = this.environment.getProperty("spring.datasource.url", "");
		int parameters = url.indexOf('?');
		return (parameters < 0) ? url : url.substring(0, parameters);
	}

}
