package org.fallow.illness.core;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.baseline.RhrFlag;
import org.fallow.rules.Clearance;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The clearance table, written from the decision text before the code was read: complete,
 * free of overlap, and the core's answer for every combination that facts can make.
 */
class ClearanceTableTest {

	private static final Map<String, Clearance> CLEARANCES = Map.of("Refer", Clearance.REFER, "Rest", Clearance.REST,
			"Not assessed", Clearance.NOT_ASSESSED, "Easy only", Clearance.EASY_ONLY, "Full training",
			Clearance.FULL_TRAINING);

	private static DecisionTable table;

	@BeforeAll
	static void read() throws IOException {
		table = DecisionTable.read("clearance.csv");
	}

	@Test
	void hasExactlyOneRowForEveryCombination() {
		List<String> wrong = new ArrayList<>();
		long[] seen = new long[1];
		table.forEach((values, rows) -> {
			seen[0]++;
			if (Long.bitCount(rows) != 1 && wrong.size() < 5) {
				wrong.add(Long.bitCount(rows) + " rows hold for " + List.of(values));
			}
		});
		assertThat(wrong).isEmpty();
		assertThat(seen[0]).isEqualTo(combinations());
	}

	private static long combinations() {
		return table.columns().stream().mapToLong((column) -> table.values(column).size()).reduce(1, (a, b) -> a * b);
	}

	/** In the ordinary build one combination of so many; the number divides no column. */
	@Test
	void agreesWithTheCoreOnASampleOfTheCombinationsThatFactsCanMake() {
		assertThat(differences(97)).isEmpty();
	}

	/**
	 * About four minutes: {@code mvn test -Dtest=ClearanceTableTest -DexcludedGroups=}.
	 */
	@Test
	@Tag("slow")
	void agreesWithTheCoreOnEveryCombinationThatFactsCanMake() {
		assertThat(differences(1)).isEmpty();
	}

	/** Compares every n-th combination that can be, and prints how many there are. */
	private static Map<String, String> differences(int step) {
		TableHistory history = new TableHistory();
		Map<String, long[]> impossible = new TreeMap<>();
		long[] possible = new long[1];
		Map<String, String> wrong = new TreeMap<>();
		table.forEach((values, rows) -> {
			TableDay day = TableDay.of(values);
			String why = day.impossible();
			if (!why.isEmpty()) {
				impossible.computeIfAbsent(why, (w) -> new long[1])[0]++;
			}
			else if (possible[0]++ % step == 0) {
				compare(history, day, Long.numberOfTrailingZeros(rows), wrong);
			}
		});
		impossible.forEach((why, count) -> System.out.printf("%,12d cannot be: %s%n", count[0], why));
		System.out.printf("%,12d can be, one of %d compared with the core%n", possible[0], step);
		return wrong;
	}

	private static void compare(TableHistory history, TableDay day, int row, Map<String, String> wrong) {
		DayAssessment assessed = history.assess(day);
		String built = built(assessed);
		String named = named(day);
		if (!built.equals(named)) {
			wrong.putIfAbsent("not built: " + named, built + " by " + day);
		}
		else if (assessed.clearance() != CLEARANCES.get(table.outcome(row))) {
			wrong.putIfAbsent("row " + (row + 1) + " says " + table.outcome(row) + ", the core " + assessed.clearance(),
					day + " " + assessed.reasons());
		}
	}

	private static String named(TableDay day) {
		String rhr = day.rhr().startsWith("long") ? "long" : day.rhr();
		return String.join(", ", day.hold(), day.stage(), rhr, day.line(), day.hrv());
	}

	/**
	 * What the assessment's own evidence says of the conditions that facts only lead to.
	 */
	private static String built(DayAssessment day) {
		Episode episode = day.state().episode();
		boolean withdrawn = day.decisions().stream().anyMatch((d) -> d.kind() == DayAssessment.Decision.Kind.WITHDRAWN);
		String stage = (episode == null) ? (withdrawn ? "withdrawn" : "none")
				: (episode.stage() == 0) ? "ill" : String.valueOf(episode.stage());
		String hrv = (day.hrv().flag() == null) ? "none" : day.hrv().flag().name().toLowerCase(Locale.ROOT);
		return String.join(", ", day.holding() ? "standing" : "no", stage, rhr(day.rhr()),
				(day.rhr().above() != null) ? "stands" : "no", hrv);
	}

	private static String rhr(RhrEvidence rhr) {
		if (rhr.flag() != null) {
			return flag(rhr.flag(), rhr.starts(), rhr.lowAgain());
		}
		if (rhr.keptFlag() != null) {
			return "kept " + flag(rhr.keptFlag(), false, rhr.keptLow());
		}
		return rhr.leftOut() ? "long" : "no baseline";
	}

	private static String flag(RhrFlag flag, boolean starts, boolean again) {
		return switch (flag) {
			case LOW -> again ? "low again" : "low";
			case WITHIN -> "within";
			case RAISED -> starts ? "starts" : "raised";
			case HIGH -> "high";
			case VERY_HIGH -> "very high";
		};
	}

}
