package org.fallow.measure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Predicate;

import org.fallow.baseline.Line;
import org.fallow.baseline.RhrFlag;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.RhrEvidence;
import org.fallow.measure.Readings.Reading;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleSet;

/**
 * Both rule texts on the same mornings: what they say of healthy ones, how soon they find
 * a planted rise, and how often they call a morning quiet that is still up. By resting
 * heart rate alone.
 */
final class Beside {

	/** The rise of the numbers to hold, bpm. */
	static final double RISE_BPM = 8;

	/** A morning that is still so much up is not quiet, bpm. */
	static final double STILL_UP_BPM = 6;

	private static final int STILL_UP_MORNINGS = 3;

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private final String name;

	private final Random chance;

	private final int shapes;

	private long mornings;

	private final Text first = new Text();

	private final Text second = new Text();

	private final Share asked = new Share();

	private final Share askedInHealth = new Share();

	private Beside(String name, int shapes, long seed) {
		this.name = name;
		this.shapes = shapes;
		this.chance = new Random(seed);
	}

	/** What one text does. */
	static final class Text {

		private long begun;

		private long mornings;

		/** A rise of 8 bpm, by its second morning. */
		final Share steps = new Share();

		/** A rise of any shape, by the second morning of it. */
		final Share shapesNextDay = new Share();

		/** The same by the third. */
		final Share shapesSecondDay = new Share();

		/** The alarm on the same mornings with nothing planted, by the second. */
		final Share placeboNextDay = new Share();

		/** The same by the third. */
		final Share placeboSecondDay = new Share();

		/** A lone morning 6 bpm up that is called quiet. */
		final Share quietAlone = new Share();

		/** The third of three mornings 6 bpm up that is called quiet. */
		final Share quietThird = new Share();

		double perMonth(long of) {
			return HealthyShares.MONTH * this.begun / of;
		}

		double share(long of) {
			return this.mornings / (double) of;
		}

	}

	/** How many of how many. */
	static final class Share {

		private long with;

		private long of;

		void add(boolean is) {
			this.with += is ? 1 : 0;
			this.of++;
		}

		double value() {
			return this.with / (double) this.of;
		}

		long of() {
			return this.of;
		}

	}

	static Beside madeUp(Noise noise, int people, int shapes, long seed) {
		Beside beside = new Beside("made up, " + noise.name(), shapes, seed);
		Random chance = new Random(seed);
		for (int i = 0; i < people; i++) {
			Readings readings = Readings.madeUp("made up " + i, noise, 150, chance);
			beside.add(readings, (day) -> !day.day().isBefore(Readings.FIRST.plusDays(28)), 10);
		}
		return beside;
	}

	/**
	 * Open data.
	 * @param provisional whether mornings with few readings behind them count too
	 */
	static Beside open(List<OpenData.Person> people, boolean provisional, int shapes, long seed) {
		Beside beside = new Beside(provisional ? "open data, provisional too" : "open data", shapes, seed);
		for (OpenData.Person person : people) {
			Readings readings = person.healthy();
			if (!readings.mornings().isEmpty()) {
				beside.add(readings, (day) -> provisional || !day.rhr().provisional(), 1);
			}
		}
		return beside;
	}

	/**
	 * One person.
	 * @param counts which mornings with a deviation count
	 * @param every on every how manieth of them a rise is planted
	 */
	private void add(Readings readings, Predicate<DayAssessment> counts, int every) {
		List<DayAssessment> days = withDeviation(Diary.healthy(readings));
		List<FirstText.Morning> first = FirstText.of(days);
		boolean[] before = new boolean[2];
		for (int i = 0; i < days.size(); i++) {
			if (counts.test(days.get(i))) {
				this.mornings++;
				before[0] = count(this.first, first.get(i).alarm(), before[0]);
				before[1] = count(this.second, isAlarm(days.get(i)), before[1]);
				this.askedInHealth.add(isAsked(days.get(i)));
				if (this.mornings % every == 0) {
					plantAll(readings, days.get(i).day());
				}
			}
		}
	}

	private static boolean count(Text text, boolean alarm, boolean before) {
		text.mornings += alarm ? 1 : 0;
		text.begun += (alarm && !before) ? 1 : 0;
		return alarm;
	}

	private void plantAll(Readings readings, LocalDate onset) {
		if (areMeasured(readings, onset, 2)) {
			plantStep(readings, onset);
			plantStillUp(readings, onset);
		}
		if (areMeasured(readings, onset, 3)) {
			Watched healthy = Watched.of(readings, onset.plusDays(3));
			for (int i = 0; i < this.shapes; i++) {
				Watched ill = Watched.of(shaped(readings, onset), onset.plusDays(3));
				this.first.shapesNextDay.add(ill.first(onset, 2));
				this.first.shapesSecondDay.add(ill.first(onset, 3));
				this.second.shapesNextDay.add(ill.second(onset, 2));
				this.second.shapesSecondDay.add(ill.second(onset, 3));
			}
			this.first.placeboNextDay.add(healthy.first(onset, 2));
			this.first.placeboSecondDay.add(healthy.first(onset, 3));
			this.second.placeboNextDay.add(healthy.second(onset, 2));
			this.second.placeboSecondDay.add(healthy.second(onset, 3));
		}
	}

	private void plantStep(Readings readings, LocalDate onset) {
		LocalDate end = onset.plusDays(2);
		Watched ill = Watched.of(readings.raised(onset, end, RISE_BPM), end);
		this.first.steps.add(ill.first(onset, 2));
		this.second.steps.add(ill.second(onset, 2));
		this.asked.add(ill.since(onset, 2).stream().anyMatch(Beside::isAsked));
	}

	private void plantStillUp(Readings readings, LocalDate day) {
		LocalDate end = day.plusDays(1);
		Watched alone = Watched.of(readings.raised(day, end, STILL_UP_BPM), end);
		this.first.quietAlone.add(alone.last().quiet());
		this.second.quietAlone.add(isQuiet(alone.lastDay()));
		LocalDate from = end.minusDays(STILL_UP_MORNINGS);
		if (areMeasured(readings, from, STILL_UP_MORNINGS)) {
			Watched third = Watched.of(readings.raised(from, end, STILL_UP_BPM), end);
			this.first.quietThird.add(third.last().quiet());
			this.second.quietThird.add(isQuiet(third.lastDay()));
		}
	}

	private static boolean areMeasured(Readings readings, LocalDate from, int days) {
		return readings.between(from, from.plusDays(days))
			.values()
			.stream()
			.filter((r) -> r.rhr() != null && !r.unsure())
			.count() == days;
	}

	/** One to four mornings up, three to ten long, 3 to 15 bpm at the highest. */
	private Readings shaped(Readings readings, LocalDate onset) {
		int up = 1 + this.chance.nextInt(4);
		int length = 3 + this.chance.nextInt(8);
		double peak = 3 + 12 * this.chance.nextDouble();
		Readings changed = readings;
		for (int i = 0; i < length; i++) {
			double bpm = Math.rint(peak * Math.min(1, (i + 1) / (double) up));
			changed = changed.raised(onset.plusDays(i), onset.plusDays(i + 1L), bpm);
		}
		return changed;
	}

	private static List<DayAssessment> withDeviation(List<DayAssessment> days) {
		return days.stream().filter((day) -> day.rhr().dev() != null).toList();
	}

	static boolean isAlarm(DayAssessment day) {
		RhrFlag flag = day.rhr().flag();
		return day.rhr().above() != null || (flag != null && flag.isHigh());
	}

	/** Asking: from upper on (within 5 to 8), above the line, or High. */
	static boolean isAsked(DayAssessment day) {
		RhrEvidence rhr = day.rhr();
		Line line = rhr.line();
		if (isAlarm(day) || rhr.dev() == null || line == null) {
			return isAlarm(day);
		}
		double upper = (line.upper() == null) ? RULES.flags().askCeiling() : line.upper();
		return rhr.dev() >= Math.min(RULES.flags().askCeiling(), Math.max(RULES.flags().askFloor(), upper));
	}

	private static boolean isQuiet(DayAssessment day) {
		RhrEvidence rhr = day.rhr();
		Line line = rhr.line();
		Double spread = rhr.spread();
		if (isAlarm(day) || rhr.starts() || line == null || spread == null || rhr.flag() == RhrFlag.LOW) {
			return false;
		}
		return rhr.dev() < Line.quietBelow(line.n(), spread, line.bpm(), RULES);
	}

	String name() {
		return this.name;
	}

	long mornings() {
		return this.mornings;
	}

	Text first() {
		return this.first;
	}

	Text second() {
		return this.second;
	}

	/** Rises of 8 bpm asked about by their second morning. */
	Share asked() {
		return this.asked;
	}

	/** Healthy mornings asked about. */
	Share askedInHealth() {
		return this.askedInHealth;
	}

	/**
	 * A person's mornings with a deviation up to a day, and what the first text says.
	 */
	private record Watched(List<DayAssessment> days, List<FirstText.Morning> texts) {

		/** Up to a day (exclusive). */
		static Watched of(Readings readings, LocalDate end) {
			TreeMap<LocalDate, Reading> some = new TreeMap<>(readings.mornings().headMap(end));
			List<DayAssessment> days = withDeviation(
					Diary.healthy(new Readings(readings.person(), readings.method(), some)));
			return new Watched(days, FirstText.of(days));
		}

		List<DayAssessment> since(LocalDate onset, int days) {
			return this.days.stream().filter((day) -> isIn(day, onset, days)).toList();
		}

		boolean second(LocalDate onset, int days) {
			return since(onset, days).stream().anyMatch(Beside::isAlarm);
		}

		boolean first(LocalDate onset, int days) {
			List<FirstText.Morning> in = new ArrayList<>();
			for (int i = 0; i < this.days.size(); i++) {
				if (isIn(this.days.get(i), onset, days)) {
					in.add(this.texts.get(i));
				}
			}
			return in.stream().anyMatch(FirstText.Morning::alarm);
		}

		FirstText.Morning last() {
			return this.texts.get(this.texts.size() - 1);
		}

		DayAssessment lastDay() {
			return this.days.get(this.days.size() - 1);
		}

		private static boolean isIn(DayAssessment day, LocalDate onset, int days) {
			return !day.day().isBefore(onset) && day.day().isBefore(onset.plusDays(days));
		}

	}

}
