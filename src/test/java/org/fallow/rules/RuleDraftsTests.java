package org.fallow.rules;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

@DatabaseTest
@Import(SettableClock.class)
class RuleDraftsTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private RuleSets ruleSets;

	@Autowired
	private RuleDrafts drafts;

	@Autowired
	private JdbcClient jdbc;

	private Team team;

	private Team other;

	private PersonId coach;

	private PersonId stranger;

	@BeforeEach
	void addTwoTeams() {
		this.clock.set(TODAY);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Own", ZoneOffset.UTC);
		this.other = this.people.addTeam(club, "Other", ZoneOffset.UTC);
		this.coach = this.people.addCoach(this.team.id(), "Cay");
		this.stranger = this.people.addCoach(this.other.id(), "Sam");
		this.people.addAthlete(this.team.id(), NewAthlete.named("Ann"));
	}

	@Test
	void givesEachTeamTheDefault() {
		assertThat(this.ruleSets.versionsOf(this.team.id())).singleElement().satisfies((version) -> {
			assertThat(version.version()).isEqualTo(1);
			assertThat(version.rules()).isEqualTo(DefaultRules.ruleSet());
			assertThat(version.hash()).isEqualTo(RuleHash.of(DefaultRules.ruleSet()));
			assertThat(version.writtenBy()).isNull();
		});
	}

	@Test
	void adoptsForOneTeamOnlyAndFromItsDayOn() {
		RuleDraft draft = changed("/gates/untrackedMornings", "6");
		assertThat(this.drafts.adopt(draft.id(), this.coach, TODAY.plusDays(3), " Late winter colds ")).isEmpty();
		RuleBook book = this.ruleSets.bookOf(this.team.id());
		assertThat(book.on(TODAY.plusDays(2)).rules().gates().untrackedMornings()).isEqualTo(4);
		assertThat(book.on(TODAY.plusDays(3)).rules().gates().untrackedMornings()).isEqualTo(6);
		assertThat(this.ruleSets.bookOf(this.other.id()).entries()).hasSize(1);
		assertThat(this.ruleSets.version(this.team.id(), 2)).satisfies((version) -> {
			assertThat(version.reason()).isEqualTo("Late winter colds");
			assertThat(version.writtenBy()).isEqualTo(this.coach);
			assertThat(version.hash()).isEqualTo(RuleHash.of(version.rules()));
		});
		assertThat(this.drafts.openOf(this.team.id())).isEmpty();
	}

	@Test
	void storesNothingThatIsLooserThanTheBounds() {
		RuleDraft draft = started();
		RuleTree tree = RuleTree.of(draft.rules());
		tree.set("/opening/feverCelsius", "38.5");
		assertThat(this.drafts.change(draft.id(), this.coach, 0, tree.rules()))
			.containsExactly(Problem.of("/opening/feverCelsius", "rules.bound.looser-high", "38.5", "38"));
		assertThat(this.drafts.of(draft.id(), this.coach)).isEqualTo(draft);
	}

	@Test
	void refusesAFormThatWasOvertaken() {
		RuleDraft draft = changed("/gates/untrackedMornings", "6");
		assertThat(this.drafts.change(draft.id(), this.coach, 0, draft.rules())).extracting((p) -> p.message().code())
			.containsExactly("rules.draft.changed-elsewhere");
	}

	@Test
	void adoptsNoEarlierThanTomorrowInTheZoneFarthestAhead() {
		this.people.addAthlete(this.team.id(),
				new NewAthlete("Kiri", null, ZoneId.of("Pacific/Kiritimati"), null, null));
		this.clock.set(TODAY, LocalTime.of(12, 0), ZoneOffset.UTC);
		assertThat(this.drafts.earliestDay(this.team.id())).isEqualTo(TODAY.plusDays(2));
		RuleDraft draft = changed("/gates/untrackedMornings", "6");
		assertThat(this.drafts.adopt(draft.id(), this.coach, TODAY.plusDays(1), "why"))
			.containsExactly(Problem.of("day", "rules.adopt.day.early", TODAY.plusDays(2)));
		assertThat(this.drafts.adopt(draft.id(), this.coach, TODAY.plusDays(2), "why")).isEmpty();
	}

	@Test
	void refusesAPastDayTodayAndADayFarAhead() {
		RuleDraft draft = changed("/gates/untrackedMornings", "6");
		for (LocalDate day : List.of(TODAY.minusDays(1), TODAY, TODAY.plusYears(2))) {
			assertThat(this.drafts.adopt(draft.id(), this.coach, day, "why")).extracting(Problem::field)
				.containsExactly("day");
		}
	}

	@Test
	void asksForAReasonAndForAChange() {
		RuleDraft draft = started();
		assertThat(this.drafts.adopt(draft.id(), this.coach, TODAY.plusDays(1), "  "))
			.extracting((p) -> p.message().code())
			.containsExactly("rules.adopt.reason", "rules.adopt.same");
	}

	@Test
	void refusesADraftBegunBeforeAnotherWasAdopted() {
		RuleDraft first = changed("/gates/untrackedMornings", "6");
		RuleDraft second = changed("/gates/untrackedMornings", "7");
		this.clock.set(TODAY, LocalTime.of(8, 0), ZoneOffset.UTC);
		assertThat(this.drafts.adopt(first.id(), this.coach, TODAY.plusDays(5), "why")).isEmpty();
		assertThat(this.drafts.adopt(second.id(), this.coach, TODAY.plusDays(1), "why")).contains(
				Problem.of("day", "rules.adopt.day.early", TODAY.plusDays(5)),
				Problem.of("", "rules.adopt.overtaken", 2));
	}

	@Test
	void adoptsADraftOnceThoughItIsSentTwiceAtOnce() throws Exception {
		RuleDraft draft = changed("/gates/untrackedMornings", "6");
		Callable<List<Problem>> adoption = () -> CurrentPerson.callAs(this.coach,
				() -> this.drafts.adopt(draft.id(), this.coach, TODAY.plusDays(1), "why"));
		ExecutorService both = Executors.newFixedThreadPool(2);
		List<Problem> problems = new ArrayList<>();
		for (Future<List<Problem>> done : both.invokeAll(List.of(adoption, adoption))) {
			problems.addAll(done.get());
		}
		both.shutdown();
		assertThat(problems).containsExactly(Problem.of("", "rules.draft.ADOPTED"));
		assertThat(this.ruleSets.versionsOf(this.team.id())).hasSize(2);
	}

	@Test
	void changesNoDraftThatHasEnded() {
		RuleDraft draft = started();
		assertThat(this.drafts.discard(draft.id(), this.coach)).isEmpty();
		assertThat(this.drafts.discard(draft.id(), this.coach)).hasSize(1);
		assertThat(this.drafts.change(draft.id(), this.coach, 0, draft.rules())).hasSize(1);
		assertThat(this.drafts.adopt(draft.id(), this.coach, TODAY.plusDays(1), "why")).hasSize(1);
	}

	@Test
	void hidesDraftsFromCoachesOfOtherTeams() {
		RuleDraft draft = started();
		assertThatThrownBy(() -> this.drafts.of(draft.id(), this.stranger)).isInstanceOf(NoSuchRules.class);
		assertThatThrownBy(() -> this.drafts.adopt(draft.id(), this.stranger, TODAY.plusDays(1), "why"))
			.isInstanceOf(NoSuchRules.class);
		assertThatThrownBy(() -> this.drafts.change(draft.id(), this.stranger, 0, draft.rules()))
			.isInstanceOf(NoSuchRules.class);
		assertThatThrownBy(() -> this.drafts.start(this.ruleSets.version(this.team.id(), 1), this.stranger))
			.isInstanceOf(NoSuchRules.class);
		assertThatThrownBy(() -> this.drafts.of(UUID.randomUUID(), this.coach)).isInstanceOf(NoSuchRules.class);
	}

	@Test
	void decidesByNoTextThatHasAnotherHash() {
		this.jdbc.sql("""
				insert into rule_set (team_id, version, hash, canonical, effective_from, written_at)
				select team_id, 2, hash, replace(canonical, '"feverCelsius":"38"', '"feverCelsius":"40"'), ?, written_at
				from rule_set where team_id = ? and version = 1""").params(TODAY, this.other.id()).update();
		assertThatIllegalStateException().isThrownBy(() -> this.ruleSets.bookOf(this.other.id()))
			.withMessageContaining("another hash");
	}

	@Test
	void readsATextFromBeforeLaterGroupsWereAdded() {
		String old = RuleJson.canonical(DefaultRules.ruleSet()).replaceAll("\"advice\":\\{[^}]*},", "");
		this.jdbc
			.sql("insert into rule_set (team_id, version, hash, canonical, effective_from, written_at) "
					+ "values (?, 2, ?, ?, ?, now())")
			.params(this.team.id(), RuleHash.ofText(old), old, TODAY)
			.update();
		assertThat(old).doesNotContain("advice");
		RuleBook book = this.ruleSets.bookOf(this.team.id());
		assertThat(book.ofHash(RuleHash.ofText(old)).rules()).isEqualTo(DefaultRules.ruleSet());
	}

	@Test
	void neverChangesWhatWasAdopted() {
		for (String sql : List.of("update rule_set set reason = 'x'", "delete from rule_set",
				"delete from rule_draft")) {
			assertThatThrownBy(() -> this.jdbc.sql(sql).update()).isInstanceOf(DataAccessException.class)
				.rootCause()
				.hasMessageContaining("permission denied");
		}
	}

	private RuleDraft started() {
		return this.drafts.start(this.ruleSets.version(this.team.id(), 1), this.coach);
	}

	private RuleDraft changed(String pointer, String value) {
		RuleDraft draft = started();
		RuleTree tree = RuleTree.of(draft.rules());
		tree.set(pointer, value);
		assertThat(this.drafts.change(draft.id(), this.coach, 0, tree.rules())).isEmpty();
		return this.drafts.of(draft.id(), this.coach);
	}

}
