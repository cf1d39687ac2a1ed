package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

import org.fallow.access.PersonId;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.SlippedTicks;
import org.fallow.entry.SmallFacts;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.team.Athlete;
import org.fallow.team.OfAthlete;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Red flags told after today's entry was saved: a further revision of it that carries
 * them beside all that stands, so that they work like any other tick.
 */
@Service
@Transactional
public class RedFlagsToday {

	private final SmallFacts facts;

	private final Mornings mornings;

	private final SlippedTicks slips;

	RedFlagsToday(SmallFacts facts, Mornings mornings, SlippedTicks slips) {
		this.facts = facts;
		this.mornings = mornings;
		this.slips = slips;
	}

	/**
	 * Adds red flags to today's entry; without one they are the entry.
	 * @param id whose
	 * @param redFlags what was ticked
	 * @param submission who sends it, and which sending it is
	 * @return as a morning's entry
	 */
	@OfAthlete
	public Saved add(PersonId id, Set<Symptom> redFlags, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		LocalDate today = this.facts.today(athlete);
		StoredMorning stored = this.mornings.latest(id, today).orElse(null);
		List<ReportedSymptom> felt = new ArrayList<>();
		redFlags.forEach((flag) -> felt.add(ReportedSymptom.of(flag, Severity.SEVERE)));
		NewMorning base = NewMorning.feeling(today);
		if (stored != null) {
			MorningEntry entry = stored.entry();
			Set<String> slipped = this.slips.of(athlete, today, null);
			entry.symptoms()
				.stream()
				.filter((one) -> !redFlags.contains(one.symptom()) && !slipped.contains(one.symptom().name()))
				.forEach(felt::add);
			base = NewMorning.correcting(stored).answering(entry.meanwhile());
		}
		felt.sort(Comparator.comparing(ReportedSymptom::symptom));
		return this.mornings.save(id, base.with(felt.toArray(ReportedSymptom[]::new)), submission);
	}

}
