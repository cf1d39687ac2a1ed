package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.UUID;

import org.fallow.illness.EnteredMornings;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.view.EpisodeView;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;
import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

/**
 * One of two entries that may be one person, as a coach compares them.
 *
 * @param id for links
 * @param name the name
 * @param code its code in files; absent without one
 * @param bornIn year of birth; absent where not told
 * @param since the day it was added
 * @param mornings its mornings
 * @param account whether somebody signs in as it
 * @param clearance its clearance today
 * @param episode its open illness; absent without one
 */
public record EntrySide(UUID id, String name, @Nullable String code, @Nullable Integer bornIn, LocalDate since,
		EnteredMornings mornings, boolean account, Clearance clearance, @Nullable EpisodeView episode) {

	static EntrySide of(Athlete athlete, EnteredMornings mornings, boolean account, DayAssessment today,
			RuleBook book) {
		LocalDate born = athlete.birthDate();
		return new EntrySide(athlete.id().value(), athlete.name(), athlete.externalCode(),
				(born == null) ? null : born.getYear(), athlete.since(), mornings, account, today.clearance(),
				EpisodeView.of(today, book));
	}

}
