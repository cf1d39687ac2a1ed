package org.fallow.illness;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.ExaminedFlags;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.Examined;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;

import org.springframework.stereotype.Component;

/** Red flags examined, from the clearances on file. */
@Component
class ExaminedOnFile implements ExaminedFlags {

	private final IllnessFacts facts;

	private final RuleSets ruleSets;

	ExaminedOnFile(IllnessFacts facts, RuleSets ruleSets) {
		this.facts = facts;
		this.ruleSets = ruleSets;
	}

	@Override
	public List<Symptom> on(Athlete athlete, LocalDate day) {
		int days = this.ruleSets.on(athlete.teamId(), day).words().examinedDays();
		return Examined.named(this.facts.of(athlete.id()).stream().map(StoredEvent::event).toList(), day, days);
	}

}
