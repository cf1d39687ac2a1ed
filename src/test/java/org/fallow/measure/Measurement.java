package org.fallow.measure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

import org.fallow.rules.Clearance;

/**
 * What was measured on one kind of mornings.
 *
 * @param name of the kind
 * @param source what they are
 * @param healthy healthy mornings
 * @param returns planted illnesses
 */
record Measurement(String name, String source, HealthyShares healthy, Returns returns) {

	private static final int HEALTHY_DAYS = 150;

	private static final int ONSET_DAY = 60;

	private static final int ESTABLISHED = 14;

	private static final int DENSE_DAYS = 30;

	private static final int DENSE_LEAST = 27;

	/** Made-up people: healthy mornings, and the same with an illness planted. */
	static Measurement madeUp(Noise noise, int people, long seed) {
		Random chance = new Random(seed);
		HealthyShares healthy = new HealthyShares();
		Returns returns = new Returns();
		LocalDate onset = Readings.FIRST.plusDays(ONSET_DAY);
		LocalDate baselineFrom = Readings.FIRST.plusDays(28);
		for (int i = 0; i < people; i++) {
			Readings readings = Readings.madeUp("made up " + i, noise, HEALTHY_DAYS, chance);
			healthy.add(Diary.healthy(readings), (day) -> !day.day().isBefore(baselineFrom));
			returns.add(Diary.ill(readings, onset, onset.plusDays(Returns.FOLLOWED - 1L)), onset);
		}
		return new Measurement("made up, " + noise.name(), noise.source(), healthy, returns);
	}

	/**
	 * Made-up people whose resting heart rate is 8 bpm up on three mornings, and who say
	 * nothing of it: what the numbers alone can find.
	 */
	static List<OpenData.Person> feverish(Noise noise, int people, long seed) {
		Random chance = new Random(seed);
		LocalDate onset = Readings.FIRST.plusDays(ONSET_DAY + HEALTHY_DAYS / 3);
		List<OpenData.Person> all = new ArrayList<>();
		for (int i = 0; i < people; i++) {
			Readings readings = Readings.madeUp("made up " + i, noise, HEALTHY_DAYS, chance);
			all.add(new OpenData.Person(readings.raised(onset, onset.plusDays(Diary.SICK_MORNINGS), Diary.SICK_BPM),
					onset));
		}
		return all;
	}

	/**
	 * Open data: mornings taken as healthy; and in their dense stretches an illness
	 * planted every seven days, each in a course of its own.
	 */
	static Measurement open(List<OpenData.Person> people) {
		HealthyShares healthy = new HealthyShares();
		Returns returns = new Returns();
		for (OpenData.Person person : people) {
			Readings readings = person.healthy();
			if (!readings.mornings().isEmpty()) {
				healthy.add(Diary.healthy(readings), (day) -> !day.rhr().provisional());
				plant(readings, returns);
			}
		}
		return new Measurement("open data", "device, whole bpm", healthy, returns);
	}

	private static void plant(Readings readings, Returns returns) {
		LocalDate last = readings.mornings().lastKey();
		for (LocalDate onset = readings.mornings().firstKey().plusDays(ESTABLISHED); !onset.plusDays(DENSE_DAYS)
			.isAfter(last); onset = onset.plusDays(7)) {
			LocalDate well = onset.plusDays(Diary.SICK_MORNINGS);
			if (measured(readings, onset.minusDays(31), onset.minusDays(3)) >= ESTABLISHED
					&& measured(readings, well, well.plusDays(DENSE_DAYS)) >= DENSE_LEAST) {
				LocalDate to = well.plusDays(DENSE_DAYS - 1L);
				returns.add(Diary.ill(readings, onset, to.isBefore(last) ? to : last), onset);
			}
		}
	}

	private static long measured(Readings readings, LocalDate from, LocalDate to) {
		return readings.between(from, to).values().stream().filter((r) -> r.rhr() != null && !r.unsure()).count();
	}

	double full() {
		return this.healthy.share(Clearance.FULL_TRAINING);
	}

}
