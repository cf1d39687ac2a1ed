package org.fallow.entry;

import org.fallow.team.OfAthlete;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.access.PersonId;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * All that an athlete's days are decided from, apart from what people decided about an
 * illness.
 */
@Service
@Transactional(readOnly = true)
public class Facts {

	private final MorningRows mornings;

	private final JdbcClient client;

	Facts(MorningRows mornings, JdbcClient client) {
		this.mornings = mornings;
		this.client = client;
	}

	/**
	 * The facts of an athlete, all revisions among them.
	 * @param athlete whose
	 * @param from mornings and sessions from this day on; everything else whenever it was
	 * @return the facts, those of one instant in the order they were stored
	 */
	@OfAthlete
	public List<Fact> of(PersonId athlete, LocalDate from) {
		GatheredFacts gathered = new GatheredFacts(mornings(athlete, from));
		this.client.sql(FactRows.SELECT + FactRows.ORDER)
			.param("athlete", athlete.value())
			.param("from", from)
			.query((row) -> {
				if (!gathered.isSymptom(row)) {
					gathered.add(FactRows.read(row), row.getInt("revision"));
				}
			});
		return gathered.facts(null);
	}

	/**
	 * The mornings of an athlete, all revisions among them, still without their symptoms.
	 * @param athlete whose
	 * @param from first day, inclusive
	 * @return by day, then in the order stored
	 */
	@OfAthlete
	public List<RevisedMorning> mornings(PersonId athlete, LocalDate from) {
		return this.mornings.since(athlete, from);
	}

}
