package org.fallow.illness.core;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One athlete of docs/stories.md: who it is, and day by day what is told and what Fallow
 * is to say.
 *
 * @param story the story's title
 * @param name name, with what sets this one apart
 * @param born birth date
 * @param coached whether a coach with more than a deputy's post covers the athlete
 * @param before number of mornings before day 0, one a day
 * @param usual their readings in turn, bpm; the second is the usual one
 * @param rows rows by the day, the days following one another from 0 on
 */
record ToldAthlete(String story, String name, LocalDate born, boolean coached, int before, List<Integer> usual,
		Map<Integer, Row> rows) {

	private static final Path DOC = Path.of("docs/stories.md");

	private static final Pattern ATHLETE = Pattern
		.compile("Athlete: (.+), born ([0-9-]{10}), (with|without) a coach\\. Before: (?:nothing|([0-9]+)"
				+ " mornings of ([0-9, ]+))\\.");

	private static final String HEAD = "| day | told | clearance | stage | heart rate | why | besides | next |";

	static List<ToldAthlete> all() {
		List<ToldAthlete> athletes = new ArrayList<>();
		String story = "";
		try {
			for (String line : Files.readAllLines(DOC)) {
				if (line.startsWith("### ")) {
					story = line.substring(4);
				}
				else if (line.startsWith("Athlete:")) {
					athletes.add(of(story, line));
				}
				else if (line.startsWith("|") && !line.equals(HEAD) && !line.startsWith("|---")) {
					athletes.get(athletes.size() - 1).add(Row.of(line));
				}
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		return athletes;
	}

	private static ToldAthlete of(String story, String line) {
		Matcher matcher = ATHLETE.matcher(line);
		if (!matcher.matches()) {
			throw new IllegalArgumentException("no athlete can be read: " + line);
		}
		String count = matcher.group(4);
		List<Integer> usual = (count == null) ? List.of()
				: Arrays.stream(matcher.group(5).split(", ")).map(Integer::valueOf).toList();
		return new ToldAthlete(story, matcher.group(1), LocalDate.parse(matcher.group(2)),
				"with".equals(matcher.group(3)), (count == null) ? 0 : Integer.parseInt(count), usual, new TreeMap<>());
	}

	private void add(Row row) {
		for (String part : row.days().split(", ")) {
			String[] ends = part.split("-");
			int last = Integer.parseInt(ends[ends.length - 1]);
			for (int day = Integer.parseInt(ends[0]); day <= last; day++) {
				if (this.rows.put(day, row) != null) {
					throw new IllegalArgumentException(this.name + ": day " + day + " is told twice");
				}
			}
		}
	}

	/** The last day told; every day before it from 0 on has to be told too. */
	int lastDay() {
		int last = this.rows.size() - 1;
		if (last < 0 || !this.rows.containsKey(0) || !this.rows.containsKey(last)) {
			throw new IllegalArgumentException(this.name + ": days are left out of " + this.rows.keySet());
		}
		return last;
	}

	@Override
	public String toString() {
		return this.story + ": " + this.name;
	}

	/**
	 * A row of a table.
	 *
	 * @param days the days it is of
	 * @param told what is told, in the order told
	 * @param clearance the clearance in words
	 * @param stage stage and path; empty without an illness
	 * @param heartRate flag, and whether it stands above the line
	 * @param why all reasons
	 * @param besides notices told and, with "without" before, not told
	 * @param next the earliest day of the next stage
	 */
	record Row(String days, List<String> told, String clearance, String stage, String heartRate, List<String> why,
			List<String> besides, String next) {

		static Row of(String line) {
			String[] cells = line.split("\\|", -1);
			if (cells.length != 10) {
				throw new IllegalArgumentException("not eight columns: " + line);
			}
			String[] cell = Arrays.stream(cells).map(String::strip).toArray(String[]::new);
			return new Row(cell[1], list(cell[2]), cell[3], cell[4], cell[5], list(cell[6]).stream().sorted().toList(),
					list(cell[7]), cell[8]);
		}

		private static List<String> list(String cell) {
			return cell.isEmpty() ? List.of() : List.of(cell.split("; "));
		}

	}

}
