package org.fallow.platform.web;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.training.Programmes;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * How many bytes a first view of a page is: the page and all its files, compressed. The
 * budgets stand in page-budgets.csv, a tenth above what was measured.
 */
class PageSizeTests extends OverHttp {

	private static final Pattern FILES = Pattern.compile("(?:href|src)=\"(/(?:css|js|images|webjars)/[^\"]+)\"");

	private static final int DAYS = 30;

	private static final int MODELS = 24;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Programmes programmes;

	@Autowired
	private FlywayConnectionDetails owner;

	@ParameterizedTest
	@CsvFileSource(resources = "/page-budgets.csv", numLinesToSkip = 1)
	void staysWithinTheBudgetOfItsPage(String page, int squad, int budget) throws IOException {
		List<PersonId> athletes = makeSquad(squad);
		boolean own = page.equals("/today") || page.equals("/morning");
		Caller caller = signedIn(own ? open(athletes.get(0)) : this.coachName);
		HttpResponse<byte[]> answer = caller.getCompressed(page);
		assertThat(answer.statusCode()).isEqualTo(200);
		assertThat(answer.headers().firstValue("Content-Encoding")).contains("gzip");
		String html = unpacked(answer.body());
		assertThat(html.split("row-head", -1)).hasSize(own ? 1 : squad + 1);
		List<String> files = FILES.matcher(html)
			.results()
			.map((MatchResult found) -> found.group(1))
			.distinct()
			.toList();
		assertThat(files).hasSizeGreaterThan(2);
		int bytes = answer.body().length;
		for (String file : files) {
			HttpResponse<byte[]> sent = caller.getCompressed(file);
			assertThat(sent.statusCode()).as(file).isEqualTo(200);
			bytes += sent.body().length;
		}
		assertThat(bytes).as("%s of %d: the page alone %d bytes", page, squad, answer.body().length)
			.isLessThanOrEqualTo(budget)
			.as("the budget follows what there is")
			.isGreaterThan(budget * 3 / 4);
	}

	private static String unpacked(byte[] body) throws IOException {
		try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(body))) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		}
	}

	/** Two dozen athletes live their days, the others are copies of them. */
	private List<PersonId> makeSquad(int size) {
		PersonId coach = PersonId.parse(this.coachName.substring(0, this.coachName.indexOf('@')));
		UUID group = this.people.findOrAddGroup(this.team.id(), "Track").id();
		program(group, coach);
		List<PersonId> athletes = new ArrayList<>();
		for (int i = 0; i < MODELS; i++) {
			PersonId athlete = this.people
				.addAthlete(this.team.id(), new NewAthlete("Runner Number " + i, null, null, null, "Track"))
				.id();
			List<NewMorning> days = new ArrayList<>();
			for (int ago = DAYS; ago >= 0; ago--) {
				days.add(morning(i, ago));
			}
			CurrentPerson.runAs(coach, () -> this.mornings.takeIn(athlete, days, coach));
			athletes.add(athlete);
		}
		if (size > MODELS) {
			copy(size);
		}
		return athletes;
	}

	private NewMorning morning(int number, int ago) {
		NewMorning morning = NewMorning.measured(today().minusDays(ago), Method.STRAP, Posture.LYING,
				45.0 + number + ago % 4, 60.0 + number);
		if (number == 0 && ago < 4) {
			return morning.with(ReportedSymptom.of(Symptom.FEVERISH, Severity.MODERATE));
		}
		return (number == 1 && ago == 2) ? morning.with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.MODERATE))
				: morning;
	}

	private LocalDate today() {
		return LocalDate.ofInstant(this.clock.instant(), this.clock.getZone());
	}

	private void program(UUID group, PersonId coach) {
		PlannedSession session = new PlannedSession("k", today(), PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "", "",
				List.of(Part.of(Part.Role.BLOCK, 1800, Intensity.THRESHOLD)));
		ProgrammeWeek week = new ProgrammeWeek(today().minusDays(today().getDayOfWeek().getValue() - 1L),
				ProgrammeWeek.Kind.LOADING, List.of(session));
		CurrentPerson.runAs(coach, () -> assertThat(this.programmes.write(group, week, 0, coach)).isTrue());
	}

	private void copy(int size) {
		JdbcClient tables = JdbcClient.create(new SingleConnectionDataSource(this.owner.getJdbcUrl(),
				Objects.requireNonNull(this.owner.getUsername()), Objects.requireNonNull(this.owner.getPassword()),
				true));
		tables
			.sql("""
					create temporary table copied as select gen_random_uuid() as id, m.person_id as model, m.group_id, n
					from generate_series(1, ?) n join (select person_id, group_id, row_number() over () as place from membership
						where team_id = ?) m on m.place = 1 + n %% ?;
					insert into person (id, name, zone_id, since_day, created_at)
					select id, 'Runner Copied ' || n, 'UTC', date '2026-02-01', now() from copied;
					insert into membership (person_id, team_id, group_id, shares, joined_at)
					select c.id, m.team_id, m.group_id, true, now() from copied c join membership m on m.person_id = c.model;
					%s %s %s %s"""
				.formatted(copy(tables, "assessment"), copy(tables, "athlete_status"), copy(tables, "stage_decision"),
						copy(tables, "morning_entry")))
			.params(size - MODELS, this.team.id(), MODELS)
			.update();
	}

	private static String copy(JdbcClient tables, String table) {
		List<String> columns = tables
			.sql("select column_name from information_schema.columns where table_schema = 'public' and table_name = ? "
					+ "and column_name <> 'athlete_id'")
			.param(table)
			.query(String.class)
			.list();
		return "insert into %s (athlete_id, %s) select c.id, t.%s from copied c join %s t on t.athlete_id = c.model;"
			.formatted(table, String.join(", ", columns), String.join(", t.", columns), table);
	}

}
