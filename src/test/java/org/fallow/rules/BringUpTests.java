package org.fallow.rules;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.UUID;

import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;

/** Stored rule sets of the first rule text after an upgrade. */
@DatabaseTest
@Import(SettableClock.class)
class BringUpTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private RuleSets ruleSets;

	@Autowired
	private BringUp bringUp;

	@Autowired
	private JdbcClient jdbc;

	private String first;

	private UUID club;

	private Team team;

	@BeforeEach
	void addATeamOfTheFirstText() throws IOException {
		this.clock.set(TODAY);
		try (InputStream in = Objects.requireNonNull(getClass().getResourceAsStream("first-text.json"))) {
			this.first = new String(in.readAllBytes(), StandardCharsets.UTF_8)
				.replace("\"lowApartDays\":3", "\"lowApartDays\":5");
		}
		this.club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(this.club, "Own", ZoneOffset.UTC);
		store(this.team, 2, this.first, RuleHash.ofText(this.first), TODAY.minusDays(10));
	}

	@Test
	void goesOnAsANewVersionFromTheNextDay() {
		this.bringUp.bringUp();
		RuleVersion found = newest();
		assertThat(found.version()).isEqualTo(3);
		assertThat(found.becameOf()).isEqualTo(2);
		assertThat(found.effectiveFrom()).isEqualTo(TODAY.plusDays(1));
		assertThat(found.writtenBy()).isNull();
		assertThat(found.firstText()).isFalse();
		assertThat(found.rules().flags().lowApartDays()).as("what the team had changed").isEqualTo(5);
		assertThat(found.hash()).isEqualTo(RuleHash.of(found.rules())).isNotEqualTo(RuleHash.ofText(this.first));
		assertThat(this.ruleSets.version(this.team.id(), 2).firstText()).isTrue();
	}

	/** An open episode goes on under it; a book that was in memory already knows it. */
	@Test
	void decidesAndLetsEpisodesGoOnFromThatDayOnly() {
		String hash = RuleHash.ofText(this.first);
		String before = listed();
		assertThat(this.ruleSets.bookOf(this.team.id(), before).on(TODAY.plusDays(1)).hash()).isEqualTo(hash);
		this.bringUp.bringUp();
		RuleBook book = this.ruleSets.bookOf(this.team.id(), listed());
		assertThat(listed()).isNotEqualTo(before);
		assertThat(book.on(TODAY).hash()).isEqualTo(hash);
		assertThat(book.goesOn(hash, TODAY).hash()).isEqualTo(hash);
		assertThat(book.on(TODAY.plusDays(1)).hash()).isEqualTo(newest().hash());
		assertThat(book.goesOn(hash, TODAY.plusDays(1)).hash()).isEqualTo(newest().hash());
		assertThat(book.goesOn(newest().hash(), TODAY.plusDays(1)).hash()).isEqualTo(newest().hash());
	}

	@Test
	void bringsEachUpOnce() {
		this.bringUp.bringUp();
		this.bringUp.bringUp();
		this.clock.set(TODAY.plusDays(3));
		this.bringUp.bringUp();
		assertThat(this.ruleSets.versionsOf(this.team.id())).hasSize(3);
	}

	/** The day of whoever is farthest ahead may be decided already. */
	@Test
	void waitsForTheLatestTodayOfAnyAthlete() {
		this.people.addAthlete(this.team.id(),
				new NewAthlete("Kiri", null, ZoneId.of("Pacific/Kiritimati"), null, null));
		this.bringUp.bringUp();
		LocalDate ahead = LocalDate.now(this.clock.withZone(ZoneId.of("Pacific/Kiritimati")));
		assertThat(newest().effectiveFrom()).isEqualTo(ahead.plusDays(1));
	}

	/** One that was to decide later does so from its own day; an older one no longer. */
	@Test
	void bringsUpWhatIsToDecideLaterAndNothingThatDecidesNoMore() {
		String later = this.first.replace("\"lowApartDays\":5", "\"lowApartDays\":6");
		String former = this.first.replace("\"lowApartDays\":5", "\"lowApartDays\":4");
		store(this.team, 3, later, RuleHash.ofText(later), TODAY.plusDays(9));
		store(this.team, 4, former, RuleHash.ofText(former), TODAY.minusDays(30));
		this.bringUp.bringUp();
		assertThat(this.ruleSets.versionsOf(this.team.id())).extracting(RuleVersion::becameOf)
			.containsExactly(3, 2, null, null, null, null);
		RuleBook book = this.ruleSets.bookOf(this.team.id());
		assertThat(book.on(TODAY.plusDays(8)).rules().flags().lowApartDays()).isEqualTo(5);
		assertThat(book.on(TODAY.plusDays(9)).rules().flags().lowApartDays()).isEqualTo(6);
		assertThat(book.on(TODAY.plusDays(9)).hash()).isEqualTo(newest().hash());
	}

	@Test
	void passesOverATeamWhoseTextHasAnotherHash() {
		Team broken = this.people.addTeam(this.club, "Broken", ZoneOffset.UTC);
		store(broken, 2, this.first, "0".repeat(64), TODAY.minusDays(1));
		this.bringUp.bringUp();
		assertThat(newest().becameOf()).isEqualTo(2);
		assertThat(this.jdbc.sql("select count(*) from rule_set where team_id = ?")
			.param(broken.id())
			.query(Integer.class)
			.single()).isEqualTo(2);
	}

	@Test
	void leavesTeamsOfThePresentTextAlone() {
		Team present = this.people.addTeam(this.club, "Present", ZoneOffset.UTC);
		this.bringUp.bringUp();
		assertThat(this.ruleSets.versionsOf(present.id())).hasSize(1);
	}

	private RuleVersion newest() {
		return this.ruleSets.versionsOf(this.team.id()).get(0);
	}

	private String listed() {
		return this.jdbc.sql("select " + RuleSets.LISTED).param("team", this.team.id()).query(String.class).single();
	}

	private void store(Team of, int version, String text, String hash, LocalDate from) {
		this.jdbc
			.sql("insert into rule_set (team_id, version, hash, canonical, effective_from, written_at) "
					+ "values (?, ?, ?, ?, ?, now())")
			.params(of.id(), version, hash, text, from)
			.update();
	}

}
