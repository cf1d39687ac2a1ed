package org.fallow.benchmark;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

import org.fallow.entry.Activity;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.Timeline;
import org.fallow.rules.Intensity;

/**
 * Made-up athletes for benchmarks only, the same at each run: a chest strap on nine
 * mornings of ten, normal noise, a run every other day, and illnesses of four mornings
 * with the return after them, two a year as colds are in adults (from memory).
 *
 * @param days days of each athlete
 * @param athletes one for each
 */
record AthleteYears(int days, List<Athlete> athletes) {

	static final LocalDate FIRST = LocalDate.of(2025, 1, 1);

	private static final int SICK_MORNINGS = 4;

	static AthleteYears of(int athletes, int days, int illnessesAYear) {
		List<Athlete> all = new ArrayList<>();
		for (int i = 0; i < athletes; i++) {
			all.add(Athlete.of(new Random(7_000L + i), days, illnessesAYear));
		}
		return new AthleteYears(days, List.copyOf(all));
	}

	long athleteDays() {
		return (long) this.days * this.athletes.size();
	}

	/**
	 * One athlete's readings by day, and the facts they are part of.
	 *
	 * @param day the mornings with a reading, days since the epoch, ascending
	 * @param rhr resting heart rate, bpm, a tenth each step
	 * @param rmssd ms
	 * @param ln natural logarithm of it
	 * @param timeline all facts
	 */
	record Athlete(int[] day, double[] rhr, double[] rmssd, double[] ln, Timeline timeline) {

		static Athlete of(Random random, int days, int illnessesAYear) {
			double level = 42 + random.nextInt(20);
			double ln = 3.6 + random.nextDouble();
			boolean[] sick = sickDays(random, days, illnessesAYear);
			List<Fact> facts = new ArrayList<>();
			int[] day = new int[days];
			double[] rhr = new double[days];
			double[] rmssd = new double[days];
			int n = 0;
			for (int i = 0; i < days; i++) {
				LocalDate date = FIRST.plusDays(i);
				if (sick[i] || random.nextInt(10) > 0) {
					day[n] = (int) date.toEpochDay();
					rhr[n] = tenths(level + 1.8 * random.nextGaussian() + (sick[i] ? 8 : 0));
					rmssd[n] = tenths(Math.min(290, Math.exp(ln + 0.12 * random.nextGaussian())));
					facts.add(morning(date, rhr[n], rmssd[n], sick[i]));
					n++;
				}
				if (i % 2 == 0 && !sick[i]) {
					facts.add(run(date));
				}
			}
			double[] read = Arrays.copyOf(rmssd, n);
			return new Athlete(Arrays.copyOf(day, n), Arrays.copyOf(rhr, n), read,
					Arrays.stream(read).map(Math::log).toArray(), new Timeline(facts, FIRST.minusYears(20)));
		}

		private static boolean[] sickDays(Random random, int days, int illnessesAYear) {
			boolean[] sick = new boolean[days];
			int every = (illnessesAYear == 0) ? Integer.MAX_VALUE : 365 / illnessesAYear;
			for (long from = (illnessesAYear == 0) ? days : 60 + random.nextInt(60); from < days; from += every) {
				for (int i = (int) from; i < Math.min(days, from + SICK_MORNINGS); i++) {
					sick[i] = true;
				}
			}
			return sick;
		}

		private static double tenths(double value) {
			return Math.round(value * 10) / 10.0;
		}

		private static MorningEntry morning(LocalDate day, double rhr, double rmssd, boolean sick) {
			List<ReportedSymptom> felt = sick ? List.of(ReportedSymptom.of(Symptom.FATIGUE, Severity.MODERATE))
					: List.of();
			return new MorningEntry(day, recorded(day, 6), Method.STRAP, Posture.LYING, rhr, rmssd, false, null, felt,
					false, FeverMedicine.NONE, true, sick ? Feels.UNWELL : Feels.WELL, null, List.of(), null);
		}

		private static SessionLog run(LocalDate day) {
			return new SessionLog("run " + day, day, recorded(day, 19), Activity.RUN, 30, 3.0, Intensity.EASY,
					List.of(), false, null);
		}

		private static Recorded recorded(LocalDate day, int hour) {
			Instant at = day.atTime(hour, 0).toInstant(ZoneOffset.UTC);
			return new Recorded(at, day);
		}

	}

}
