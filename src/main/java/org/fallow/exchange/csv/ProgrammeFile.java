package org.fallow.exchange.csv;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import org.fallow.access.Ids;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * A programme as a CSV file (RFC 4180): one row a session, with the columns {@code week}
 * (loading, unloading, test, race), {@code day} (a date), {@code session} (easy run, long
 * run, key session, test, race), {@code terrain} (flat, hill, track, treadmill),
 * {@code time} (18:30, or empty), {@code place}, {@code name} and {@code parts} (see
 * {@link PartsText}). What is written is read back the same, apart from the names that
 * sessions have inside; words that a spreadsheet would take for a formula stand behind a
 * {@link FormulaMark}.
 */
public final class ProgrammeFile {

	/** Most rows that are read. */
	public static final int MOST_ROWS = 5_000;

	private static final List<String> COLUMNS = List.of("week", "day", "session", "terrain", "time", "place", "name",
			"parts");

	private static final int LONGEST_WORDS = 80;

	private ProgrammeFile() {
	}

	/**
	 * Reads a file.
	 * @param text all of it
	 * @return the weeks by Monday, or all that is wrong, each with its line
	 */
	public static Result read(String text) {
		List<Problem> problems = new ArrayList<>();
		Map<LocalDate, List<PlannedSession>> sessions = new TreeMap<>();
		Map<LocalDate, ProgrammeWeek.Kind> kinds = new TreeMap<>();
		try (CsvReader<NamedCsvRecord> csv = CsvReader.builder()
			.ofNamedCsvRecord(text.startsWith("\uFEFF") ? text.substring(1) : text)) {
			long rows = 0;
			for (NamedCsvRecord row : csv) {
				if (rows == 0) {
					checkHeader(row.getHeader(), problems);
				}
				rows++;
				if (!problems.isEmpty() && rows == 1 || rows > MOST_ROWS) {
					break;
				}
				read(row, sessions, kinds, problems);
			}
			if (rows == 0 || rows > MOST_ROWS) {
				problems.add(Problem.of("file", (rows == 0) ? "programmeFile.empty" : "programmeFile.rows", MOST_ROWS));
			}
		}
		catch (CsvParseException ex) {
			problems.add(Problem.of("file", "importFile.broken"));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return problems.isEmpty() ? new Result(weeks(sessions, kinds), List.of()) : new Result(List.of(), problems);
	}

	private static List<ProgrammeWeek> weeks(Map<LocalDate, List<PlannedSession>> sessions,
			Map<LocalDate, ProgrammeWeek.Kind> kinds) {
		return sessions.entrySet()
			.stream()
			.map((entry) -> new ProgrammeWeek(entry.getKey(),
					kinds.getOrDefault(entry.getKey(), ProgrammeWeek.Kind.LOADING), entry.getValue()))
			.toList();
	}

	private static void checkHeader(List<String> header, List<Problem> problems) {
		COLUMNS.stream()
			.filter((column) -> !header.contains(column))
			.forEach((column) -> problems.add(Problem.of("file", "programmeFile.column", column)));
	}

	private static void read(NamedCsvRecord row, Map<LocalDate, List<PlannedSession>> sessions,
			Map<LocalDate, ProgrammeWeek.Kind> kinds, List<Problem> problems) {
		long line = row.getStartingLineNumber();
		LocalDate day = day(row, line, problems);
		ProgrammeWeek.Kind week = named(row, "week", ProgrammeWeek.Kind.class, problems);
		PlannedSession.Kind kind = named(row, "session", PlannedSession.Kind.class, problems);
		PlannedSession.Terrain terrain = named(row, "terrain", PlannedSession.Terrain.class, problems);
		PartsText.Reading parts = PartsText.read(field(row, "parts"));
		Message unreadable = parts.problem();
		if (unreadable != null) {
			problems.add(new Problem("line " + line, unreadable));
		}
		String place = field(row, "place");
		String name = field(row, "name");
		if (place.length() > LONGEST_WORDS || name.length() > LONGEST_WORDS) {
			problems.add(Problem.of("line " + line, "programme.words", LONGEST_WORDS));
		}
		if (!PlannedSession.isOneLine(place) || !PlannedSession.isOneLine(name)) {
			problems.add(Problem.of("line " + line, "programme.one-line"));
		}
		if (day == null || week == null || kind == null || terrain == null || unreadable != null) {
			return;
		}
		LocalDate monday = day.minusDays(day.getDayOfWeek().getValue() - 1L);
		if (kinds.putIfAbsent(monday, week) != null && kinds.get(monday) != week) {
			problems.add(Problem.of("line " + line, "programmeFile.two-kinds", monday));
		}
		try {
			sessions.computeIfAbsent(monday, (first) -> new ArrayList<>())
				.add(new PlannedSession(Ids.next().toString(), day, kind, terrain, time(row), place, name,
						parts.parts()));
		}
		catch (DateTimeException ex) {
			problems.add(Problem.of("line " + line, "programmeFile.time", field(row, "time")));
		}
		catch (IllegalArgumentException ex) {
			problems.add(Problem.of("line " + line, "programme.minutes", 1, PlannedSession.MOST_MINUTES));
		}
	}

	private static @Nullable LocalTime time(NamedCsvRecord row) {
		String time = field(row, "time");
		return time.isEmpty() ? null : LocalTime.parse(time);
	}

	private static @Nullable LocalDate day(NamedCsvRecord row, long line, List<Problem> problems) {
		try {
			LocalDate day = LocalDate.parse(field(row, "day"));
			if (day.getYear() >= 2000 && day.getYear() < 2200) {
				return day;
			}
		}
		catch (DateTimeException ex) {
			// told below, with what stands there
		}
		problems.add(Problem.of("line " + line, "programmeFile.day", field(row, "day")));
		return null;
	}

	private static <E extends Enum<E>> @Nullable E named(NamedCsvRecord row, String column, Class<E> type,
			List<Problem> problems) {
		String typed = field(row, column);
		for (E one : type.getEnumConstants()) {
			if (word(one).equals(typed.toLowerCase(Locale.ROOT))) {
				return one;
			}
		}
		problems.add(Problem.of("line " + row.getStartingLineNumber(), "programmeFile.word", column, typed));
		return null;
	}

	private static String field(NamedCsvRecord row, String column) {
		return FormulaMark.without(row.findField(column).orElse("").strip());
	}

	private static String word(Enum<?> one) {
		return one.name().toLowerCase(Locale.ROOT).replace('_', ' ');
	}

	/**
	 * Writes weeks as a file.
	 * @param weeks in the order they shall stand
	 * @return all of the file, lines ending in CR LF
	 */
	public static String write(Collection<ProgrammeWeek> weeks) {
		StringWriter text = new StringWriter();
		try (CsvWriter csv = CsvWriter.builder().build(text)) {
			csv.writeRecord(COLUMNS);
			for (ProgrammeWeek week : weeks) {
				week.sessions().forEach((session) -> csv.writeRecord(row(week, session)));
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return text.toString();
	}

	private static List<String> row(ProgrammeWeek week, PlannedSession session) {
		LocalTime time = session.time();
		return List.of(word(week.kind()), session.day().toString(), word(session.kind()), word(session.terrain()),
				(time == null) ? "" : time.toString(), FormulaMark.with(session.place()),
				FormulaMark.with(session.name()), PartsText.write(session.parts()));
	}

	/**
	 * What came of reading a file.
	 *
	 * @param weeks by Monday; empty where anything is wrong
	 * @param problems all that is wrong; the field names the line
	 */
	public record Result(List<ProgrammeWeek> weeks, List<Problem> problems) {

		/** Copies the lists. */
		public Result {
			weeks = List.copyOf(weeks);
			problems = List.copyOf(problems);
		}

	}

}
