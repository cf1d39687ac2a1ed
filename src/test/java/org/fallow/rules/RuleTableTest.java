package org.fallow.rules;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

import org.fallow.rules.RuleField.Looser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/** The one table of numbers: a row for each number of each group, and no other. */
class RuleTableTest {

	private static final RuleSet OURS = DefaultRules.ruleSet();

	@Test
	void hasARowForEachNumberOfEachGroup() {
		List<String> members = new ArrayList<>();
		for (RecordComponent group : RuleSet.class.getRecordComponents()) {
			if (group.getType().isRecord()) {
				Stream.of(group.getType().getRecordComponents())
					.forEach((number) -> members.add("/" + group.getName() + "/" + number.getName()));
			}
		}
		assertThat(RuleFields.general()).extracting(RuleField::pointer).containsExactlyElementsOf(members);
	}

	@Test
	void hasEachDefaultWithinItsBoundsAndAtTheSafeOne() {
		assertThat(RuleFields.general()).allSatisfy((field) -> {
			assertThat(field.usual()).as(field.pointer()).isBetween(field.least(), field.most());
			if (field.looser() == Looser.HIGHER) {
				assertThat(field.usual()).as(field.pointer()).isEqualTo(field.most());
			}
			if (field.looser() == Looser.LOWER) {
				assertThat(field.usual()).as(field.pointer()).isEqualTo(field.least());
			}
		});
		assertThat(RuleBounds.check(OURS)).isEmpty();
	}

	/** What the decision text says, typed from it and not from the table. */
	@ParameterizedTest
	@CsvSource({ "/slips/redFlagMinutes, 30", "/slips/redFlagEveryDays, 90", "/slips/otherEveryDays, 14",
			"/slips/afterDays, 14", "/slips/entries, 3", "/slips/toldDays, 7", "/words/examinedDays, 90",
			"/words/toldByAthleteDays, 14", "/words/ceilingDays, 60", "/told/silentMornings, 3", "/told/knownDays, 30",
			"/told/cycleMornings, 5", "/limits/wheezeDays, 14", "/limits/vaccinationCelsius, 39",
			"/limits/vaccinationEveryDays, 21", "/limits/vaccinationWithinDays, 2", "/limits/vaccinationDays, 2",
			"/flags/askFloor, 5", "/flags/askCeiling, 8", "/flags/askBpm, 90", "/opening/feverCelsius, 38",
			"/advice/throatDays, 5" })
	void hasTheNumbersOfTheDecisionText(String pointer, String number) {
		assertThat(RuleEdit.texts(OURS)).containsEntry(pointer, number);
	}

	/** A looser number than the text’s is refused with one sentence at that number. */
	@ParameterizedTest
	@CsvSource({ "/slips/redFlagMinutes, 31, looser-high", "/slips/redFlagEveryDays, 89, looser-low",
			"/slips/otherEveryDays, 13, looser-low", "/slips/afterDays, 13, looser-low",
			"/slips/entries, 2, looser-low", "/slips/toldDays, 6, looser-low", "/words/examinedDays, 91, looser-high",
			"/words/toldByAthleteDays, 15, looser-high", "/words/ceilingDays, 61, beyond",
			"/told/silentMornings, 4, looser-high", "/told/knownDays, 31, looser-high",
			"/told/cycleMornings, 6, looser-high", "/limits/wheezeDays, 13, looser-low",
			"/slips/redFlagMinutes, 4, beyond", "/told/silentMornings, 0, beyond" })
	void refusesALooserNumber(String pointer, String number, String how) {
		assertThat(RuleEdit.of(OURS, Map.of(pointer, number)).problems()).singleElement().satisfies((problem) -> {
			assertThat(problem.field()).isEqualTo(pointer);
			assertThat(problem.message().code()).isEqualTo("rules.bound." + how);
		});
	}

	/**
	 * In the pure core no number of the rules stands under a name of its own: what is
	 * left are reaches of memory and places, and from which reading on a count by finger
	 * is asked, which is nobody's to set; listed here one by one.
	 */
	@Test
	void leavesNoNumberOfTheRulesInThePureCore() throws IOException {
		List<String> constants = new ArrayList<>();
		for (String core : List.of("illness/core", "baseline")) {
			try (Stream<Path> files = Files.list(Path.of("src/main/java/org/fallow", core))) {
				for (Path file : files.sorted().toList()) {
					Files.readAllLines(file)
						.stream()
						.filter((line) -> line.matches(".*static final (int|long|double|Duration) .*\\d.*"))
						.forEach((line) -> constants
							.add(file.getFileName() + " " + line.replaceAll(".* (\\w+) =.*", "$1")));
				}
			}
		}
		assertThat(constants).containsExactlyInAnyOrder("Carrying.java NEAR_DAYS", "Carrying.java OUT_DAYS",
				"FastAtRest.java COUNT_BPM", "FastAtRest.java COUNT_STANDING_BPM", "FastAtRest.java LIE_MINUTES",
				"FastAtRest.java WITHIN_MINUTES", "FastAtRest.java MOST_OWN_BPM",
				"FastAtRest.java MOST_OWN_STANDING_BPM", "Forecast.java HORIZON_DAYS", "Forecast.java WINDOW_DAYS",
				"Marking.java PAST_MORNINGS", "MorningsByDay.java FEW", "Opening.java ROW_REACHES_DAYS",
				"State.java LOOK_BACK_DAYS", "State.java BEFORE_HELD_DAYS", "Windows.java LOOK_BACK_DAYS",
				"Column.java NEAR", "Exact.java PARTS");
	}

}
