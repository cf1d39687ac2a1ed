package org.fallow.measure;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;

import org.fallow.entry.Method;

/**
 * One person's measured mornings and nothing else.
 *
 * @param person name
 * @param method how they were taken, all lying
 * @param mornings by day; a missed morning is absent
 */
record Readings(String person, Method method, SortedMap<LocalDate, Reading> mornings) {

	/** The first morning of every made-up person. */
	static final LocalDate FIRST = LocalDate.of(2026, 1, 1);

	private static final int BLOCK = 10;

	Readings {
		mornings = Collections.unmodifiableSortedMap(new TreeMap<>(mornings));
	}

	/**
	 * One morning.
	 *
	 * @param rhr resting heart rate, bpm; absent if not taken
	 * @param rmssd RMSSD, ms; absent if not taken
	 * @param unsure whether the source marks it as not to be trusted
	 */
	record Reading(Double rhr, Double rmssd, boolean unsure) {

		private Reading raised(double bpm) {
			return (this.rhr == null) ? this : new Reading(this.rhr + bpm, this.rmssd, this.unsure);
		}

	}

	/**
	 * Made-up healthy mornings: a level of 45 to 65 bpm and of exp(4.0 ± 0.4) ms, around
	 * it noise that carries over from the morning before, whole bpm, and in every ten
	 * days one morning missed.
	 */
	static Readings madeUp(String person, Noise noise, int days, Random chance) {
		double level = 45 + 20 * chance.nextDouble();
		double lnLevel = 4.0 + 0.4 * Math.max(-2, Math.min(2, chance.nextGaussian()));
		double sd = noise.sdAt(level);
		double rhr = chance.nextGaussian();
		double ln = chance.nextGaussian();
		double fresh = Math.sqrt(1 - noise.carried() * noise.carried());
		TreeMap<LocalDate, Reading> mornings = new TreeMap<>();
		int missed = 0;
		for (int day = 0; day < days; day++) {
			missed = (day % BLOCK == 0) ? day + chance.nextInt(BLOCK) : missed;
			rhr = noise.carried() * rhr + fresh * chance.nextGaussian();
			ln = noise.carried() * ln + fresh * chance.nextGaussian();
			if (day != missed) {
				double bpm = Math.max(30, Math.rint(level + sd * rhr));
				mornings.put(FIRST.plusDays(day),
						new Reading(bpm, Math.min(300, Math.exp(lnLevel + noise.ln() * ln)), false));
			}
		}
		return new Readings(person, Method.STRAP, mornings);
	}

	/**
	 * The same with a higher resting heart rate from a day (inclusive) to a day
	 * (exclusive).
	 */
	Readings raised(LocalDate from, LocalDate to, double bpm) {
		TreeMap<LocalDate, Reading> changed = new TreeMap<>(this.mornings);
		changed.subMap(from, to).replaceAll((day, r) -> r.raised(bpm));
		return new Readings(this.person, this.method, changed);
	}

	/** The mornings from a day (inclusive) to a day (exclusive). */
	SortedMap<LocalDate, Reading> between(LocalDate from, LocalDate to) {
		return this.mornings.subMap(from, to);
	}

}
