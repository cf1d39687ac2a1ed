package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Symptom;
import org.fallow.entry.Vaccination;
import org.jspecify.annotations.Nullable;

/**
 * Wheeze, or chest tightness on coughing, soon after a vaccination: a red flag, whichever
 * of the two becomes known first. That it is a known symptom does not matter here (the
 * safer reading).
 */
final class WheezeAfterVaccination {

	/** What holds of this kind have as their cause. */
	static final String CAUSE = "WHEEZE_AFTER_VACCINATION";

	private WheezeAfterVaccination() {
	}

	/** The hold that a fact opens beside what was known before; null if none. */
	static @Nullable HoldState openedBy(Fact fact, Known known, int days) {
		if (fact instanceof Vaccination noted) {
			return any(known, noted.day(), noted.day().plusDays(days), false)
					? new HoldState(noted.day(), noted.recorded(), CAUSE, false) : null;
		}
		if (!(fact instanceof MorningEntry entry)) {
			return null;
		}
		LocalDate day = entry.day();
		if (wheezes(entry) && (any(known, day.minusDays(days), day, true) || isNoted(known, day, days))) {
			return new HoldState(day, entry.recorded(), CAUSE, false);
		}
		return (isVaccinated(entry) && any(known, day, day.plusDays(days), false))
				? new HoldState(day, entry.recorded(), CAUSE, false) : null;
	}

	/** Whether a morning of some days, both inclusive, tells of one of the two. */
	private static boolean any(Known known, LocalDate from, LocalDate to, boolean vaccinated) {
		for (Morning morning : known.mornings(from, to.plusDays(1))) {
			for (MorningEntry entry : morning.revisions()) {
				if (vaccinated ? isVaccinated(entry) : wheezes(entry)) {
					return true;
				}
			}
		}
		return false;
	}

	/** Whether a vaccination is noted with a day that is near enough before one. */
	private static boolean isNoted(Known known, LocalDate day, int days) {
		return known.circumstances()
			.vaccinations()
			.stream()
			.anyMatch((noted) -> !noted.day().isAfter(day) && !noted.day().isBefore(day.minusDays(days)));
	}

	private static boolean isVaccinated(MorningEntry entry) {
		return entry.tags().contains(ContextTag.VACCINATION);
	}

	private static boolean wheezes(MorningEntry entry) {
		for (ReportedSymptom symptom : entry.symptoms()) {
			if (symptom.symptom() == Symptom.WHEEZE) {
				return true;
			}
		}
		return false;
	}

}
