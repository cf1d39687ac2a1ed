package org.fallow.illness;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.ExaminedFlags;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.Examined;
import org.fallow.team.Athlete;

import org.springframework.stereotype.Component;

/** Red flags examined, from the clearances on file. */
@Component
class ExaminedOnFile implements ExaminedFlags {

	private final IllnessFacts facts;

	ExaminedOnFile(IllnessFacts facts) {
		this.facts = facts;
	}

	@Override
	public List<Symptom> on(Athlete athlete, LocalDate day) {
		return Examined.named(this.facts.of(athlete.id()).stream().map(StoredEvent::event).toList(), day);
	}

}
