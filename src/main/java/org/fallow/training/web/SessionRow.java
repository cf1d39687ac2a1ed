package org.fallow.training.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

import org.fallow.access.Ids;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * One session of the week's form, as typed.
 *
 * @param at its place in the form, from 0
 * @param key of the stored session; empty for a new one
 * @param day 1 Monday to 7 Sunday
 * @param kind what it is for
 * @param terrain what it is run on
 * @param time when the group meets; empty for whenever
 * @param place where
 * @param name the coach's words
 * @param parts in one line; empty takes the session away
 */
public record SessionRow(int at, String key, String day, String kind, String terrain, String time, String place,
		String name, String parts) {

	private static final int LONGEST_WORDS = 80;

	static SessionRow of(int at, PlannedSession session) {
		LocalTime time = session.time();
		return new SessionRow(at, session.key(), String.valueOf(session.day().getDayOfWeek().getValue()),
				session.kind().name(), session.terrain().name(), (time == null) ? "" : time.toString(), session.place(),
				session.name(), PartsText.write(session.parts()));
	}

	static SessionRow blank(int at) {
		return new SessionRow(at, "", "1", PlannedSession.Kind.EASY_RUN.name(), PlannedSession.Terrain.FLAT.name(), "",
				"", "", "");
	}

	static SessionRow typed(int at, Map<String, String> typed) {
		return new SessionRow(at, field(at, "key", typed), field(at, "day", typed), field(at, "kind", typed),
				field(at, "terrain", typed), field(at, "time", typed), field(at, "place", typed),
				field(at, "name", typed), field(at, "parts", typed));
	}

	private static String field(int at, String name, Map<String, String> typed) {
		return typed.getOrDefault(name + at, "").strip();
	}

	boolean isEmpty() {
		return this.parts.isEmpty();
	}

	/** The session, or problems that name the fields. */
	@Nullable PlannedSession read(LocalDate monday, List<Problem> problems) {
		PartsText.Reading reading = PartsText.read(this.parts);
		List<Problem> wrong = new ArrayList<>();
		Message unreadable = reading.problem();
		if (unreadable != null) {
			wrong.add(new Problem("parts" + this.at, unreadable));
		}
		checkWords(wrong);
		checkChoices(wrong);
		LocalTime meets = time(wrong);
		if (!wrong.isEmpty()) {
			problems.addAll(wrong);
			return null;
		}
		try {
			return new PlannedSession(stableKey(), monday.plusDays(Integer.parseInt(this.day) - 1L),
					PlannedSession.Kind.valueOf(this.kind), PlannedSession.Terrain.valueOf(this.terrain), meets,
					this.place, this.name, reading.parts());
		}
		catch (IllegalArgumentException ex) {
			problems.add(Problem.of("parts" + this.at, "programme.minutes", 1, PlannedSession.MOST_MINUTES));
			return null;
		}
	}

	private String stableKey() {
		return (this.key.matches("[0-9a-f-]{36}")) ? this.key : Ids.next().toString();
	}

	private void checkWords(List<Problem> problems) {
		if (this.name.length() > LONGEST_WORDS || this.place.length() > LONGEST_WORDS) {
			problems.add(Problem.of("name" + this.at, "programme.words", LONGEST_WORDS));
		}
		if (!PlannedSession.isOneLine(this.name)) {
			problems.add(Problem.of("name" + this.at, "programme.one-line"));
		}
		if (!PlannedSession.isOneLine(this.place)) {
			problems.add(Problem.of("place" + this.at, "programme.one-line"));
		}
	}

	/** What no list of the page offers is refused, never taken for something else. */
	private void checkChoices(List<Problem> problems) {
		if (!this.day.matches("[1-7]")) {
			problems.add(Problem.of("day" + this.at, "programme.day.unknown"));
		}
		if (!isOneOf(PlannedSession.Kind.values(), this.kind)) {
			problems.add(Problem.of("kind" + this.at, "entry.code.unknown"));
		}
		if (!isOneOf(PlannedSession.Terrain.values(), this.terrain)) {
			problems.add(Problem.of("terrain" + this.at, "entry.code.unknown"));
		}
	}

	private static boolean isOneOf(Enum<?>[] all, String typed) {
		return Arrays.stream(all).anyMatch((one) -> one.name().equals(typed));
	}

	private @Nullable LocalTime time(List<Problem> problems) {
		try {
			return this.time.isEmpty() ? null : LocalTime.parse(this.time);
		}
		catch (DateTimeException ex) {
			problems.add(Problem.of("time" + this.at, "programme.time"));
			return null;
		}
	}

	/** Keeps rows in order of their days. */
	static List<SessionRow> rows(List<PlannedSession> sessions, int blank) {
		List<SessionRow> rows = new ArrayList<>();
		sessions.forEach((session) -> rows.add(of(rows.size(), session)));
		for (int i = 0; i < blank; i++) {
			rows.add(blank(rows.size()));
		}
		return rows;
	}

}
