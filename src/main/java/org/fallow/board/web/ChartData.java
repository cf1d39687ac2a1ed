package org.fallow.board.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

import org.fallow.baseline.Deviation;
import org.fallow.baseline.Statistics;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.view.StageView;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * What the charts of one athlete draw, day by day without gaps.
 *
 * @param days ISO days
 * @param today the day looked at
 * @param rhr resting heart rate, bpm
 * @param rmssd RMSSD, ms; absent if the athlete has none
 * @param spans illness, holds and stages
 * @param tagged days that carry circumstances, in order
 * @param breaks days on which the reading is first taken in another way, in order
 */
public record ChartData(List<String> days, String today, Lines rhr, @Nullable Lines rmssd, List<Stretch> spans,
		List<String> tagged, List<String> breaks) {

	private static final int MEDIAN_MORNINGS = 3;

	static ChartData of(List<AssessedDay> assessed, Map<LocalDate, MorningEntry> entries, RuleBook book,
			LocalDate asOf) {
		RuleSet rules = book.on(asOf).rules();
		Lines rhr = Lines.empty();
		Lines rmssd = Lines.empty();
		List<String> days = new ArrayList<>();
		for (AssessedDay day : assessed) {
			days.add(day.day().toString());
			MorningEntry entry = entries.get(day.day());
			boolean usable = entry != null && !entry.unsure();
			rhr.values().add((usable && entry != null) ? entry.rhrBpm() : null);
			rmssd.values().add((usable && entry != null) ? entry.rmssdMs() : null);
			rhrRange(day, rhr, rules);
			hrvRange(day, rmssd, rules);
		}
		medians(rhr);
		medians(rmssd);
		boolean hasRmssd = rmssd.values().stream().anyMatch(Objects::nonNull);
		String today = assessed.get(assessed.size() - 1).day().toString();
		return new ChartData(days, today, rhr, hasRmssd ? rmssd : null, stretches(assessed, book), tagged(entries),
				breaks(entries));
	}

	private static List<String> tagged(Map<LocalDate, MorningEntry> entries) {
		return entries.values()
			.stream()
			.filter((entry) -> !entry.tags().isEmpty())
			.map((entry) -> entry.day().toString())
			.sorted()
			.toList();
	}

	/** Another method or posture is another series: nothing is compared across. */
	private static List<String> breaks(Map<LocalDate, MorningEntry> entries) {
		List<String> breaks = new ArrayList<>();
		MorningEntry before = null;
		for (MorningEntry entry : new TreeMap<>(entries).values()) {
			if (entry.method() == null) {
				continue;
			}
			if (before != null && (before.method() != entry.method() || before.posture() != entry.posture())) {
				breaks.add(entry.day().toString());
			}
			before = entry;
		}
		return breaks;
	}

	/** From low to the line: a morning on the upper rule is raised already. */
	private static void rhrRange(AssessedDay day, Lines lines, RuleSet rules) {
		Double median = day.rhrBaseline();
		Double spread = day.rhrSpread();
		Double line = day.rhrLine();
		if (median == null || spread == null || line == null) {
			lines.range(null, null);
			return;
		}
		lines.range(tenth(median + Deviation.low(spread, rules.flags())), tenth(median + line));
	}

	private static void hrvRange(AssessedDay day, Lines lines, RuleSet rules) {
		Double mean = day.hrvMean();
		Double sd = day.hrvSd();
		if (mean == null || sd == null) {
			lines.range(null, null);
			return;
		}
		double half = rules.hrv().drawnSds() * sd;
		lines.range(tenth(Math.exp(mean - half)), tenth(Math.exp(mean + half)));
	}

	private static double tenth(double value) {
		return Math.round(value * 10) / 10.0;
	}

	private static void medians(Lines lines) {
		List<@Nullable Double> values = lines.values();
		for (int i = 0; i < values.size(); i++) {
			double[] last = values.subList(Math.max(0, i - MEDIAN_MORNINGS + 1), i + 1)
				.stream()
				.filter(Objects::nonNull)
				.mapToDouble(Double::doubleValue)
				.toArray();
			lines.median3().add((last.length < 2) ? null : Double.valueOf(Statistics.median(last)));
		}
	}

	private static List<Stretch> stretches(List<AssessedDay> assessed, RuleBook book) {
		List<Stretch> stretches = new ArrayList<>();
		int from = 0;
		for (int i = 0; i < assessed.size(); i++) {
			boolean last = i + 1 == assessed.size() || !StageView.isSame(assessed.get(i), assessed.get(i + 1));
			if (last && assessed.get(i).inEpisode()) {
				stretches.add(new Stretch(StageView.drawn(assessed.get(i), book), assessed.get(from).day().toString(),
						assessed.get(i).day().toString()));
			}
			from = last ? i + 1 : from;
		}
		return stretches;
	}

	/**
	 * One measurement's numbers, one for each day or absent.
	 *
	 * @param values readings
	 * @param lower lower rule of the normal range
	 * @param upper upper rule
	 * @param median3 median of the last three mornings
	 */
	public record Lines(List<@Nullable Double> values, List<@Nullable Double> lower, List<@Nullable Double> upper,
			List<@Nullable Double> median3) {

		static Lines empty() {
			return new Lines(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
		}

		void range(@Nullable Double from, @Nullable Double to) {
			this.lower.add(from);
			this.upper.add(to);
		}

	}

	/**
	 * Days of one kind.
	 *
	 * @param kind how it is drawn: ILL, HOLD or STAGE_1 to STAGE_3
	 * @param from first day, ISO
	 * @param to last day, ISO, inclusive
	 */
	public record Stretch(String kind, String from, String to) {
	}

}
