package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.ContextTag;
import org.fallow.entry.KnownCause;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Symptom;
import org.fallow.rules.ToldRules;
import org.jspecify.annotations.Nullable;

/**
 * Which symptoms of a morning are known to be no illness. What was noted on the day an
 * episode opened, or during it, does not count for that episode (the safer reading for
 * the day itself).
 */
final class PassedOver {

	private final List<KnownSymptom> noted = new ArrayList<>();

	private @Nullable LocalDate openedOn;

	PassedOver copy() {
		PassedOver copy = new PassedOver();
		copy.noted.addAll(this.noted);
		copy.openedOn = this.openedOn;
		return copy;
	}

	void add(KnownSymptom symptom) {
		this.noted.add(symptom);
	}

	/** The day the open episode opened on; null while there is none. */
	void during(@Nullable LocalDate opened) {
		this.openedOn = opened;
	}

	boolean isEmpty() {
		return this.noted.isEmpty();
	}

	/** Whether a symptom is a known one, no worse than noted. */
	boolean covers(ReportedSymptom symptom, MorningEntry entry, MorningsByDay mornings, ToldRules rules) {
		for (KnownSymptom known : this.noted) {
			if (counts(known) && known.covers(symptom, entry) && (known.cause() != KnownCause.CYCLE
					|| isWithinTheCycle(entry, mornings, rules.cycleMornings()))) {
				return true;
			}
		}
		return false;
	}

	/** Whether a symptom is noted for a cause on a morning, however mild. */
	boolean isNoted(Symptom symptom, KnownCause cause, MorningEntry entry) {
		for (KnownSymptom known : this.noted) {
			if (known.symptom() == symptom && known.cause() == cause && counts(known) && known.holds(entry)) {
				return true;
			}
		}
		return false;
	}

	private boolean counts(KnownSymptom known) {
		return this.openedOn == null || known.recorded().on().isBefore(this.openedOn);
	}

	/** Mornings running that carry the tag; running passes over gaps. */
	private static boolean isWithinTheCycle(MorningEntry entry, MorningsByDay mornings, int most) {
		int tagged = 1;
		for (Morning morning : mornings.backFrom(entry.day().minusDays(1))) {
			if (tagged > most || !morning.effective().tags().contains(ContextTag.CYCLE_PHASE)) {
				break;
			}
			tagged++;
		}
		return tagged <= most;
	}

}
