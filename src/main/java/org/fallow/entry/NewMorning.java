package org.fallow.entry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * A morning as somebody enters it; {@link Mornings#save} checks it.
 *
 * @param day the morning's civil day in the athlete's zone
 * @param basedOn revision the form was built on, 0 where there was no entry of that day
 * @param method how the heart rate was taken; needed with a measurement
 * @param posture how the athlete was placed; needed with a measurement
 * @param rhrBpm resting heart rate, bpm; absent when not measured
 * @param rmssdMs RMSSD, ms; absent when not measured
 * @param rrMs RR intervals the two were computed from, ms; empty when none
 * @param unsure true where the measurement is of low quality: kept, shown, never used
 * @param temperatureC body temperature, degrees Celsius; absent when not taken
 * @param symptoms what is felt, empty when nothing is
 * @param feverLast24h 38.0 degrees or more, shivering or feeling feverish
 * @param feverMedicine medicine that lowers fever, last 24 hours
 * @param eatingNormally absent when not asked
 * @param feels absent when not asked
 * @param soreness soreness from training; absent when none
 * @param tags what else may explain the reading
 * @param note the athlete's words
 * @param recordedOn for an import of history only: the day it became known; absent for
 * the day itself (docs/decisions/0003)
 * @param meanwhile the answer about an illness during the mornings without an entry
 * before; absent when not asked or not answered
 */
public record NewMorning(LocalDate day, int basedOn, @Nullable Method method, @Nullable Posture posture,
		@Nullable Double rhrBpm, @Nullable Double rmssdMs, List<Integer> rrMs, boolean unsure,
		@Nullable Double temperatureC, List<ReportedSymptom> symptoms, boolean feverLast24h,
		FeverMedicine feverMedicine, @Nullable Boolean eatingNormally, @Nullable Feels feels,
		@Nullable Severity soreness, List<ContextTag> tags, @Nullable String note, @Nullable LocalDate recordedOn,
		@Nullable Meanwhile meanwhile) {

	/** Copies the lists. */
	public NewMorning {
		rrMs = List.copyOf(rrMs);
		symptoms = List.copyOf(symptoms);
		tags = List.copyOf(tags);
	}

	/**
	 * A morning that does not answer about an illness meanwhile.
	 * @param day as above, and so on
	 * @param basedOn revision
	 * @param method how the heart rate was taken
	 * @param posture how the athlete was placed
	 * @param rhrBpm bpm
	 * @param rmssdMs ms
	 * @param rrMs RR intervals, ms
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
	 * @param recordedOn for history
	 */
	public NewMorning(LocalDate day, int basedOn, @Nullable Method method, @Nullable Posture posture,
			@Nullable Double rhrBpm, @Nullable Double rmssdMs, List<Integer> rrMs, boolean unsure,
			@Nullable Double temperatureC, List<ReportedSymptom> symptoms, boolean feverLast24h,
			FeverMedicine feverMedicine, @Nullable Boolean eatingNormally, @Nullable Feels feels,
			@Nullable Severity soreness, List<ContextTag> tags, @Nullable String note, @Nullable LocalDate recordedOn) {
		this(day, basedOn, method, posture, rhrBpm, rmssdMs, rrMs, unsure, temperatureC, symptoms, feverLast24h,
				feverMedicine, eatingNormally, feels, soreness, tags, note, recordedOn, null);
	}

	/**
	 * A first entry with measurements only.
	 * @param day the morning
	 * @param method how the heart rate was taken
	 * @param posture how the athlete was placed
	 * @param rhrBpm resting heart rate, bpm; absent when not measured
	 * @param rmssdMs RMSSD, ms; absent when not measured
	 * @return the morning, feeling well
	 */
	public static NewMorning measured(LocalDate day, Method method, Posture posture, @Nullable Double rhrBpm,
			@Nullable Double rmssdMs) {
		return new NewMorning(day, 0, method, posture, rhrBpm, rmssdMs, List.of(), false, null, List.of(), false,
				FeverMedicine.NONE, null, Feels.WELL, null, List.of(), null, null);
	}

	/**
	 * A first entry without measurements.
	 * @param day the morning
	 * @param symptoms what is felt; empty for all well
	 * @return the morning
	 */
	public static NewMorning feeling(LocalDate day, ReportedSymptom... symptoms) {
		return new NewMorning(day, 0, null, null, null, null, List.of(), false, null, List.of(symptoms), false,
				FeverMedicine.NONE, null, (symptoms.length == 0) ? Feels.WELL : Feels.ABLE, null, List.of(), null,
				null);
	}

	/**
	 * A correction of a stored entry that says the same still.
	 * @param stored the entry
	 * @return the morning, to be changed
	 */
	public static NewMorning correcting(StoredMorning stored) {
		MorningEntry entry = stored.entry();
		return new NewMorning(entry.day(), stored.revision(), entry.method(), entry.posture(), entry.rhrBpm(),
				entry.rmssdMs(), stored.rrMs(), entry.unsure(), entry.temperatureC(), entry.symptoms(),
				entry.feverLast24h(), entry.feverMedicine(), entry.eatingNormally(), entry.feels(), entry.soreness(),
				entry.tags(), entry.note(), null);
	}

	/**
	 * The same, with symptoms.
	 * @param felt what is felt
	 * @return a copy
	 */
	public NewMorning with(ReportedSymptom... felt) {
		return new NewMorning(this.day, this.basedOn, this.method, this.posture, this.rhrBpm, this.rmssdMs, this.rrMs,
				this.unsure, this.temperatureC, List.of(felt), this.feverLast24h, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.tags, this.note, this.recordedOn, this.meanwhile);
	}

	/**
	 * The same, built on a revision.
	 * @param revision the revision the form was built on
	 * @return a copy
	 */
	public NewMorning basedOn(int revision) {
		return new NewMorning(this.day, revision, this.method, this.posture, this.rhrBpm, this.rmssdMs, this.rrMs,
				this.unsure, this.temperatureC, this.symptoms, this.feverLast24h, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.tags, this.note, this.recordedOn, this.meanwhile);
	}

	/**
	 * The same, with a measurement that is kept, shown and never used.
	 * @return a copy
	 */
	public NewMorning markedUnsure() {
		return new NewMorning(this.day, this.basedOn, this.method, this.posture, this.rhrBpm, this.rmssdMs, this.rrMs,
				true, this.temperatureC, this.symptoms, this.feverLast24h, this.feverMedicine, this.eatingNormally,
				this.feels, this.soreness, this.tags, this.note, this.recordedOn, this.meanwhile);
	}

	/**
	 * The same with an answer about an illness meanwhile.
	 * @param answer the answer; absent for none
	 * @return a copy
	 */
	public NewMorning answering(@Nullable Meanwhile answer) {
		return new NewMorning(this.day, this.basedOn, this.method, this.posture, this.rhrBpm, this.rmssdMs, this.rrMs,
				this.unsure, this.temperatureC, this.symptoms, this.feverLast24h, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.tags, this.note, this.recordedOn, answer);
	}

	/** Rounded as the database holds it: bpm and degrees to one decimal, ms to three. */
	NewMorning rounded() {
		return new NewMorning(this.day, this.basedOn, this.method, this.posture, rounded(this.rhrBpm, 1),
				rounded(this.rmssdMs, 3), this.rrMs, this.unsure, rounded(this.temperatureC, 1), this.symptoms,
				this.feverLast24h, this.feverMedicine, this.eatingNormally, this.feels, this.soreness, this.tags,
				this.note, this.recordedOn, this.meanwhile);
	}

	private static @Nullable Double rounded(@Nullable Double value, int decimals) {
		if (value == null || !Double.isFinite(value)) {
			return value;
		}
		return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue();
	}

	/** Whether a stored entry says the same, whenever it became known. */
	boolean says(StoredMorning stored) {
		return stored.rrMs().equals(this.rrMs) && stored.entry().equals(entry(stored.entry().recorded()));
	}

	/** The same morning as the same revision has the same id, whichever file it is in. */
	UUID requestId(int revision) {
		StringBuilder said = new StringBuilder(128).append(revision);
		for (Object part : new @Nullable Object[] { this.day, this.recordedOn, this.method, this.posture, this.rhrBpm,
				this.rmssdMs, this.unsure, this.temperatureC, this.feverLast24h, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.meanwhile }) {
			said.append('\n').append(part);
		}
		for (List<?> parts : List.of(this.rrMs, this.symptoms, this.tags)) {
			said.append('\n').append(parts.size());
			parts.forEach((part) -> said.append('\n').append(part));
		}
		return UUID.nameUUIDFromBytes(
				said.append((this.note == null) ? "" : '\n' + this.note).toString().getBytes(StandardCharsets.UTF_8));
	}

	MorningEntry entry(Recorded recorded) {
		return new MorningEntry(this.day, recorded, this.method, this.posture, this.rhrBpm, this.rmssdMs, this.unsure,
				this.temperatureC, this.symptoms, this.feverLast24h, this.feverMedicine, this.eatingNormally,
				this.feels, this.soreness, this.tags, this.note, this.meanwhile);
	}

}
