package org.fallow.account.web;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
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
	void keepsNobodyOnFileWhoWasNotAsked() throws Exception {
		assertThat(html(post("/people").with(csrf())
			.param("name", "Eve")
			.param("teamId", this.own.id().toString())
			.with(user(this.coach)))).contains("Please ask first");
		assertThat(athletes()).doesNotContain("Eve");
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
		return post("/people").with(csrf())
			.param("name", name)
			.param("agreed", "true")
			.param("teamId", team.toString());
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
