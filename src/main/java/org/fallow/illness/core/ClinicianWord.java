package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;

import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Symptom;
import org.fallow.rules.RuleBounds;
import org.jspecify.annotations.Nullable;

/**
 * What a clearance says besides its ceiling, and whose word it is.
 *
 * @param by whose word
 * @param examinedOn the day a physician examined the athlete; absent where none did
 * @param noIllness whether the physician says that this was no illness
 * @param examined red flags that the physician examined, each with the greatest severity
 * that is unchanged
 */
public record ClinicianWord(By by, @Nullable LocalDate examinedOn, boolean noIllness, List<ReportedSymptom> examined) {

	/** The red flags that can be examined: palpitations, chest wall, breathlessness. */
	public static final Set<Symptom> CAN_BE_EXAMINED = Set.of(Symptom.PALPITATIONS, Symptom.CHEST_PAIN,
			Symptom.BREATHLESSNESS);

	/**
	 * Days, the first one included, of what an athlete tells where nobody can confirm it,
	 * that no rule set exceeds.
	 */
	static final int MOST_TOLD_DAYS = RuleBounds.mostOf("/words/toldByAthleteDays");

	/** Another clinician's word that says nothing besides the ceiling. */
	public static final ClinicianWord PLAIN = new ClinicianWord(By.CLINICIAN, null, false, List.of());

	/**
	 * Refuses what only a physician who examined the athlete can say.
	 * @throws IllegalArgumentException if anybody else says it, or of another red flag
	 */
	public ClinicianWord {
		examined = List.copyOf(examined);
		if ((noIllness || !examined.isEmpty()) && (by != By.PHYSICIAN || examinedOn == null)) {
			throw new IllegalArgumentException("only a physician who examined the athlete can say so");
		}
		if (!examined.stream().map(ReportedSymptom::symptom).allMatch(CAN_BE_EXAMINED::contains)) {
			throw new IllegalArgumentException("this red flag is never passed over");
		}
	}

	/**
	 * What an athlete tells who is all there is.
	 * @return it says nothing besides the ceiling
	 */
	public static ClinicianWord toldByTheAthlete() {
		return new ClinicianWord(By.ATHLETE, null, false, List.of());
	}

	/** Whether it names a red flag as examined at this severity or a worse one. */
	boolean names(ReportedSymptom ticked) {
		return this.examined.stream()
			.anyMatch((one) -> one.symptom() == ticked.symptom() && ticked.severity().compareTo(one.severity()) <= 0);
	}

	/** Whose word a clearance is. */
	public enum By {

		/** A physician. */
		PHYSICIAN,
		/** Another clinician. */
		CLINICIAN,
		/** Told by the athlete, where there is neither coach nor owner to confirm it. */
		ATHLETE

	}

}
