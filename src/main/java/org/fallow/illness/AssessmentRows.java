package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Columns;
import org.fallow.entry.ManyRows;
import org.fallow.entry.ManyRows.Column;
import org.fallow.entry.ManyRows.Type;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.GateSheet;
import org.fallow.illness.core.HrvEvidence;
import org.fallow.illness.core.Mark;
import org.fallow.illness.core.RhrEvidence;
import org.fallow.illness.core.State;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.SqlArrayValue;
import org.springframework.stereotype.Component;

/**
 * The compact row of each athlete's day. Every so many days, and on each day the fold was
 * begun or ended, the row holds the state of the fold too, from which any later day can
 * be computed again.
 */
@Component
class AssessmentRows {

	/** Days between two stored states. */
	private static final int EVERY = 7;

	private static final List<String> COLUMNS = List.of("athlete_id", "day", "rule_hash", "clearance", "reasons",
			"notices", "holding", "stage", "day_in_stage", "path", "mark", "rhr_bpm", "rhr_n", "rhr_baseline",
			"rhr_spread", "rhr_dev", "rhr_line", "rhr_flag", "above_line", "hrv_n", "hrv_mean", "hrv_sd", "hrv_recent",
			"hrv_flag", "next_gate", "next_gate_earliest", "state");

	/** What becomes of a day that is stored already; the table's alias is a. */
	private static final String KEEP = keep();

	static final String UPSERT = "insert into assessment as a (" + String.join(", ", COLUMNS) + ") values ("
			+ "?, ".repeat(COLUMNS.size() - 1) + "?) " + KEEP;

	private static final List<Column> TYPED = COLUMNS.stream().map(AssessmentRows::typed).toList();

	private static final ManyRows MANY = new ManyRows("assessment as a", TYPED, KEEP);

	/** The same where none of the days is stored, which spares asking for each. */
	private static final ManyRows MANY_NEW = new ManyRows("assessment", TYPED, "");

	/** All but the state of the fold, which no page reads. */
	static final String SHOWN = String.join(", ", COLUMNS.subList(0, COLUMNS.size() - 1));

	private final JdbcClient client;

	private final JdbcTemplate template;

	AssessmentRows(JdbcClient client, JdbcTemplate template) {
		this.client = client;
		this.template = template;
	}

	private static String keep() {
		List<String> values = COLUMNS.subList(2, COLUMNS.size());
		String set = String.join(", ", values.stream().map((c) -> c + " = excluded." + c).toList());
		String before = String.join(", ", values.stream().map((c) -> "a." + c).toList());
		String after = String.join(", ", values.stream().map((c) -> "excluded." + c).toList());
		return "on conflict (athlete_id, day) do update set " + set + " where (" + before + ") is distinct from ("
				+ after + ")";
	}

	private static Column typed(String name) {
		return switch (name) {
			case "athlete_id" -> new Column(name, Type.ID, true);
			case "day", "next_gate_earliest" -> new Column(name, Type.DAY, false);
			case "holding", "above_line" -> new Column(name, Type.TRUTH, false);
			case "stage", "day_in_stage", "rhr_n", "hrv_n", "next_gate" -> new Column(name, Type.INTEGER, false);
			case "rhr_bpm", "rhr_baseline", "rhr_spread", "rhr_dev", "rhr_line", "hrv_mean", "hrv_sd", "hrv_recent" ->
				new Column(name, Type.NUMBER, false);
			default -> new Column(name, Type.TEXT, false);
		};
	}

	void store(PersonId athlete, List<DayAssessment> days) {
		List<@Nullable Object[]> rows = new ArrayList<>();
		for (int i = 0; i < days.size(); i++) {
			DayAssessment day = days.get(i);
			boolean withState = i == days.size() - 1 || day.day().toEpochDay() % EVERY == 0;
			rows.add(row(athlete, day, withState ? StateJson.write(day.state()) : null));
		}
		(isStored(athlete, days) ? MANY : MANY_NEW).store(this.template, rows);
	}

	private boolean isStored(PersonId athlete, List<DayAssessment> days) {
		return this.client.sql("select exists (select 1 from assessment where athlete_id = ? and day between ? and ?)")
			.params(athlete.value(), days.get(0).day(), days.get(days.size() - 1).day())
			.query(Boolean.class)
			.single();
	}

	static @Nullable Object[] row(PersonId athlete, DayAssessment day, @Nullable String state) {
		Episode episode = day.state().episode();
		GateSheet gate = day.gate();
		RhrEvidence rhr = day.rhr();
		HrvEvidence hrv = day.hrv();
		return Columns.of(athlete.value(), day.day(), day.ruleHash(), day.clearance(),
				MessagesJson.write(day.reasons()), MessagesJson.write(day.notices()), day.holding(),
				(episode == null || day.holding()) ? null : episode.stage(),
				(episode == null || day.holding()) ? null : day.dayInStage(), (episode == null) ? null : episode.path(),
				day.mark(), rhr.reading(), rhr.n(), rhr.baseline(), rhr.spread(), rhr.dev(),
				(rhr.line() == null) ? null : rhr.line().bpm(), rhr.flag(), rhr.above() != null, hrv.n(), hrv.mean(),
				hrv.sd(), hrv.recent(), hrv.flag(), (gate == null) ? null : gate.to(),
				(gate == null) ? null : gate.earliest(), state);
	}

	Optional<LocalDate> lastDay(PersonId athlete) {
		return this.client.sql("select day from assessment where athlete_id = ? order by day desc limit 1")
			.param(athlete.value())
			.query(LocalDate.class)
			.optional();
	}

	List<AssessedDay> of(PersonId athlete, LocalDate from, LocalDate to) {
		return this.client
			.sql("select " + SHOWN + " from assessment where athlete_id = ? and day between ? and ? order by day")
			.params(athlete.value(), from, to)
			.query(AssessmentRows::read)
			.list();
	}

	/**
	 * The last day ill or under a hold in a span of each athlete who had one.
	 */
	Map<PersonId, LocalDate> lastIll(Collection<PersonId> athletes, LocalDate from, LocalDate to) {
		Map<PersonId, LocalDate> found = new HashMap<>();
		this.client
			.sql("""
					select wanted.id, a.day from unnest(:ids::uuid[]) as wanted (id) cross join lateral
						(select day from assessment where athlete_id = wanted.id and (stage = 0 or holding) and day between :from and :to
							order by day desc limit 1) a""")
			.param("ids", ids(athletes))
			.param("from", from)
			.param("to", to)
			.query((row) -> {
				found.put(new PersonId(row.getObject("id", UUID.class)), Columns.day(row, "day"));
			});
		return found;
	}

	/** The days of a span in an episode or under a hold. */
	Map<PersonId, List<LocalDate>> unwell(Collection<PersonId> athletes, LocalDate from, LocalDate to) {
		Map<PersonId, List<LocalDate>> found = new HashMap<>();
		this.client.sql("""
				select athlete_id, day from assessment where athlete_id = any (:ids) and day between :from and :to
					and (stage is not null or holding) order by athlete_id, day""")
			.param("ids", ids(athletes))
			.param("from", from)
			.param("to", to)
			.query((row) -> {
				found.computeIfAbsent(new PersonId(row.getObject("athlete_id", UUID.class)), (id) -> new ArrayList<>())
					.add(Columns.day(row, "day"));
			});
		return found;
	}

	/**
	 * The state after the latest day of each athlete whose row holds it, if in an
	 * episode.
	 */
	Map<PersonId, State> inEpisode(Collection<PersonId> athletes) {
		Map<PersonId, State> found = new HashMap<>();
		this.client.sql("""
				select a.athlete_id, a.state from athlete_status s
				join assessment a on a.athlete_id = s.athlete_id and a.day = s.latest_day
				where s.athlete_id = any (:ids) and a.path is not null and a.state is not null""")
			.param("ids", ids(athletes))
			.query((row) -> {
				State state = StateJson.read(row.getString("state"));
				if (state != null) {
					found.put(new PersonId(row.getObject("athlete_id", UUID.class)), state);
				}
			});
		return found;
	}

	/** The latest day decided of several athletes and those of some days before it. */
	List<AssessedDay> latest(Collection<PersonId> athletes, int days) {
		return this.client
			.sql("select a.* from athlete_status s cross join lateral (select " + SHOWN
					+ """
							 from assessment where athlete_id = s.athlete_id and day between s.latest_day - :days::integer and s.latest_day) a
							where s.athlete_id = any (:ids) order by a.athlete_id, a.day""")
			.param("ids", ids(athletes))
			.param("days", days)
			.query(AssessmentRows::read)
			.list();
	}

	/**
	 * The latest day in the span up to a day, and the days of the span after it, up to
	 * the one by which the athlete stands now.
	 */
	List<AssessedDay> around(Collection<PersonId> athletes, LocalDate day, int before, int after) {
		return this.client
			.sql("select a.* from unnest(:ids::uuid[]) as wanted (id) cross join lateral ((select " + SHOWN
					+ " from assessment where athlete_id = wanted.id and day between :first and :day"
					+ " order by day desc limit 1) union all (select " + SHOWN
					+ " from assessment where athlete_id = wanted.id and day > :day and day <= :last"
					+ " and day <= (select latest_day from athlete_status where athlete_id = wanted.id)"
					+ " order by day)) a")
			.param("ids", ids(athletes))
			.param("first", day.minusDays(before))
			.param("day", day)
			.param("last", day.plusDays(after))
			.query(AssessmentRows::read)
			.list();
	}

	Map<PersonId, AssessedDay> on(Collection<PersonId> athletes, LocalDate day) {
		Map<PersonId, AssessedDay> found = new LinkedHashMap<>();
		this.client
			.sql("select " + SHOWN
					+ " from assessment where athlete_id = any (:ids) and day = :day order by athlete_id")
			.param("ids", ids(athletes))
			.param("day", day)
			.query(AssessmentRows::read)
			.list()
			.forEach((assessed) -> found.put(assessed.athlete(), assessed));
		return found;
	}

	static SqlArrayValue ids(Collection<PersonId> athletes) {
		return new SqlArrayValue("uuid", athletes.stream().map(PersonId::value).toArray());
	}

	static AssessedDay read(ResultSet row, int number) throws SQLException {
		return new AssessedDay(new PersonId(row.getObject("athlete_id", UUID.class)), Columns.day(row, "day"),
				Clearance.valueOf(row.getString("clearance")), MessagesJson.read(row.getString("reasons")),
				MessagesJson.read(row.getString("notices")), row.getBoolean("holding"), Columns.integer(row, "stage"),
				Columns.integer(row, "day_in_stage"), Columns.nullable(row, "path", PathName.class),
				Mark.valueOf(row.getString("mark")), Columns.number(row, "rhr_bpm"), row.getInt("rhr_n"),
				Columns.number(row, "rhr_baseline"), Columns.number(row, "rhr_spread"), Columns.number(row, "rhr_dev"),
				Columns.number(row, "rhr_line"), Columns.nullable(row, "rhr_flag", RhrFlag.class),
				row.getBoolean("above_line"), row.getInt("hrv_n"), Columns.number(row, "hrv_mean"),
				Columns.number(row, "hrv_sd"), Columns.number(row, "hrv_recent"),
				Columns.nullable(row, "hrv_flag", HrvFlag.class), Columns.integer(row, "next_gate"),
				Columns.dayOrNull(row, "next_gate_earliest"), row.getString("rule_hash"));
	}

}
