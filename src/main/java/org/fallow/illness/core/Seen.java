package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.function.Predicate;

import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.MorningEntry;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of what people said, known symptoms passed over.
 *
 * @param recordedAt when the effective entry was recorded; absent without an entry
 * @param aboveTheNeck symptoms of nose and throat
 * @param stomach vomiting or diarrhoea
 * @param other symptoms below the neck apart from the stomach, or of the whole body
 * @param fever fever in the last 24 hours
 * @param medicine medicine that lowers fever
 * @param smell loss of smell or taste
 * @param redFlag a red flag
 * @param feels how the athlete feels; absent without an answer
 * @param reported whether an illness was reported on this day or for it
 * @param injured whether an injury is recorded for it
 * @param withdrawn whether a coach withdrew an episode on it
 * @param restStands the day whose Rest stands without an entry; absent if none does
 * @param clinicianCeiling ceiling of the clearance in force; absent without one
 * @param clearedAt when that clearance was recorded; absent without one
 * @param clearedUntil its last day; absent without one or when open
 * @param coachCeiling the most a coach allows; full training without a coach's decision
 * @param minor whether the athlete counts as under 18
 * @param besides complaints, and what is still to be told
 * @param slip code of the tick of this day that was a slip; absent without one that works
 * @param unasked the day of a red-flag slip nobody has asked about; absent without one
 * @param asking whether a coach's note ends that, and not entries; false without one
 */
public record Seen(@Nullable Instant recordedAt, boolean aboveTheNeck, boolean stomach, boolean other, boolean fever,
		FeverMedicine medicine, boolean smell, boolean redFlag, @Nullable Feels feels, boolean reported,
		boolean injured, boolean withdrawn, @Nullable LocalDate restStands, @Nullable Clearance clinicianCeiling,
		@Nullable Instant clearedAt, @Nullable LocalDate clearedUntil, Clearance coachCeiling, boolean minor,
		Besides besides, @Nullable String slip, @Nullable LocalDate unasked, boolean asking) {

	static Seen of(DayFold fold) {
		MorningEntry entry = fold.entry;
		Sickness sick = (entry == null) ? Sickness.NONE : fold.sickness(entry);
		IllnessEvent.Cleared cleared = Holds.inForce(fold.known.events(), fold.day);
		IllnessEvent.Slip slip = Slips.of(fold.known, fold.day);
		Slips.Unasked unasked = Slips.unasked(fold);
		return new Seen((entry == null) ? null : entry.recorded().at(), told(fold, Sickness::aboveTheNeck),
				told(fold, Sickness::stomach), told(fold, Sickness::other), told(fold, Sickness::fever),
				(entry == null) ? FeverMedicine.NONE : entry.feverMedicine(), sick.smell(),
				told(fold, Sickness::redFlag), (entry == null) ? null : entry.feels(), fold.isReported(fold.day),
				fold.known.isInjured(fold.day), fold.withdrawnToday, (entry == null) ? restStands(fold) : null,
				(cleared == null) ? null : cleared.ceiling(), (cleared == null) ? null : cleared.recorded().at(),
				(cleared == null) ? null : cleared.until(),
				Ceilings.strictest(Ceilings.on(fold.known.events(), fold.day)), fold.known.isMinor(fold.day),
				Besides.of(fold, sick), (slip == null) ? null : slip.tick().code(),
				(unasked == null) ? null : unasked.day(), unasked != null && unasked.byCoach());
	}

	/**
	 * Whether any revision of today's entry told of it: a correction undoes nothing, only
	 * a slip does (the safer reading).
	 */
	private static boolean told(DayFold fold, Predicate<Sickness> wanted) {
		Morning today = fold.known.morningOn(fold.day);
		return today != null && today.revisions().stream().anyMatch((revision) -> wanted.test(fold.sickness(revision)));
	}

	private static @Nullable LocalDate restStands(DayFold fold) {
		LocalDate restOn = fold.before.restOn();
		LocalDate oldest = fold.day.minusDays(fold.rules.opening().restStandsDays());
		return (restOn == null || restOn.isBefore(oldest)) ? null : restOn;
	}

	/**
	 * Whether there is an entry.
	 * @return false on a silent morning
	 */
	public boolean entered() {
		return this.recordedAt != null;
	}

	/**
	 * Whether a symptom is ticked.
	 * @return false where only fever medicine or nothing is
	 */
	public boolean ticked() {
		return this.aboveTheNeck || this.stomach || this.other || this.fever || this.redFlag || this.smell;
	}

	/** An illness symptom; loss of smell alone is none. */
	boolean isSick() {
		return this.aboveTheNeck || this.stomach || this.other || this.fever || this.redFlag
				|| this.medicine == FeverMedicine.ILLNESS;
	}

}
