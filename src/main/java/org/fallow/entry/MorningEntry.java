package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * What an athlete entered for one morning. All measurements are optional: an entry with
 * symptoms only, or with nothing but "all well", is complete. Several entries for one day
 * are revisions; the one recorded last is effective, the others are kept.
 *
 * @param day the morning's civil day in the athlete's zone
 * @param recorded when it became known
 * @param method how the heart rate was taken, given with a measurement
 * @param posture how the athlete was placed, given with a measurement
 * @param rhrBpm resting heart rate, 20 to 220 bpm, one decimal
 * @param rmssdMs RMSSD, above 0 to 300 ms, three decimals
 * @param unsure true where the measurement is of low quality: kept, shown, never used
 * @param temperatureC body temperature, degrees Celsius
 * @param symptoms what is felt, empty when nothing is
 * @param feverLast24h 38.0 degrees or more, shivering or feeling feverish, last 24 hours
 * @param feverMedicine medicine that lowers fever, last 24 hours
 * @param eatingNormally eating and drinking normally; absent when not asked
 * @param feels how the athlete feels; absent when not asked
 * @param soreness soreness from training, no illness symptom; absent when none
 * @param tags what else may explain the reading, in the order of the enum
 * @param note the athlete's words
 * @param meanwhile the answer about an illness during the mornings without an entry
 * before; absent when not asked or not answered
 */
public record MorningEntry(LocalDate day, Recorded recorded, @Nullable Method method, @Nullable Posture posture,
		@Nullable Double rhrBpm, @Nullable Double rmssdMs, boolean unsure, @Nullable Double temperatureC,
		List<ReportedSymptom> symptoms, boolean feverLast24h, FeverMedicine feverMedicine,
		@Nullable Boolean eatingNormally, @Nullable Feels feels, @Nullable Severity soreness, List<ContextTag> tags,
		@Nullable String note, @Nullable Meanwhile meanwhile) implements Fact {

	/** Lowest resting heart rate taken for a real one, bpm. */
	public static final double LOWEST_RHR = 20;

	/** Highest resting heart rate taken for a real one, bpm. */
	public static final double HIGHEST_RHR = 220;

	/** Highest RMSSD taken for a real one, ms. */
	public static final double HIGHEST_RMSSD = 300;

	/**
	 * Checks the ranges.
	 * @throws IllegalArgumentException with what is wrong, if a number is not a plausible
	 * one or a measurement lacks its method or posture
	 */
	public MorningEntry {
		symptoms = List.copyOf(symptoms);
		tags = List.copyOf(tags);
		checkRange("resting heart rate", rhrBpm, LOWEST_RHR, HIGHEST_RHR);
		checkRange("RMSSD", rmssdMs, Double.MIN_VALUE, HIGHEST_RMSSD);
		checkRange("temperature", temperatureC, 30, 45);
		if ((rhrBpm != null || rmssdMs != null) && (method == null || posture == null)) {
			throw new IllegalArgumentException("a measurement needs its method and posture");
		}
	}

	/**
	 * An entry that does not answer about an illness meanwhile.
	 * @param day as above, and so on
	 * @param recorded when it became known
	 * @param method how the heart rate was taken
	 * @param posture how the athlete was placed
	 * @param rhrBpm bpm
	 * @param rmssdMs ms
	 * @param unsure low quality
	 * @param temperatureC degrees Celsius
	 * @param symptoms what is felt
	 * @param feverLast24h fever
	 * @param feverMedicine medicine that lowers it
	 * @param eatingNormally eating and drinking
	 * @param feels how the athlete feels
	 * @param soreness from training
	 * @param tags what else
	 * @param note words
	 */
	public MorningEntry(LocalDate day, Recorded recorded, @Nullable Method method, @Nullable Posture posture,
			@Nullable Double rhrBpm, @Nullable Double rmssdMs, boolean unsure, @Nullable Double temperatureC,
			List<ReportedSymptom> symptoms, boolean feverLast24h, FeverMedicine feverMedicine,
			@Nullable Boolean eatingNormally, @Nullable Feels feels, @Nullable Severity soreness, List<ContextTag> tags,
			@Nullable String note) {
		this(day, recorded, method, posture, rhrBpm, rmssdMs, unsure, temperatureC, symptoms, feverLast24h,
				feverMedicine, eatingNormally, feels, soreness, tags, note, null);
	}

	/**
	 * The same with an answer about an illness meanwhile.
	 * @param answer the answer; absent for none
	 * @return a copy
	 */
	public MorningEntry answering(@Nullable Meanwhile answer) {
		return new MorningEntry(this.day, this.recorded, this.method, this.posture, this.rhrBpm, this.rmssdMs,
				this.unsure, this.temperatureC, this.symptoms, this.feverLast24h, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.tags, this.note, answer);
	}

	/** The same with what is felt. */
	MorningEntry with(List<ReportedSymptom> felt) {
		return new MorningEntry(this.day, this.recorded, this.method, this.posture, this.rhrBpm, this.rmssdMs,
				this.unsure, this.temperatureC, felt, this.feverLast24h, this.feverMedicine, this.eatingNormally,
				this.feels, this.soreness, this.tags, this.note, this.meanwhile);
	}

	private static void checkRange(String what, @Nullable Double value, double lowest, double highest) {
		if (value != null && !(value >= lowest && value <= highest)) {
			throw new IllegalArgumentException(what + " out of range: " + value);
		}
	}

	/**
	 * Whether any red flag is among the symptoms.
	 * @return true if a clinician must see the athlete first
	 */
	public boolean hasRedFlag() {
		for (ReportedSymptom reported : this.symptoms) {
			if (reported.symptom().isRedFlag()) {
				return true;
			}
		}
		return false;
	}

	/**
	 * The same entry with other symptoms.
	 * @param felt what is felt
	 * @return a copy
	 */
	public MorningEntry feeling(List<ReportedSymptom> felt) {
		return with(felt);
	}

	/**
	 * The same entry as if its resting heart rate had been taken another way.
	 * @param how how it was taken
	 * @param placed how the athlete was placed
	 * @param bpm resting heart rate, bpm
	 * @return a copy whose measurement is used
	 */
	public MorningEntry measuredAs(Method how, Posture placed, double bpm) {
		return new MorningEntry(this.day, this.recorded, how, placed, bpm, this.rmssdMs, false, this.temperatureC,
				this.symptoms, this.feverLast24h, this.feverMedicine, this.eatingNormally, this.feels, this.soreness,
				this.tags, this.note, this.meanwhile);
	}

	/**
	 * The same entry as known at another time.
	 * @param known when it became known
	 * @return a copy
	 */
	public MorningEntry recordedAs(Recorded known) {
		return new MorningEntry(this.day, known, this.method, this.posture, this.rhrBpm, this.rmssdMs, this.unsure,
				this.temperatureC, this.symptoms, this.feverLast24h, this.feverMedicine, this.eatingNormally,
				this.feels, this.soreness, this.tags, this.note, this.meanwhile);
	}

}
