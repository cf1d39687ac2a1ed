package org.fallow.exchange.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.SignedIn;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.DayAssessment;
import org.fallow.platform.DatabaseTest;
import org.fallow.team.Athlete;
import org.fallow.account.DemoAccounts;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.training.Plan;
import org.fallow.training.Plans;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.context.annotation.Primary;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.context.ActiveProfiles;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The demo as it is loaded through the importer and the modules' doors says the same as
 * the pure fold over its files.
 */
@DatabaseTest
@Import(DemoLoaderTests.TuesdayMorning.class)
@ActiveProfiles("demo")
@SuppressWarnings("NullAway.Init")
class DemoLoaderTests {

	/** The season ends on the Sunday before, the first of March. */
	private static final LocalDate TODAY = LocalDate.of(2026, 3, 3);

	@Autowired
	private Plans plans;

	@Autowired
	private UserDetailsService users;

	@Autowired
	private DemoLoader loader;

	@Autowired
	private Squad squad;

	@Autowired
	private Assessments assessments;

	@Autowired
	private DemoAccounts accounts;

	@Test
	void decidesEveryDayAsTheFoldOverTheFilesDoes() {
		DemoFiles files = DemoFiles.endingOn(TODAY);
		Map<String, PersonId> athletes = loaded();
		assertThat(athletes).hasSize(24);
		DemoTimelines.of(files).forEach((code, timeline) -> {
			List<DayAssessment> expected = DemoDecisionsTest.assess(timeline, files.last());
			List<AssessedDay> stored = this.assessments.of(Objects.requireNonNull(athletes.get(code)), LocalDate.EPOCH,
					files.last());
			assertThat(stored).as(code)
				.extracting((day) -> day.day() + " " + day.clearance() + " " + day.reasons() + " " + day.mark())
				.containsExactlyElementsOf(expected.stream()
					.map((day) -> day.day() + " " + day.clearance() + " " + day.reasons() + " " + day.mark())
					.toList());
		});
	}

	/** Worked out by hand first, in demo-data/expected/tuesday.md. */
	@Test
	void plansTheTuesdayOfTheSquad() throws IOException {
		Map<String, PersonId> athletes = loaded();
		StringBuilder tuesday = new StringBuilder("person,version,minutes,runs,why\n");
		CurrentPerson.runAs(coach(), () -> {
			Map<PersonId, Plan> today = this.plans.of(athletes.values(), TODAY);
			athletes.forEach((code, id) -> Objects.requireNonNull(today.get(id))
				.on(TODAY)
				.forEach((session) -> tuesday.append(code).append(',').append(line(session)).append('\n')));
		});
		assertThat(tuesday.toString().split("\n"))
			.containsExactly(Files.readString(Path.of("demo-data", "expected", "tuesday.csv")).split("\n"));
	}

	private static String line(ModifiedSession session) {
		PlannedSession instead = session.instead();
		String runs = (instead == null) ? "" : PartsText.write(instead.parts());
		return session.version() + "," + session.minutes() + "," + (runs.contains(",") ? "\"" + runs + "\"" : runs)
				+ "," + session.reasons().stream().map(Message::code).collect(Collectors.joining(" "));
	}

	private PersonId coach() {
		String name = this.accounts.list()
			.stream()
			.filter((account) -> account.role() == Role.COACH)
			.map(DemoAccounts.DemoAccount::username)
			.findFirst()
			.orElseThrow();
		return ((SignedIn) this.users.loadUserByUsername(name)).personId();
	}

	@Test
	void listsTheAccountsOfTheInventedPeople() {
		loaded();
		assertThat(this.accounts.list()).hasSize(26)
			.extracting(DemoAccounts.DemoAccount::username)
			.doesNotHaveDuplicates();
	}

	private Map<String, PersonId> loaded() {
		if (athletes().isEmpty()) {
			// accounts of other tests kept the start from loading it
			this.loader.load();
		}
		return athletes();
	}

	private Map<String, PersonId> athletes() {
		Map<String, PersonId> athletes = new TreeMap<>();
		this.squad.everyone()
			.stream()
			.filter((a) -> code(a).startsWith("TR"))
			.forEach((a) -> athletes.put(code(a), a.id()));
		return athletes;
	}

	private static String code(Athlete athlete) {
		String code = athlete.externalCode();
		return (code == null) ? "" : code;
	}

	@TestConfiguration(proxyBeanMethods = false)
	static class TuesdayMorning {

		@Bean
		@Primary
		Clock tuesdayMorning() {
			return Clock.fixed(TODAY.atTime(7, 0).toInstant(ZoneOffset.UTC), ZoneOffset.UTC);
		}

	}

}
