package org.fallow.assess;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrFlag;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.HrvEvidence;
import org.fallow.illness.core.RhrEvidence;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.jspecify.annotations.Nullable;

/**
 * One day of one person as a row: numbers with six decimals, what is absent empty.
 */
final class DayRow {

	/** Names of the columns. */
	static final List<String> COLUMNS = List.of("person", "date", "n", "baseline", "spread", "dev", "line", "flag",
			"above_line", "hrv_n", "hrv_mean", "hrv_sd", "hrv7", "hrv_flag", "clearance", "stage", "day_in_stage",
			"reasons", "counted", "path", "mark", "drift", "next_gate");

	private static final Map<Clearance, String> CLEARANCES = Map.of(Clearance.REFER, "Refer", Clearance.REST, "Rest",
			Clearance.NOT_ASSESSED, "NotAssessed", Clearance.EASY_ONLY, "Easy", Clearance.FULL_TRAINING, "Full");

	private static final Map<RhrFlag, String> FLAGS = Map.of(RhrFlag.LOW, "Low", RhrFlag.WITHIN, "Within",
			RhrFlag.RAISED, "Raised", RhrFlag.HIGH, "High", RhrFlag.VERY_HIGH, "VeryHigh");

	private static final Map<HrvFlag, String> HRV_FLAGS = Map.of(HrvFlag.SUPPRESSED, "Suppressed", HrvFlag.NORMAL,
			"Normal");

	private static final Map<PathName, String> PATHS = Map.of(PathName.VACCINATION, "vaccination", PathName.SHORT,
			"short", PathName.STOMACH, "stomach", PathName.THREE_WEEK, "three", PathName.LONG, "long");

	private DayRow() {
	}

	static List<String> of(String person, DayAssessment day) {
		RhrEvidence rhr = day.rhr();
		HrvEvidence hrv = day.hrv();
		Episode open = day.state().episode();
		return List.of(person, day.day().toString(), (rhr.baseline() == null) ? "0" : String.valueOf(rhr.n()),
				six(rhr.baseline()), six(rhr.spread()), six(rhr.dev()), line(rhr), word(FLAGS, rhr.flag()),
				bit(rhr.above() != null), String.valueOf(hrv.n()), six(hrv.mean()), six(hrv.sd()), six(hrv.recent()),
				word(HRV_FLAGS, hrv.flag()), word(CLEARANCES, day.clearance()),
				(open == null || day.holding()) ? "" : stage(open),
				(open == null || day.holding()) ? "" : String.valueOf(day.dayInStage()), reasons(day),
				(open == null || day.holding()) ? "" : String.valueOf(open.counted()),
				(open == null) ? "" : word(PATHS, open.path()), day.mark().name().toLowerCase(Locale.ROOT),
				bit(rhr.drift()), nextGate(day));
	}

	/** A line at its least or greatest is that figure; else with six decimals. */
	private static String line(RhrEvidence rhr) {
		Double line = rhr.lineBpm();
		if (line == null || line != Math.rint(line)) {
			return six(line);
		}
		return BigDecimal.valueOf(line).stripTrailingZeros().toPlainString();
	}

	private static String stage(Episode open) {
		return (open.stage() == 0) ? "ill" : String.valueOf(open.stage());
	}

	/** Codes of the reasons, strictest first, without the word all of them begin with. */
	private static String reasons(DayAssessment day) {
		return day.reasons()
			.stream()
			.map((reason) -> reason.code().substring(reason.code().indexOf('.') + 1))
			.collect(Collectors.joining("; "));
	}

	private static String nextGate(DayAssessment day) {
		return (day.gate() == null || day.gate().earliest() == null) ? "" : day.gate().earliest().toString();
	}

	private static <E> String word(Map<E, String> words, @Nullable E value) {
		return (value == null) ? "" : words.getOrDefault(value, "");
	}

	private static String bit(boolean value) {
		return value ? "1" : "0";
	}

	/** Six decimals, halves of the shortest decimal up. */
	private static String six(@Nullable Double value) {
		return (value == null) ? "" : BigDecimal.valueOf(value).setScale(6, RoundingMode.HALF_UP).toPlainString();
	}

}
