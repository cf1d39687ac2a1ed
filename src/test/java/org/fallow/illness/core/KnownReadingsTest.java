package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;

import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.Series;
import org.fallow.entry.Fact;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What is read for the windows while facts come in, corrected, late, with medicines and
 * known symptoms, is what would be read had nothing been asked before.
 */
class KnownReadingsTest {

	private static final LocalDate BASE = LocalDate.of(2026, 1, 5);

	private static final RuleSet RULES = DefaultRules.ruleSet();

	private static final Series STRAP = new Series(Method.STRAP, Posture.LYING, false);

	@RepeatedTest(20)
	void answersAsIfNothingHadBeenAskedBefore(RepetitionInfo round) {
		Random random = new Random(round.getCurrentRepetition());
		Known known = new Known(null, RuleBook.of(RULES));
		List<Fact> facts = new ArrayList<>();
		List<DayRange> out = new ArrayList<>();
		for (int i = 0; i < 90; i++) {
			Fact fact = fact(random, i);
			facts.add(fact);
			known.add(fact);
			if (random.nextInt(30) == 0) {
				out.add(new DayRange(BASE.plusDays(Math.max(0, i - 6)), BASE.plusDays(i)));
			}
			Known fresh = new Known(null, RuleBook.of(RULES));
			facts.forEach(fresh::add);
			LocalDate day = BASE.plusDays(i + 1L - random.nextInt(4));
			compare(new Windows(known, out, RULES), new Windows(fresh, List.copyOf(out), RULES), day);
		}
	}

	private static void compare(Windows asked, Windows fresh, LocalDate day) {
		for (Series series : List.of(STRAP, new Series(Method.STRAP, Posture.LYING, true),
				new Series(Method.WORN, Posture.LYING, false))) {
			assertThat(asked.rhrBaseline(day, series)).isEqualTo(fresh.rhrBaseline(day, series));
			assertThat(asked.hrvBaseline(day, series)).isEqualTo(fresh.hrvBaseline(day, series));
			assertThat(asked.countRhr(BASE, day, series)).isEqualTo(fresh.countRhr(BASE, day, series));
			assertThat(asked.recentLn(day, series)).isEqualTo(fresh.recentLn(day, series));
		}
		assertThat(asked.latestRhrSeries(day)).isEqualTo(fresh.latestRhrSeries(day));
	}

	private static Fact fact(Random random, int i) {
		int kind = random.nextInt(20);
		LocalDate day = BASE.plusDays((kind < 15) ? i : random.nextInt(i + 1));
		return switch (kind) {
			case 18 -> new MedicineChange(day, recorded(BASE.plusDays(i)), random.nextBoolean());
			case 19 ->
				new KnownSymptom(day, day.plusDays(40), recorded(BASE.plusDays(i)), Symptom.COUGH, Severity.MILD);
			default -> morning(day, BASE.plusDays(i), (kind % 7 == 0) ? Method.WORN : Method.STRAP,
					44 + random.nextInt(12), 40.0 + random.nextInt(30), (kind % 5 == 0) ? Symptom.COUGH : null);
		};
	}

	@Test
	void aCorrectionIsReadInsteadOfWhatItCorrects() {
		Known known = quiet(20);
		assertThat(median(known)).isEqualTo(50);
		for (int i = 0; i < 20; i++) {
			known.add(morning(BASE.plusDays(i), BASE.plusDays(20), Method.STRAP, 60, 50.0, null));
		}
		assertThat(median(known)).isEqualTo(60);
	}

	@Test
	void lateMorningsCount() {
		Known known = new Known(null, RuleBook.of(RULES));
		quiet(known, 10, 20);
		Windows windows = windows(known);
		assertThat(windows.countRhr(BASE, BASE.plusDays(20), STRAP)).isEqualTo(10);
		quiet(known, 0, 10);
		assertThat(windows.countRhr(BASE, BASE.plusDays(20), STRAP)).isEqualTo(20);
	}

	@Test
	void otherRulesAreReadByOtherRules() {
		Known known = quiet(20);
		known.add(new MorningEntry(BASE.plusDays(20), recorded(BASE.plusDays(20)), Method.STRAP, Posture.LYING, 50.0,
				50.0, false, 37.7, List.of(), false, FeverMedicine.NONE, null, null, null, List.of(), null));
		RuleSet stricter = RuleEdit.of(RULES, Map.of("/opening/feverCelsius", "37.5")).rules();
		LocalDate end = BASE.plusDays(21);
		assertThat(new Windows(known, List.of(), RULES).countRhr(BASE, end, STRAP)).isEqualTo(21);
		assertThat(new Windows(known, List.of(), stricter).countRhr(BASE, end, STRAP)).isEqualTo(20);
		assertThat(new Windows(known, List.of(), RULES).countRhr(BASE, end, STRAP)).isEqualTo(21);
	}

	@Test
	void meanOfTheLastMorningsLeavesOutSickOnesAndOtherSeries() {
		Known known = quiet(20);
		known.add(morning(BASE.plusDays(20), BASE.plusDays(20), Method.STRAP, 50, 20.0, Symptom.FATIGUE));
		known.add(morning(BASE.plusDays(21), BASE.plusDays(21), Method.WORN, 50, 30.0, null));
		assertThat(windows(known).recentLn(BASE.plusDays(21), STRAP)).hasSize(5)
			.allMatch((ln) -> ln.equals(Math.log(50)));
		assertThat(windows(known).recentLn(BASE.plusDays(21), new Series(Method.WORN, Posture.LYING, false)))
			.containsExactly(Math.log(30));
	}

	@Test
	void theOnlyReadingIsTheLatest() {
		Known known = quiet(1);
		assertThat(windows(known).latestRhrSeries(BASE.plusDays(3))).isEqualTo(STRAP);
		assertThat(windows(known).latestRhrSeries(BASE.plusDays(120))).isEqualTo(STRAP);
		assertThat(windows(known).latestRhrSeries(BASE.plusDays(121))).isNull();
	}

	@Test
	void knowsWhetherAMorningOfAnotherDayCameToday() {
		Known known = quiet(3);
		LocalDate today = BASE.plusDays(3);
		known.newDay();
		known.add(morning(today, today, Method.STRAP, 50, 50.0, null));
		assertThat(known.hasLate(today)).isFalse();
		known.add(new MedicineChange(BASE, recorded(today), true));
		assertThat(known.hasLate(today)).isFalse();
		known.add(morning(BASE, today, Method.STRAP, 50, 50.0, null));
		assertThat(known.hasLate(today)).isTrue();
		known.newDay();
		assertThat(known.hasLate(today)).isFalse();
	}

	/** At the limit itself nothing is suppressed: 4 less half of 0.5. */
	@Test
	void suppressedIsBelowTheLimit() {
		RuleSet.Hrv rules = new RuleSet.Hrv(7, 3, 0.5, 0.5);
		assertThat(HrvFlag.isSuppressed(3.75, 4, 0.5, rules)).isFalse();
		assertThat(HrvFlag.isSuppressed(Math.nextDown(3.75), 4, 0.5, rules)).isTrue();
	}

	private static double median(Known known) {
		return windows(known).rhrBaseline(BASE.plusDays(20), STRAP).median();
	}

	private static Windows windows(Known known) {
		return new Windows(known, List.of(), RULES);
	}

	private static Known quiet(int days) {
		Known known = new Known(null, RuleBook.of(RULES));
		quiet(known, 0, days);
		return known;
	}

	private static void quiet(Known known, int from, int to) {
		for (int i = from; i < to; i++) {
			known.add(morning(BASE.plusDays(i), BASE.plusDays(i), Method.STRAP, 50, 50.0, null));
		}
	}

	private static MorningEntry morning(LocalDate day, LocalDate on, Method method, double bpm, double rmssd,
			@Nullable Symptom symptom) {
		return new MorningEntry(day, recorded(on), method, Posture.LYING, bpm, rmssd, false, null,
				(symptom == null) ? List.of() : List.of(ReportedSymptom.of(symptom, Severity.MILD)), false,
				FeverMedicine.NONE, null, null, null, List.of(), null);
	}

	private static Recorded recorded(LocalDate on) {
		Instant at = on.atTime(6, 0).toInstant(ZoneOffset.UTC);
		return new Recorded(at, on);
	}

}
