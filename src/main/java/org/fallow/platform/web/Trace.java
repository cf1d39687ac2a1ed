package org.fallow.platform.web;

import java.sql.SQLException;
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
		for (Throwable one = failure; one != null && seen.add(one); one = one.getCause()) {
			text.append(text.isEmpty() ? "" : System.lineSeparator() + "caused by ").append(name(one));
			for (StackTraceElement frame : one.getStackTrace()) {
				text.append(System.lineSeparator()).append("\tat ").append(frame);
			}
		}
		return text.toString();
	}

	private static String name(Throwable one) {
		@Nullable String state = (one instanceof SQLException sql) ? sql.getSQLState() : null;
		return one.getClass().getName() + ((state != null) ? " (SQLSTATE " + state + ")" : "");
	}

}
