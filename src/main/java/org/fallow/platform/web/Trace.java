package org.fallow.platform.web;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Set;

import org.jspecify.annotations.Nullable;

/**
 * Where an exception came from, without what it says: messages of databases, parsers and
 * binders quote values, and values here are about people's health.
 */
final class Trace {

	private Trace() {
	}

	/**
	 * Classes and lines of an exception and its causes.
	 * @param failure the exception
	 * @return several lines; an SQL exception with its SQLSTATE
	 */
	static String of(Throwable failure) {
		StringBuilder text = new StringBuilder();
		Set<Throwable> seen = Collections.newSetFromMap(new IdentityHashMap<>());
		StackTraceElement[] around = {};
		for (Throwable one = failure; one != null && seen.add(one); one = one.getCause()) {
			StackTraceElement[] frames = one.getStackTrace();
			text.append(text.isEmpty() ? "" : System.lineSeparator() + "caused by ").append(name(one));
			Arrays.stream(frames, 0, frames.length - common(frames, around))
				.forEach((frame) -> text.append(System.lineSeparator()).append("\tat ").append(frame));
			around = frames;
		}
		return text.toString();
	}

	/** How many frames, from the outermost on, two traces share. */
	private static int common(StackTraceElement[] one, StackTraceElement[] other) {
		int common = 0;
		while (common < Math.min(one.length, other.length)
				&& one[one.length - 1 - common].equals(other[other.length - 1 - common])) {
			common++;
		}
		return common;
	}

	private static String name(Throwable one) {
		@Nullable String state = (one instanceof SQLException sql) ? sql.getSQLState() : null;
		return one.getClass().getName() + ((state != null) ? " (SQLSTATE " + state + ")" : "");
	}

}
