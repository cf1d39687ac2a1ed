package org.fallow.illness;

import org.fallow.entry.AfterSaving;
import org.fallow.team.Athlete;

import org.springframework.stereotype.Component;

/** Asks what the assessment of today's entry asks. */
@Component
class AskingAfterSaving implements AfterSaving {

	private final MeasuringAgain again;

	AskingAfterSaving(MeasuringAgain again) {
		this.again = again;
	}

	@Override
	public boolean asks(Athlete athlete) {
		return this.again.asked(athlete.id()).anything();
	}

}
