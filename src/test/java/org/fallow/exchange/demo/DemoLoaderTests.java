package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

import org.fallow.access.PersonId;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.DayAssessment;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.account.DemoAccounts;
import org.fallow.team.Squad;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.ActiveProfiles;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The demo as it is loaded through the importer and the modules' doors says the same as
 * the pure fold over its files.
 */
@DatabaseTest
@Import(SettableClock.class)
@ActiveProfiles("demo")
@SuppressWarnings("NullAway.Init")
class DemoLoaderTests {

	@Autowired
	private SettableClock clock;

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
		DemoFiles files = DemoFiles.endingOn(LocalDate.now(this.clock.withZone(ZoneId.systemDefault())));
		if (athletes().isEmpty()) {
			// accounts of other tests kept the start from loading it
			this.loader.load();
		}
		Map<String, PersonId> athletes = athletes();
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

	@Test
	void listsTheAccountsOfTheInventedPeople() {
		assertThat(this.accounts.list()).hasSize(26)
			.extracting(DemoAccounts.DemoAccount::username)
			.doesNotHaveDuplicates();
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

}
