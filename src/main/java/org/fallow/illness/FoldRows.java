package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.Columns;
import org.fallow.entry.Fact;
import org.fallow.entry.FactRows;
import org.fallow.entry.Facts;
import org.fallow.entry.GatheredFacts;
import org.fallow.entry.RevisedMorning;
import org.fallow.illness.core.State;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.ResultSetExtractor;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads all that a fold goes on from in two statements: the mornings, and in one row set
 * where the fold stands, the mornings' symptoms, every other fact and what people
 * decided.
 */
@Component
class FoldRows {

	/**
	 * How many days before the first day asked for the mornings read begin: what a state
	 * looks back on, and the week at most between two stored states.
	 */
	private static final int LOOK_BACK_DAYS = 208;

	private static final String FACTS = FactRows.SELECT + "union all " + EventRows.FACTS + "union all "
			+ CarriedRows.FACTS;

	private static final String FOOTING = """
			select 0 as kind, null::timestamptz as written, null::text as key, null::integer as revision,
				(select day from assessment where athlete_id = :athlete order by day limit 1) as day,
				(select day from assessment where athlete_id = :athlete order by day desc limit 1) as until_day,
				null::timestamptz as recorded_at, null::date as recorded_on,\s""" + RuleSets.LISTED + " " + """
			 as code,
				(select state from assessment where athlete_id = :athlete and day < :day and state is not null
					order by day desc limit 1) as detail, null::integer as number, null::numeric as amount,
				null::boolean as truth, null::text[] as list, null::text as words
			union all\s""";

	private final JdbcClient client;

	private final Facts facts;

	FoldRows(JdbcClient client, Facts facts) {
		this.client = client;
		this.facts = facts;
	}

	/** What a fold over the days from one on goes on from. */
	Input before(Athlete athlete, LocalDate day) {
		LocalDate since = day.minusDays(LOOK_BACK_DAYS);
		Gathered gathered = new Gathered(this.facts.mornings(athlete.id(), since));
		return this.client.sql(FOOTING + FACTS + FactRows.ORDER)
			.param("athlete", athlete.id().value())
			.param("team", athlete.teamId())
			.param("day", day)
			.param("from", since)
			.query((ResultSetExtractor<Input>) (rows) -> input(rows, since, day, gathered));
	}

	/** All facts, with mornings and sessions from a day on. */
	List<Fact> facts(Athlete athlete, LocalDate since) {
		Gathered gathered = new Gathered(this.facts.mornings(athlete.id(), since));
		this.client.sql(FACTS + FactRows.ORDER)
			.param("athlete", athlete.id().value())
			.param("from", since)
			.query((row) -> {
				gathered.add(row);
			});
		return gathered.facts();
	}

	private static Input input(ResultSet rows, LocalDate since, LocalDate day, Gathered gathered) throws SQLException {
		if (!rows.next() || rows.getInt("kind") != 0) {
			throw new IllegalStateException("a fold without a footing");
		}
		String state = rows.getString("detail");
		LocalDate first = Columns.dayOrNull(rows, "day");
		LocalDate last = Columns.dayOrNull(rows, "until_day");
		String listed = rows.getString("code");
		while (rows.next()) {
			gathered.add(rows);
		}
		State read = (state == null) ? null : StateJson.read(state);
		FirstState older = (state != null && read == null) ? FirstState.read(state) : null;
		return new Input(read, older, (older == null) ? null : day, first, last, listed, since, gathered.facts());
	}

	/** Facts of all kinds, with what was carried over when entries were merged. */
	private static final class Gathered {

		private final GatheredFacts facts;

		private final CarriedOver carried = new CarriedOver();

		Gathered(List<RevisedMorning> mornings) {
			this.facts = new GatheredFacts(mornings);
		}

		void add(ResultSet row) throws SQLException {
			if (this.facts.isSymptom(row) || this.carried.add(row)) {
				return;
			}
			boolean event = row.getInt("kind") == EventRows.KIND;
			this.facts.add(event ? EventRows.event(row) : FactRows.read(row), row.getInt("revision"));
		}

		List<Fact> facts() {
			return this.carried.with(this.facts.facts(this.carried.merged()));
		}

	}

	/**
	 * What a fold goes on from.
	 *
	 * @param state the latest stored state before the day asked for; absent if none
	 * @param older where the stored state is of an older version, what it hands on; else
	 * absent
	 * @param keepBefore where the stored state is of an older version the fold begins
	 * with the first fact, and what was decided before this day stays as it is; else
	 * absent
	 * @param first the first day decided; absent before any
	 * @param last the last day decided; absent before any
	 * @param listed the team's rule sets as
	 * {@link RuleSets#bookOf(java.util.UUID, String)} takes them; absent if there are
	 * none
	 * @param since first day of the mornings and sessions among the facts
	 * @param facts the facts
	 */
	record Input(@Nullable State state, @Nullable FirstState older, @Nullable LocalDate keepBefore,
			@Nullable LocalDate first, @Nullable LocalDate last, @Nullable String listed, LocalDate since, List<Fact> facts) {
	}

}
