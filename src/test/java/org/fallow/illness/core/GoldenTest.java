package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.fallow.baseline.RhrFlag;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The ten worked examples of shared/data/golden, written by an independent reference from
 * the decision text alone. All columns are compared but the reasons, whose codes are our
 * own; of these, whether there are any.
 */
class GoldenTest {

	private static final Map<Clearance, String> CLEARANCES = Map.of(Clearance.REFER, "Refer", Clearance.REST, "Rest",
			Clearance.NOT_ASSESSED, "NotAssessed", Clearance.EASY_ONLY, "Easy", Clearance.FULL_TRAINING, "Full");

	private static final Map<RhrFlag, String> FLAGS = Map.of(RhrFlag.LOW, "Low", RhrFlag.WITHIN, "Within",
			RhrFlag.RAISED, "Raised", RhrFlag.HIGH, "High", RhrFlag.VERY_HIGH, "VeryHigh");

	private static final Map<PathName, String> PATHS = Map.of(PathName.SHORT, "short", PathName.STOMACH, "stomach",
			PathName.THREE_WEEK, "three", PathName.LONG, "long");

	static List<GoldenCase> cases() {
		return GoldenCase.all();
	}

	@ParameterizedTest
	@MethodSource("cases")
	void agreesWithTheReferenceOnEveryDay(GoldenCase golden) {
		List<Map<String, String>> expected = golden.expected();
		LocalDate to = LocalDate.parse(expected.get(expected.size() - 1).get("date"));
		List<DayAssessment> days = Course.of(golden.timeline(), RuleBook.of(DefaultRules.ruleSet()), to);
		assertThat(days).hasSameSizeAs(expected);
		for (int i = 0; i < expected.size(); i++) {
			Map<String, String> row = new LinkedHashMap<>(expected.get(i));
			row.keySet().removeAll(List.of("person", "reasons"));
			assertThat(observed(days.get(i))).as(golden + " " + row.get("date")).isEqualTo(row);
		}
	}

	private static Map<String, String> observed(DayAssessment day) {
		Map<String, String> row = new LinkedHashMap<>();
		RhrEvidence rhr = day.rhr();
		row.put("date", day.day().toString());
		row.put("n", (rhr.baseline() == null) ? "0" : String.valueOf(rhr.n()));
		row.put("baseline", six(rhr.baseline()));
		row.put("spread", six(rhr.spread()));
		row.put("dev", six(rhr.dev()));
		row.put("T", six(rhr.tolerance()));
		row.put("flag", (rhr.flag() == null) ? "" : FLAGS.get(rhr.flag()));
		row.put("raised_for_action", rhr.raisedForAction() ? "1" : "0");
		row.put("S", six(rhr.rise().sum()));
		row.put("sustained", rhr.rise().signal() ? "1" : "0");
		HrvEvidence hrv = day.hrv();
		row.put("hrv_n", String.valueOf(hrv.n()));
		row.put("hrv_mean", six(hrv.mean()));
		row.put("hrv_sd", six(hrv.sd()));
		row.put("hrv7", six(hrv.recent()));
		row.put("hrv_flag", (hrv.flag() == null) ? "" : hrv.flag().name());
		row.put("clearance", CLEARANCES.get(day.clearance()));
		Episode episode = day.state().episode();
		row.put("stage", (episode == null) ? "" : (episode.stage() == 0) ? "ill" : String.valueOf(episode.stage()));
		row.put("day_in_stage", (episode == null) ? "" : String.valueOf(day.dayInStage()));
		row.put("counted", (episode == null) ? "" : String.valueOf(episode.counted()));
		row.put("path", (episode == null) ? "" : PATHS.get(episode.path()));
		row.put("mark", day.mark().name().toLowerCase(Locale.ROOT));
		row.put("drift", rhr.drift() ? "1" : "0");
		row.put("next_gate",
				(day.gate() == null || day.gate().earliest() == null) ? "" : day.gate().earliest().toString());
		return row;
	}

	private static String six(Double value) {
		return (value == null) ? "" : String.format(Locale.ROOT, "%.6f", value);
	}

}
