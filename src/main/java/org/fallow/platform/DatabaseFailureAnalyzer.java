package org.fallow.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;
import org.postgresql.util.PSQLException;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;

/**
 * Says in one sentence why the database cannot be used: it does not answer, has no
 * connection left, refuses the sign-in or what a role wants to do, does not exist, or its
 * disk is full. Any other database error keeps its stack trace.
 */
@Order(Ordered.HIGHEST_PRECEDENCE + 1)
class DatabaseFailureAnalyzer extends AbstractFailureAnalyzer<PSQLException> {

	/** Being shut down, killed, or starting. */
	private static final Set<String> AWAY = Set.of("57P01", "57P02", "57P03");

	private final Environment environment;

	DatabaseFailureAnalyzer(Environment environment) {
		this.environment = environment;
	}

	@Override
	protected @Nullable FailureAnalysis analyze(Throwable rootFailure, PSQLException failure) {
		String state = String.valueOf(failure.getSQLState());
		String sentence = NoDatabaseConfigured.in(this.environment) ? ofOwn(state) : ofConfigured(state);
		return (sentence == null) ? null : new FailureAnalysis(sentence, null, failure);
	}

	private @Nullable String ofConfigured(String state) {
		String code = code(state);
		return (code == null) ? null : StartSentences.sentence(code, address());
	}

	private static @Nullable String code(String state) {
		if (isAway(state)) {
			return "start.database-does-not-answer";
		}
		if (state.startsWith("28")) {
			return "start.database-refuses-sign-in";
		}
		return switch (state) {
			case "3D000" -> "start.database-does-not-exist";
			case "42501", "42704" -> "start.database-refuses-role";
			case "53100" -> "start.database-disk-full";
			case "53300" -> "start.database-no-connections";
			default -> null;
		};
	}

	private @Nullable String ofOwn(String state) {
		String home = HomeChoice.from(this.environment).folder().toString();
		if (isAway(state)) {
			Path log = Path.of(home, "database.log");
			return saysDiskFull(log) ? StartSentences.sentence("start.disk-quota", home)
					: StartSentences.sentence("start.own-database-failed", log.toString());
		}
		if (state.startsWith("28")) {
			return StartSentences.sentence("start.own-database-refuses", home + "/passwords.properties");
		}
		return state.equals("53100") ? StartSentences.sentence("start.disk-quota", home) : null;
	}

	/**
	 * Whether this start's database ended for want of room: a full disk in the middle of
	 * a migration stops it whole.
	 */
	static boolean saysDiskFull(Path log) {
		try (Stream<String> lines = Files.lines(log, StandardCharsets.ISO_8859_1)) {
			return lines.anyMatch(Home::saysDiskFull);
		}
		catch (IOException | UncheckedIOException ex) {
			return false;
		}
	}

	private static boolean isAway(String state) {
		return state.startsWith("08") || AWAY.contains(state);
	}

	/** The configured address up to its parameters, which may hold a password. */
	private String address() {
		String url = this.environment.getProperty("spring.datasource.url", "");
		int parameters = url.indexOf('?');
		return (parameters < 0) ? url : url.substring(0, parameters);
	}

}
