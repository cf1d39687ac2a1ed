package org.fallow.account.web;

import org.junit.jupiter.params.provider.ValueSource;
import org.fallow.access.CurrentPerson;
import java.util.List;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.Basis;
import org.fallow.team.Consent;
import org.fallow.team.Consents;
import org.fallow.team.Group;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Posts;
import org.fallow.team.StaffPost;
import org.fallow.wording.Message;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.RequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
class PeopleTests {

	private static final String PASSWORD = "a long enough sentence";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Squad squad;

	@Autowired
	private Consents consents;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Posts posts;

	@Autowired
	private UserDetailsService users;

	private Team own;

	private Team other;

	private UserDetails coach;

	private String coachName;

	private String username;

	@BeforeEach
	void addTwoTeams() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.own = this.people.addTeam(club, "Own", ZoneOffset.UTC);
		this.other = this.people.addTeam(club, "Other", ZoneOffset.UTC);
		this.people.addAthlete(this.own.id(), NewAthlete.named("Ann Own"));
		this.people.addAthlete(this.other.id(), NewAthlete.named("Ben Other"));
		PersonId cay = this.people.addCoach(this.own.id(), "Cay");
		this.coach = account(cay);
		this.coachName = cay + "@club.example";
		this.username = UUID.randomUUID() + "@club.example";
	}

	@Test
	void showsACoachTheOwnTeamsOnly() throws Exception {
		assertThat(html(get("/people").with(user(this.coach)))).contains("Ann Own", this.own.id().toString())
			.doesNotContain("Ben Other", this.other.id().toString());
	}

	@Test
	void keepsAnAthleteOut() throws Exception {
		UserDetails athlete = account(this.people.addAthlete(this.own.id(), NewAthlete.named("Dee")).id());
		this.mvc.perform(get("/people").with(user(athlete))).andExpect(status().isForbidden());
		this.mvc.perform(get("/style").with(user(athlete))).andExpect(status().isForbidden());
		this.mvc.perform(adding("Eve", this.own.id()).with(user(athlete))).andExpect(status().isForbidden());
	}

	@Test
	void putsAnAthleteIntoAGroupOfTheSameTeam() throws Exception {
		Group group = this.people.findOrAddGroup(this.own.id(), "Winter block");
		this.mvc.perform(adding("Eve", this.own.id()).param("groupId", group.id().toString()).with(user(this.coach)))
			.andExpect(redirectedUrl("/people"));
		assertThat(this.squad.athletesIn(this.own.id())).filteredOn((athlete) -> athlete.name().equals("Eve"))
			.extracting(Athlete::groupId)
			.containsExactly(group.id());
	}

	@Test
	void addsNobodyToAnotherTeam() throws Exception {
		assertThat(html(adding("Eve", this.other.id()).with(user(this.coach)))).contains("one of your own teams",
				"value=\"Eve\"");
		assertThat(this.squad.athletesIn(this.other.id())).extracting(Athlete::name).containsExactly("Ben Other");
	}

	@Test
	void refusesAGroupOfAnotherTeam() throws Exception {
		Group group = this.people.findOrAddGroup(this.other.id(), "Elsewhere");
		assertThat(html(adding("Eve", this.own.id()).param("groupId", group.id().toString()).with(user(this.coach))))
			.contains("belongs to another team");
		assertThat(athletes()).doesNotContain("Eve");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "name||A name has 1 to 120", "birthDate|soon|not a day",
					"birthDate|2999-01-01|cannot be in the future", "birthDate|0001-01-01|over 120 years ago",
					"birthDate|0026-05-04|over 120 years ago" })
	void saysWhatIsWrongAtItsField(String field, @Nullable String value, String sentence) throws Exception {
		String typed = (value == null) ? "" : value;
		String name = field.equals("name") ? typed : "Eve";
		MockHttpServletRequestBuilder request = adding(name, this.own.id()).with(user(this.coach));
		String html = html(field.equals("birthDate") ? request.param("birthDate", typed) : request);
		assertThat(html).contains(sentence, "id=\"" + field + "-problem\"", "value=\"" + typed + "\"");
		assertThat(athletes()).doesNotContain("Eve");
	}

	@Test
	void keepsNobodyOnFileOnNoWord() throws Exception {
		assertThat(html(post("/people").with(csrf())
			.param("name", "Eve")
			.param("teamId", this.own.id().toString())
			.with(user(this.coach)))).contains("Please say on whose word the data are kept.", "id=\"basis-problem\"");
		assertThat(athletes()).doesNotContain("Eve");
	}

	@ParameterizedTest
	@ValueSource(strings = { "Ann Own", "ann\u00a0 OWN", "\u200bAnn Own", "Own Ann", "Anna Own", "A\u030ann Own" })
	void asksBeforeThereAreTwoOfOnePerson(String name) throws Exception {
		assertThat(html(adding(name, this.own.id()).with(user(this.coach)))).contains("The team has #",
				"If it is the same person", "name=\"another\"");
		assertThat(html(inviting(name).with(user(this.coach)))).contains("The team has #", "name=\"another\"")
			.doesNotContain("/join/");
		assertThat(html(adding(name, this.own.id()).param("another", "Somebody Else").with(user(this.coach))))
			.contains("The team has #");
		assertThat(athletes()).containsExactly("Ann Own");
		assertThat(html(inviting(name).param("another", name).with(user(this.coach)))).contains("/join/");
		this.mvc.perform(adding(name, this.own.id()).param("another", name).with(user(this.coach)))
			.andExpect(redirectedUrl("/people"));
		assertThat(athletes()).hasSize(2);
	}

	@Test
	void keepsNobodyOnFileWhoWithdrewOrLeft() throws Exception {
		Athlete ann = this.squad.athletesIn(this.own.id()).get(0);
		PersonId eve = this.people.addAthlete(this.own.id(), NewAthlete.named("Eve Elm")).id();
		CurrentPerson.runAs(ann.id(), () -> this.consents.withdraw(ann.id()));
		CurrentPerson.runAs(eve, () -> this.consents.leave(eve));
		for (String name : List.of("Ann Own", "ANN  own", "Eve Elm", "eve\u00a0elm")) {
			assertThat(html(adding(name, this.own.id()).param("another", name).with(user(this.coach)))).as(name)
				.contains("This person cannot be kept on file here.")
				.doesNotContain("#" + eve.toString().substring(28));
		}
		assertThat(athletes()).isEmpty();
		assertThat(html(inviting("Eve Elm").with(user(this.coach)))).contains("/join/");
	}

	@Test
	void keepsTheWordOnWhichSomebodyIsOnFile() throws Exception {
		assertThat(html(adding("Eve", this.own.id(), "OWN_WORD").with(user(this.coach))))
			.contains("own word is not enough");
		assertThat(html(adding("Eve", this.own.id(), "GUARDIAN_WORD").with(user(this.coach))))
			.contains("which guardian told you so");
		assertThat(html(adding("Eve", this.own.id(), "A_HUNCH").with(user(this.coach))))
			.contains("on whose word the data are kept");
		assertThat(athletes()).doesNotContain("Eve");
		this.mvc
			.perform(adding("Eve", this.own.id(), "GUARDIAN_WORD").param("guardian", "Pat Parent")
				.param("guardianRole", "mother")
				.with(user(this.coach)))
			.andExpect(redirectedUrl("/people"));
		this.mvc
			.perform(adding("Flo", this.own.id(), "OWN_WORD").param("birthDate", "1990-01-02").with(user(this.coach)))
			.andExpect(redirectedUrl("/people"));
		PersonId eve = this.people.find(this.own.id(), "Eve").orElseThrow().id();
		assertThat(CurrentPerson.callAs(eve, () -> this.consents.of(eve))).singleElement()
			.extracting(Consent::kind, Consent::basis, Consent::by, Consent::guardian)
			.containsExactly(Consent.Kind.KEPT, Basis.GUARDIAN_WORD, "Cay", "Pat Parent");
		assertThat(html(get("/people").with(user(this.coach))))
			.contains("on file, on a guardian\u2019s word", "on file, on their own word",
					"on file, on the club\u2019s record; not asked yet")
			.doesNotContain("yes, agreed");
		UserDetails own = account(eve);
		assertThat(html(get("/sharing").with(user(own)))).contains("you have not agreed to that here yet",
				"Cay keeps your data here and noted that a guardian had said so", "Pat Parent, mother");
		this.mvc
			.perform(post("/sharing/give").with(csrf())
				.param("guardian", "Pat Parent")
				.param("guardianRole", "mother")
				.with(user(own)))
			.andExpect(flash().attribute("notice", Message.of("sharing.agreed")));
		assertThat(html(get("/sharing").with(user(own)))).doesNotContain("you have not agreed");
		assertThat(html(get("/people").with(user(this.coach)))).contains("yes, agreed");
	}

	@ParameterizedTest
	@ValueSource(strings = { "E\u0007ve", "\u200b", "" })
	void takesNoNameThatIsNone(String name) throws Exception {
		assertThat(html(adding(name, this.own.id()).with(user(this.coach)))).contains("id=\"name-problem\"");
		assertThat(html(inviting(name).with(user(this.coach)))).contains("id=\"whom-problem\"");
		assertThat(html(adding("Eve", this.own.id(), "GUARDIAN_WORD").param("guardian", "Pat\u0007")
			.param("guardianRole", "mother")
			.with(user(this.coach)))).contains("which guardian told you so");
		assertThat(athletes()).containsExactly("Ann Own");
	}

	@Test
	void endsACoachsPostButNotTheLast() throws Exception {
		PersonId second = this.people.addCoach(this.own.id(), "Dov");
		UserDetails dov = account(second);
		StaffPost post = this.posts.of(second).get(0);
		assertThat(html(get("/people").with(user(dov)))).contains("Ann Own");
		this.mvc.perform(post("/people/posts/" + post.id() + "/end").with(csrf()).with(user(this.coach)))
			.andExpect(flash().attribute("notice", Message.of("people.post.ended", "Dov")));
		this.mvc.perform(get("/people").with(user(dov))).andExpect(status().isForbidden());
		StaffPost last = this.posts.in(this.own).get(0);
		this.mvc.perform(post("/people/posts/" + last.id() + "/end").with(csrf()).with(user(this.coach)))
			.andExpect(flash().attribute("notice", Message.of("people.post.last")));
		html(get("/people").with(user(this.coach)));
	}

	@Test
	void endsNoPostOfAnotherTeam() throws Exception {
		StaffPost post = this.posts.of(this.people.addCoach(this.other.id(), "Ola")).get(0);
		this.mvc.perform(post("/people/posts/" + post.id() + "/end").with(csrf()).with(user(this.coach)))
			.andExpect(status().isNotFound());
		assertThat(this.posts.find(post.id())).isPresent();
	}

	@Test
	void showsEveryComponentToACoach() throws Exception {
		html(get("/style").with(user(this.coach)));
	}

	@Test
	void answersForAnAthleteOfAnotherTeamAsForNobody() throws Exception {
		Athlete stranger = this.squad.athletesIn(this.other.id()).get(0);
		this.mvc.perform(get("/athletes/" + stranger.id()).with(user(this.coach))).andExpect(status().isNotFound());
		this.mvc.perform(get("/athletes/" + PersonId.next()).with(user(this.coach))).andExpect(status().isNotFound());
	}

	private MockHttpServletRequestBuilder adding(String name, UUID team) {
		return adding(name, team, "CLUB_RECORD");
	}

	private MockHttpServletRequestBuilder adding(String name, UUID team, String basis) {
		return post("/people").with(csrf()).param("name", name).param("basis", basis).param("teamId", team.toString());
	}

	private MockHttpServletRequestBuilder inviting(String name) {
		return post("/people/invitations").with(csrf())
			.param("whom", name)
			.param("kind", "ATHLETE")
			.param("intoTeam", this.own.id().toString());
	}

	private UserDetails account(PersonId person) {
		this.accounts.open(person, person + "@club.example", PASSWORD);
		return this.users.loadUserByUsername(person + "@club.example");
	}

	private Stream<String> athletes() {
		return this.squad.athletesIn(this.own.id()).stream().map(Athlete::name);
	}

	private String html(RequestBuilder request) throws Exception {
		String html = this.mvc.perform(request)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
		assertThat(html).doesNotContain("??");
		return html;
	}

}
