package org.fallow.rules.web;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.RuleDraft;
import org.fallow.rules.RuleDrafts;
import org.fallow.rules.RuleSets;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
@Import(SettableClock.class)
class RulePagesTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final String FEVER = "/opening/feverCelsius";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	@Autowired
	private RuleSets ruleSets;

	@Autowired
	private RuleDrafts drafts;

	@Autowired
	private Mornings mornings;

	private Team team;

	private PersonId coachId;

	private UserDetails coach;

	private UserDetails stranger;

	private Athlete ann;

	@BeforeEach
	void addTwoTeams() {
		this.clock.set(TODAY);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Own", ZoneOffset.UTC);
		Team other = this.people.addTeam(club, "Other", ZoneOffset.UTC);
		this.coachId = this.people.addCoach(this.team.id(), "Cay");
		this.coach = account(this.coachId);
		this.stranger = account(this.people.addCoach(other.id(), "Sam"));
		this.ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann Ashe"));
	}

	@Test
	void listsTheVersionsOfTheOwnTeamsOnly() throws Exception {
		this.mvc.perform(get("/rules").with(user(this.coach)))
			.andExpect(content().string(containsString("Version 1")))
			.andExpect(content().string(containsString("decides today")))
			.andExpect(content().string(containsString(hash().substring(0, 12))))
			.andExpect(content().string(not(containsString(hash()))))
			.andExpect(content().string(not(containsString("Other"))));
	}

	@Test
	void showsEveryNumberWithItsBounds() throws Exception {
		this.mvc.perform(get("/rules/" + this.team.id() + "/1").with(user(this.coach)))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString(hash())))
			.andExpect(content().string(containsString("Fever from")))
			.andExpect(content().string(containsString("37.5 to 38")))
			.andExpect(content().string(containsString("more is looser")))
			.andExpect(content().string(not(containsString("??"))));
	}

	@Test
	void copiesChangesAndKeepsADraft() throws Exception {
		this.mvc.perform(post("/rules/" + this.team.id() + "/1/draft").with(csrf()).with(user(this.coach)))
			.andExpect(redirectedUrlPattern("/rules/drafts/*"));
		RuleDraft draft = this.drafts.openOf(this.team.id()).get(0);
		this.mvc.perform(get(at(draft, "")).with(user(this.coach)))
			.andExpect(content().string(containsString("name=\"/opening/feverCelsius\"")))
			.andExpect(content().string(not(containsString("??"))));
		save(draft, FEVER, " 37,8 ").andExpect(redirectedUrl(at(draft, "")));
		assertThat(stored(draft).rules().opening().feverCelsius()).isEqualTo(37.8);
		this.mvc.perform(get("/rules").with(user(this.coach)))
			.andExpect(content().string(containsString("Draft of version 1, by Cay")));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "38.5 | 38.5 is looser than the safe bound: at most 38.",
					"20 | 20 is beyond what makes sense: 37.5 to 38.", "warm | Please write a number.",
					"'' | Please write a number.", "1e3 | Please write a number.", "NaN | Please write a number.",
					"<b>38</b> | Please write a number." })
	void refusesAValueWithTheReason(String typed, String sentence) throws Exception {
		RuleDraft draft = started();
		save(draft, FEVER, typed).andExpect(status().isOk())
			.andExpect(content().string(containsString(sentence)))
			.andExpect(content().string(containsString("Training with a fever can harm the heart.")))
			.andExpect(content().string(containsString("aria-invalid=\"true\"")))
			.andExpect(content().string(not(containsString("<b>38</b>"))));
		assertThat(stored(draft)).isEqualTo(draft);
	}

	@Test
	void asksForAWholeNumberOfMornings() throws Exception {
		RuleDraft draft = started();
		save(draft, "/gates/untrackedMornings", "4.5")
			.andExpect(content().string(containsString("Please write a whole number.")));
		assertThat(stored(draft)).isEqualTo(draft);
	}

	@Test
	void namesTheOtherNumberOfACombination() throws Exception {
		RuleDraft draft = started();
		save(draft, "/flags/highFloor", "7").andExpect(
				content().string(containsString("8 is not below 7, which is the value of: High from, at least.")));
	}

	@Test
	void passesOverWhatIsNoNumberOfTheRules() throws Exception {
		RuleDraft draft = started();
		save(draft, "/opening/nothing", "1").andExpect(redirectedUrl(at(draft, "")));
		assertThat(stored(draft).rules()).isEqualTo(draft.rules());
	}

	@Test
	void refusesAFormFromBeforeAnotherChange() throws Exception {
		RuleDraft draft = started();
		save(draft, FEVER, "37.8");
		save(draft, FEVER, "37.7").andExpect(content().string(containsString("changed elsewhere meanwhile")));
		assertThat(stored(draft).rules().opening().feverCelsius()).isEqualTo(37.8);
	}

	@Test
	void takesAPublishedProtocolForALongerPath() throws Exception {
		RuleDraft draft = started();
		choose(draft, PathName.LONG, "ELLIOTT_2020").andExpect(redirectedUrl(at(draft, "")));
		assertThat(stored(draft).rules().path(PathName.LONG).protocol()).isEqualTo(Protocol.ELLIOTT_2020);
		this.mvc.perform(get(at(draft, "")).with(user(this.coach)))
			.andExpect(content().string(containsString("name=\"/paths/4/stages/4/days\"")))
			.andExpect(content().string(containsString("2020;54:1174")));
		this.mvc.perform(get(at(draft, "/adopt")).with(user(this.coach)))
			.andExpect(content().string(containsString("it takes 6 days at least instead of 14")))
			.andExpect(content().string(containsString("ask a clinician who knows your athletes")));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "THREE_WEEK | SALMAN_2021 | would be shorter than the path",
					"THREE_WEEK | ELLIOTT_2020 | This path cannot follow that protocol",
					"LONG | SOMETHING | There is no such protocol." })
	void refusesAProtocolThatDoesNotFit(PathName path, String protocol, String sentence) throws Exception {
		RuleDraft draft = started();
		choose(draft, path, protocol).andExpect(content().string(containsString(sentence)));
		assertThat(stored(draft)).isEqualTo(draft);
	}

	@Test
	void adoptsWithAReasonFromADayOn() throws Exception {
		RuleDraft draft = started();
		save(draft, FEVER, "37.8");
		this.mvc.perform(get(at(draft, "/adopt")).with(user(this.coach)))
			.andExpect(content().string(containsString("value=\"2026-03-11\"")))
			.andExpect(content().string(containsString("instead of 38")));
		adopt(draft, "2026-03-12", "Fever twice this winter").andExpect(redirectedUrl("/rules"));
		this.mvc.perform(get("/rules").with(user(this.coach)))
			.andExpect(content().string(containsString("Version 2")))
			.andExpect(content().string(containsString("Fever twice this winter")))
			.andExpect(content().string(containsString("12 Mar 2026")));
		adopt(draft, "2026-03-12", "again").andExpect(content().string(containsString("adopted already")));
		assertThat(this.ruleSets.versionsOf(this.team.id())).hasSize(2);
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "2026-03-10 | why | The earliest day is Wed 11 Mar.",
					"2025-01-01 | why | The earliest day is Wed 11 Mar.", "soon | why | This is not a day.",
					"2026-03-11 | ' ' | Please say why" })
	void adoptsNothingForAPastDayOrWithoutAReason(String day, String reason, String sentence) throws Exception {
		RuleDraft draft = started();
		save(draft, FEVER, "37.8");
		adopt(draft, day, reason).andExpect(status().isOk()).andExpect(content().string(containsString(sentence)));
		assertThat(this.ruleSets.versionsOf(this.team.id())).hasSize(1);
	}

	@Test
	void discardsADraft() throws Exception {
		RuleDraft draft = started();
		this.mvc.perform(post(at(draft, "/discard")).with(csrf()).with(user(this.coach)))
			.andExpect(redirectedUrl("/rules"));
		assertThat(stored(draft).isOpen()).isFalse();
		this.mvc.perform(get(at(draft, "")).with(user(this.coach)))
			.andExpect(content().string(containsString("was discarded")))
			.andExpect(content().string(not(containsString("name=\"/opening/feverCelsius\""))));
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "/adopt", "/trial" })
	void hidesDraftsOfOtherTeams(String page) throws Exception {
		RuleDraft draft = started();
		this.mvc.perform(get(at(draft, page)).with(user(this.stranger))).andExpect(status().isNotFound());
		this.mvc.perform(get("/rules/drafts/" + UUID.randomUUID() + page).with(user(this.coach)))
			.andExpect(status().isNotFound());
	}

	@Test
	void letsNobodyElseChangeADraft() throws Exception {
		RuleDraft draft = started();
		for (String action : List.of("", "/paths", "/discard")) {
			this.mvc.perform(post(at(draft, action)).with(csrf()).with(user(this.stranger)))
				.andExpect(status().isNotFound());
		}
		this.mvc
			.perform(post(at(draft, "/adopt")).with(csrf())
				.with(user(this.stranger))
				.param("day", "2026-03-12")
				.param("reason", "why"))
			.andExpect(status().isNotFound());
		this.mvc.perform(get("/rules/" + this.team.id() + "/1").with(user(this.stranger)))
			.andExpect(status().isNotFound());
		this.mvc.perform(get("/rules/" + this.team.id() + "/9").with(user(this.coach)))
			.andExpect(status().isNotFound());
		assertThat(stored(draft)).isEqualTo(draft);
	}

	@Test
	void keepsAthletesOut() throws Exception {
		UserDetails athlete = account(this.ann.id());
		for (String page : List.of("/rules", "/rules/" + this.team.id() + "/1", at(started(), "/trial"))) {
			this.mvc.perform(get(page).with(user(athlete))).andExpect(status().isForbidden());
		}
	}

	@Test
	void triesADraftOnThePastSeason() throws Exception {
		for (int day = 0; day < 5; day++) {
			morning(TODAY.plusDays(day), (day == 0) ? Symptom.RUNNY_NOSE : null);
		}
		RuleDraft draft = started();
		String trial = at(draft, "/trial");
		this.mvc.perform(get(trial).with(user(this.coach)))
			.andExpect(content().string(containsString("Rule trial")))
			.andExpect(content().string(containsString("Nothing would have been different for anybody.")))
			.andExpect(content().string(containsString("0 of 1")));
		save(draft, "/opening/coldMornings", "1");
		this.mvc.perform(get(trial).with(user(this.coach)))
			.andExpect(content().string(containsString("1 of 1")))
			.andExpect(content().string(containsString("Ann Ashe")))
			.andExpect(content().string(containsString("Not opened")))
			.andExpect(content().string(containsString("caution-head")))
			.andExpect(content().string(not(containsString("??"))));
	}

	@Test
	void walksAnAthleteBackByTheProtocolThatWasChosen() throws Exception {
		RuleDraft draft = started();
		choose(draft, PathName.LONG, "SALMAN_2021").andExpect(redirectedUrl(at(draft, "")));
		choose(stored(draft), PathName.THREE_WEEK, "SALMAN_2021").andExpect(redirectedUrl(at(draft, "")));
		adopt(draft, "2026-03-11", "Try it").andExpect(redirectedUrl("/rules"));
		morning(TODAY.plusDays(1), Symptom.FATIGUE);
		UserDetails athlete = account(this.ann.id());
		this.mvc.perform(get("/return-path").with(user(athlete)))
			.andExpect(content().string(containsString("Stage 1 Easy, effort 1 of 10 at most")))
			.andExpect(content().string(containsString("Stage 5 Full training, watched")))
			.andExpect(content().string(containsString("2021;372:m4721")))
			.andExpect(content().string(not(containsString("??"))));
		for (String page : List.of("/athletes/" + this.ann.id().value(), "/board")) {
			this.mvc.perform(get(page).with(user(this.coach)))
				.andExpect(content().string(containsString("Stage 1")))
				.andExpect(content().string(not(containsString("??"))));
		}
		this.mvc.perform(get("/today").with(user(athlete)))
			.andExpect(content().string(containsString("Stage 1 Easy, effort 1 of 10 at most")));
	}

	private void morning(LocalDate day, Symptom symptom) {
		this.clock.set(day);
		NewMorning morning = (symptom == null) ? NewMorning.feeling(day)
				: NewMorning.feeling(day, new ReportedSymptom(symptom, Severity.MILD, null));
		assertThat(this.mornings.save(this.ann.id(), morning, Submission.page(this.ann.id(), Role.ATHLETE, Ids.next())))
			.isInstanceOf(Saved.Stored.class);
	}

	private ResultActions save(RuleDraft draft, String pointer, String value) throws Exception {
		return this.mvc
			.perform(form(draft, "").param("changes", String.valueOf(draft.changes())).param(pointer, value));
	}

	private ResultActions choose(RuleDraft draft, PathName path, String protocol) throws Exception {
		return this.mvc.perform(form(draft, "/paths").param("changes", String.valueOf(draft.changes()))
			.param("protocol." + path, protocol));
	}

	private ResultActions adopt(RuleDraft draft, String day, String reason) throws Exception {
		return this.mvc.perform(form(draft, "/adopt").param("day", day).param("reason", reason));
	}

	private MockHttpServletRequestBuilder form(RuleDraft draft, String action) {
		return post(at(draft, action)).with(csrf()).with(user(this.coach));
	}

	private static String at(RuleDraft draft, String action) {
		return "/rules/drafts/" + draft.id() + action;
	}

	private RuleDraft started() {
		return this.drafts.start(this.ruleSets.version(this.team.id(), 1), this.coachId);
	}

	private RuleDraft stored(RuleDraft draft) {
		return this.drafts.of(draft.id(), this.coachId);
	}

	private String hash() {
		return this.ruleSets.version(this.team.id(), 1).hash();
	}

	private UserDetails account(PersonId person) {
		String username = UUID.randomUUID() + "@example.org";
		this.accounts.open(person, username, "a long enough sentence");
		return Objects.requireNonNull(this.users.loadUserByUsername(username));
	}

}
