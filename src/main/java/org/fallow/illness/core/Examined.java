package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Symptom;
import org.jspecify.annotations.Nullable;

/**
 * A red flag that a physician has examined: ticked alone in a morning's entry, no worse
 * than noted and outside an episode, it opens no hold. Only the clearance in force when
 * it was ticked counts, and only an entry made on its own day (the safer readings).
 *
 * @param ticked the red flag
 * @param since first day on which it counts as examined
 */
public record Examined(ReportedSymptom ticked, LocalDate since) {

	/** What a fact of today ticks that a physician has examined; null if it is not so. */
	static @Nullable Examined of(DayFold fold, Fact fact) {
		if (!fold.outside || !(fact instanceof MorningEntry entry) || !entry.hasRedFlag()
				|| !entry.day().equals(fold.day)) {
			return null;
		}
		ReportedSymptom alone = alone(fold, entry);
		IllnessEvent.Cleared cleared = Holds.inForce(before(fold, entry), fold.day);
		if (alone == null || cleared == null || !cleared.word().names(alone)
				|| !fold.day.isBefore(cleared.day().plusDays(fold.rules.words().examinedDays()))) {
			return null;
		}
		return new Examined(alone, cleared.day());
	}

	/**
	 * The red flags that the clearance in force on a day names as examined.
	 * @param events what is known, in the order recorded
	 * @param day the day
	 * @param days on which it counts, the first one included
	 * @return in the order named; empty after these days
	 */
	public static List<Symptom> named(List<IllnessEvent> events, LocalDate day, int days) {
		IllnessEvent.Cleared cleared = Holds.inForce(events, day);
		boolean stands = cleared != null && day.isBefore(cleared.day().plusDays(days));
		return (cleared == null || !stands) ? List.of()
				: cleared.word().examined().stream().map(ReportedSymptom::symptom).toList();
	}

	private static List<IllnessEvent> before(DayFold fold, MorningEntry entry) {
		return fold.known.events().stream().filter((e) -> e.recorded().at().isBefore(entry.recorded().at())).toList();
	}

	/** The one symptom of an entry, known ones passed over; null if there is more. */
	private static @Nullable ReportedSymptom alone(DayFold fold, MorningEntry entry) {
		Sickness sick = fold.sickness(entry);
		if (sick.fever() || sick.medicine()) {
			return null;
		}
		List<ReportedSymptom> felt = entry.symptoms()
			.stream()
			.filter((symptom) -> !fold.known.isKnown(symptom, entry, fold.rules))
			.toList();
		return (felt.size() == 1) ? felt.get(0) : null;
	}

}
