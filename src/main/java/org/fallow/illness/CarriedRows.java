package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.FactRows;
import org.fallow.entry.Recorded;
import org.fallow.entry.SeveralEntries;
import org.fallow.illness.core.State;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Component;

/**
 * The rows of what was carried over when two entries were merged, or when that was
 * undone, and when merges that stand were made.
 */
@Component
class CarriedRows {

	/** What was carried over, among {@link FactRows}. */
	static final int KIND = FactRows.OWN + 1;

	/** That a merge stands, among {@link FactRows}. */
	static final int MERGED = FactRows.OWN + 2;

	/**
	 * Parameter {@code athlete}. An episode counts for the entry it was carried to only;
	 * holds and ceilings of a part count for the whole.
	 */
	static final String FACTS = """
			select %KIND%, c.carried_at, c.id::text, 1, coalesce(c.of_day, c.carried_on), c.until_day, c.carried_at, c.carried_on,
				c.kind, c.ceiling, null, null, null, null, coalesce(c.state, c.cause)
			from carried_state c where c.athlete_id = %IDS% and (c.kind <> 'EPISODE' or c.athlete_id = :athlete)
				and (c.undone or not exists (select 1 from person_merge_undone u where u.merge_id = c.merge_id))
			union all
			select %MERGED%, p.merged_at, p.id::text, 1, p.merged_on, null, p.merged_at, p.merged_on, null, null, null,
				null, null, null, null
			from person_merge p where p.kept_id = %IDS%
				and not exists (select 1 from person_merge_undone u where u.merge_id = p.id)\s"""
		.replace("%KIND%", String.valueOf(KIND))
		.replace("%MERGED%", String.valueOf(MERGED))
		.replace("%IDS%", SeveralEntries.IDS);

	private static final String INSERT = """
			insert into carried_state (id, athlete_id, merge_id, undone, carried_at, carried_on, kind, ceiling, until_day,
				cause, state, of_day) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""";

	private final JdbcTemplate template;

	CarriedRows(JdbcTemplate template) {
		this.template = template;
	}

	void hold(To to, String cause) {
		add(to, "HOLD", null, null, cause, null);
	}

	void episode(To to, State state) {
		add(to, "EPISODE", null, null, null, StateJson.write(state));
	}

	void slip(To to, LocalDate day) {
		add(to, "SLIP", null, null, null, null, day);
	}

	void report(To to) {
		add(to, "REPORT", null, null, null, null);
	}

	void ceilingOfTheDay(To to, Clearance ceiling) {
		add(to, "DAY_CEILING", ceiling, to.recorded().on(), null, null);
	}

	void clinicianCeiling(To to, Clearance ceiling, LocalDate until) {
		add(to, "CLINICIAN_CEILING", ceiling, until, null, null);
	}

	private void add(To to, String kind, @Nullable Clearance ceiling, @Nullable LocalDate until, @Nullable String cause,
			@Nullable String state) {
		add(to, kind, ceiling, until, cause, state, null);
	}

	private void add(To to, String kind, @Nullable Clearance ceiling, @Nullable LocalDate until, @Nullable String cause,
			@Nullable String state, @Nullable LocalDate day) {
		this.template.update(INSERT, Ids.next(), to.athlete().value(), to.merge(), to.undone(),
				to.recorded().at().atOffset(ZoneOffset.UTC), to.recorded().on(), kind,
				(ceiling == null) ? null : ceiling.name(), until, cause, state, day);
	}

	/**
	 * To whom something is carried over.
	 *
	 * @param athlete for whom it counts
	 * @param merge by which merge
	 * @param undone whether by its end
	 * @param recorded when
	 */
	record To(PersonId athlete, UUID merge, boolean undone, Recorded recorded) {
	}

}
