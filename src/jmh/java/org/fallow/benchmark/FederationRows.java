package org.fallow.benchmark;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import javax.sql.DataSource;

import org.fallow.access.PersonId;
import org.fallow.team.Team;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Copies the models into a federation's rows, as the owner: each table without its keys,
 * which are added afterwards. A day is written for all athletes before the next, in an
 * order in which no squad stands together, as it would come in.
 */
final class FederationRows {

	/** Days of mornings for everybody; those of the squads have all of theirs. */
	private static final int DAYS_OF_MORNINGS = 3;

	private static final List<String> DAY_TABLES = List.of("assessment", "morning_entry", "morning_symptom",
			"illness_event", "stage_decision", "athlete_status");

	private static final String TEAM_SIZES = "array[12, 18, 24, 30, 40, 60, 120, 24]";

	private final DataSource source;

	private final JdbcClient jdbc;

	private final LocalDate today;

	FederationRows(DataSource source, LocalDate today) {
		this.source = source;
		this.jdbc = JdbcClient.create(source);
		this.today = today;
	}

	private void run(String sql) {
		this.jdbc.sql(sql).update();
	}

	/** Keeps the models' rows aside. */
	void begin(List<PersonId> models) {
		run("""
				create function bench_id(kind text, n bigint) returns uuid language sql immutable as $$
					select (lpad(to_hex(1750000000000 + n), 12, '0') || '7' || substr(md5(kind || n), 1, 3)
						|| '8' || substr(md5(kind || n), 4, 15))::uuid $$""");
		run("create table bench_team (n bigint, team_id uuid, group_id uuid, club_id uuid, size integer, squad boolean)");
		run("create table bench_model (kind integer, athlete_id uuid)");
		for (int i = 0; i < models.size(); i++) {
			this.jdbc.sql("insert into bench_model values (?, ?)").params(i, models.get(i).value()).update();
		}
		DAY_TABLES.forEach((table) -> run("create table bench_" + table + " as select * from " + table));
		run("delete from membership");
	}

	void squad(Team team, UUID group, int size) {
		this.jdbc.sql("insert into bench_team values (?, ?, ?, ?, ?, true)")
			.params(size, team.id(), group, team.clubId(), size)
			.update();
	}

	/** Further teams, three in a club, each with a head coach and the same rules. */
	void others(int athletes) {
		this.jdbc.sql("""
				insert into bench_team select n, bench_id('team', n), bench_id('group', n), bench_id('club', n / 3), size, false
				from (select n, (%s)[1 + n %% 8] as size, sum((%s)[1 + n %% 8]) over (order by n) as total
					from generate_series(20000, 20000 + ?::bigint / 12) n) t where total <= ?"""
			.formatted(TEAM_SIZES, TEAM_SIZES)).params(athletes, athletes).update();
		run("insert into club select distinct club_id, 'Club ' || n / 3, now() from bench_team where not squad");
		run("insert into team select team_id, club_id, 'Team ' || n, 'UTC' from bench_team where not squad");
		run("insert into training_group select group_id, team_id, 'Track' from bench_team where not squad");
		run("insert into person select bench_id('coach', n), 'Coach ' || n, 'UTC', null, current_date, now() "
				+ "from bench_team where not squad");
		run("""
				insert into post (id, person_id, club_id, team_id, kind, whole_team, begun_at)
				select bench_id('post', n), bench_id('coach', n), club_id, team_id, 'HEAD_COACH', true, now()
				from bench_team where not squad""");
		run("""
				insert into rule_set (team_id, version, hash, canonical, effective_from, written_at)
				select b.team_id, r.version, r.hash, r.canonical, r.effective_from, r.written_at
				from bench_team b, (select * from rule_set limit 1) r where not b.squad""");
	}

	void load() {
		run("""
				create table bench_athlete as
				select a.n, bench_id('athlete', a.n) as id, a.team_id, a.group_id, a.squad, m.athlete_id as model
				from (select row_number() over (order by t.n, g) as n, t.team_id, t.group_id, t.squad
					from bench_team t, generate_series(1, t.size) g) a
				join bench_model m on m.kind = case when a.n % 100 < 3 then 0 when a.n % 100 < 5 then 1
					when a.n % 100 < 6 then 2 when a.n % 100 < 8 then 3 else 4 + a.n % 16 end
				order by hashint8(a.n)""");
		this.jdbc.sql("insert into person select id, (array['Ada','Bo','Cleo','Dan','Eva','Finn','Gus','Ida'])[1 + n % 8] "
				+ "|| ' Runner ' || n, 'UTC', date '1995-05-05' + (n % 3000)::integer, ?, now() from bench_athlete")
			.param(this.today.minusDays(FederationModels.DAYS))
			.update();
		run("insert into membership (person_id, team_id, group_id, shares, joined_at) "
				+ "select id, team_id, group_id, true, now() from bench_athlete");
		run("analyze bench_athlete");
		List<String> keys = keys();
		new TransactionTemplate(new JdbcTransactionManager(this.source)).executeWithoutResult((transaction) -> days());
		keys.forEach(this::run);
		run("analyze");
		DAY_TABLES.forEach((table) -> run("drop table bench_" + table));
	}

	/** What makes the keys and indexes of the tables of days again, in the order to do it. */
	private List<String> keys() {
		String tables = "array['" + String.join("', '", DAY_TABLES) + "']::regclass[]";
		return this.jdbc.sql("""
				select 'alter table ' || conrelid::regclass || ' add constraint ' || conname || ' '
					|| pg_get_constraintdef(oid) || case contype when 'f' then ' not valid' else '' end as made,
					case contype when 'f' then 3 else 1 end as turn
				from pg_constraint where contype in ('p', 'u', 'f')
					and (conrelid = any (%s) or confrelid = any (%s))
				union all
				select pg_get_indexdef(indexrelid), 2 from pg_index i where indrelid = any (%s)
					and not exists (select 1 from pg_constraint c where c.conindid = i.indexrelid)
				order by turn, made""".formatted(tables, tables, tables)).query((row, n) -> row.getString("made")).list();
	}

	private void days() {
		String tables = "array['" + String.join("', '", DAY_TABLES) + "']::regclass[]";
		this.jdbc.sql("""
				select 'alter table ' || conrelid::regclass || ' drop constraint ' || conname as dropped,
					case contype when 'f' then 1 else 2 end as turn
				from pg_constraint where contype in ('p', 'u', 'f')
					and (conrelid = any (%s) or confrelid = any (%s))
				union all
				select 'drop index ' || indexrelid::regclass, 3 from pg_index i where indrelid = any (%s)
					and not exists (select 1 from pg_constraint c where c.conindid = i.indexrelid)
				order by turn, dropped""".formatted(tables, tables, tables))
			.query((row, n) -> row.getString("dropped"))
			.list()
			.forEach(this::run);
		run("truncate " + String.join(", ", DAY_TABLES));
		for (int ago = FederationModels.DAYS - 1; ago >= 0; ago--) {
			String day = "t.day = date '" + this.today.minusDays(ago) + "'";
			copy("assessment", day);
			copy("morning_entry", day + ((ago < DAYS_OF_MORNINGS) ? "" : " and a.squad"));
		}
		String late = "(a.squad or t.day > date '" + this.today.minusDays(DAYS_OF_MORNINGS) + "')";
		copy("morning_symptom", late);
		List.of("illness_event", "stage_decision", "athlete_status").forEach((table) -> copy(table, "true"));
	}

	private void copy(String table, String which) {
		List<String> columns = this.jdbc.sql("""
				select column_name from information_schema.columns
				where table_schema = 'public' and table_name = ? order by ordinal_position""")
			.param(table)
			.query(String.class)
			.list();
		String values = String.join(", ", columns.stream().map((c) -> switch (c) {
			case "athlete_id" -> "a.id";
			case "actor_id" -> "a.id";
			default -> "t." + c;
		}).toList());
		run("insert into " + table + " (" + String.join(", ", columns) + ") select " + values
				+ " from bench_athlete a join bench_" + table + " t on t.athlete_id = a.model where " + which);
	}

}
