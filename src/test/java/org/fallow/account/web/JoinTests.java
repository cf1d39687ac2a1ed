package org.fallow.account.web;

import org.junit.jupiter.params.provider.ValueSource;
import org.junit.jupiter.params.ParameterizedTest;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import jakarta.servlet.http.Cookie;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Secret;
import org.fallow.account.Accounts;
import org.fallow.account.Joining;
import org.fallow.account.Newcomer;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.team.Consent;
import org.fallow.team.Consents;
import org.fallow.team.Group;
import org.fallow.team.Invitations;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Squad;
import org.fallow.team.StaffPost;
import org.fallow.team.Team;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
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
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
@NobodyOperates
@Import(SettableClock.class)
class JoinTests {

	private static final String PASSWORD = "a long enough sentence";

	/** Ahead of the database's own clock, which the policies go by. */
	private static final LocalDate TODAY = LocalDate.of(2099, 5, 6);

	private static final Pattern LINK = Pattern.compile("/join/([\\w-]{43})\"");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Squad squad;

	@Autowired
	private Posts posts;

	@Autowired
	private Consents consents;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Joining joining;

	@Autowired
	private UserDetailsService users;

	private Team team;

	private Team other;

	private Group track;

	private PersonId coachId;

	private UserDetails coach;

	private Athlete ann;

	private String username;

	@BeforeEach
	void addATeam() {
		this.clock.set(TODAY);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		this.other = this.people.addTeam(club, "Other", ZoneOffset.UTC);
		this.track = this.people.findOrAddGroup(this.team.id(), "Track");
		this.coachId = this.people.addCoach(this.team.id(), "Cay Coach");
		this.coach = account(this.coachId);
		this.ann = this.people.addAthlete(this.team.id(),
				new NewAthlete("Ann Ashe", null, null, LocalDate.of(2060, 1, 2), "Track"));
		this.username = UUID.randomUUID() + "@club.example";
	}

	@Test
	void takesANewAthleteIn() throws Exception {
		String secret = invite("ATHLETE", "Eve Elm");
		Cookie session = open(secret);
		assertThat(html(get("/join").cookie(session))).contains("Cay Coach invites you to Team", "Eve Elm",
				"What your coaches will see");
		this.mvc.perform(filled(session)).andExpect(redirectedUrl("/sign-in"));
		Athlete eve = as(this.coachId, () -> this.squad.athletesIn(this.team.id())).stream()
			.filter((athlete) -> athlete.name().equals("Eve Elm"))
			.findFirst()
			.orElseThrow();
		assertThat(eve.birthDate()).isEqualTo(LocalDate.of(2065, 3, 4));
		assertThat(as(eve.id(), () -> this.consents.of(eve.id()))).extracting(Consent::kind)
			.containsExactly(Consent.Kind.GIVEN);
		this.mvc.perform(post("/sign-in").with(csrf()).param("username", this.username).param("password", PASSWORD))
			.andExpect(redirectedUrl("/"));
		assertGone(secret);
	}

	@Test
	void handsAnAthleteOnFileTheirOwnPage() throws Exception {
		String secret = secret(
				html(post("/people/" + this.ann.id() + "/invitation").with(csrf()).with(user(this.coach))));
		Cookie session = open(secret);
		assertThat(html(get("/join").cookie(session)))
			.contains("Your data have been kept here since", "on the club\u2019s record", "That was not your consent.")
			.doesNotContain("name=\"birthDate\"", "name=\"guardian\"");
		this.mvc.perform(filled(session)).andExpect(redirectedUrl("/sign-in"));
		UserDetails own = this.users.loadUserByUsername(this.username);
		assertThat(((org.fallow.access.SignedIn) own).personId()).isEqualTo(this.ann.id());
		assertThat(as(this.ann.id(), () -> this.consents.of(this.ann.id()))).extracting(Consent::kind)
			.containsExactly(Consent.Kind.GIVEN, Consent.Kind.KEPT);
	}

	@ParameterizedTest
	@ValueSource(strings = { "\u200b", "E\u0007ve" })
	void takesNobodyInByANameThatIsNone(String name) throws Exception {
		Cookie session = open(invite("ATHLETE", "Eve Elm"));
		assertThat(html(post("/join").with(csrf())
			.cookie(session)
			.param("name", name)
			.param("username", this.username)
			.param("password", PASSWORD)
			.param("birthDate", "2070-01-02")
			.param("agreed", "true")
			.param("guardian", "Pat\u0007")
			.param("guardianRole", "mother"))).contains("id=\"name-problem\"");
		assertThat(athletes()).containsExactly("Ann Ashe");
	}

	@Test
	void takesNobodyInWhoDoesNotAgree() throws Exception {
		String secret = invite("ATHLETE", "Eve Elm");
		Cookie session = open(secret);
		assertThat(html(post("/join").with(csrf())
			.cookie(session)
			.param("name", "Eve Elm")
			.param("username", this.username)
			.param("password", PASSWORD)
			.param("birthDate", "2065-03-04"))).contains("Without that there is nothing to join");
		assertThat(athletes()).containsExactly("Ann Ashe");
		html(get("/join").cookie(session));
	}

	@Test
	void refusesABirthDateThatNobodyHas() throws Exception {
		for (String kind : List.of("ATHLETE", "HEAD_COACH")) {
			Cookie session = open(invite(kind, "Old Oak"));
			this.username = UUID.randomUUID() + "@club.example";
			for (String born : List.of("0001-01-01", TODAY.minusYears(120).minusDays(1).toString())) {
				String html = html(filled(session, born));
				assertThat(html).contains("over 120 years ago");
			}
			assertThat(html(filled(session, TODAY.plusDays(1).toString()))).contains("cannot be in the future");
			this.mvc.perform(filled(session, TODAY.minusYears(120).toString())).andExpect(redirectedUrl("/sign-in"));
		}
	}

	@Test
	void asksAGuardianForSomebodyUnder18OrWithoutABirthDate() throws Exception {
		for (String born : List.of(TODAY.minusYears(16).toString(), "")) {
			Cookie session = open(invite("ATHLETE", "Kit Kid"));
			this.username = UUID.randomUUID() + "@club.example";
			assertThat(html(filled(session, born))).contains("please give the guardian", "say what the guardian is");
			this.mvc.perform(filled(session, born).param("guardian", "Pat Parent").param("guardianRole", "mother"))
				.andExpect(redirectedUrl("/sign-in"));
			PersonId kit = ((org.fallow.access.SignedIn) this.users.loadUserByUsername(this.username)).personId();
			assertThat(as(kit, () -> this.consents.of(kit)).get(0)).extracting(Consent::guardian, Consent::guardianRole)
				.containsExactly("Pat Parent", "mother");
		}
	}

	@Test
	void refusesExpiredRevokedGuessedAndTornLinks() throws Exception {
		String expired = invite("ATHLETE", "Eve Elm");
		Cookie session = open(expired);
		this.clock.advance(Invitations.LIFE.plusSeconds(1));
		assertGone(expired);
		assertThat(this.mvc.perform(filled(session)).andReturn().getResponse().getRedirectedUrl())
			.isEqualTo("/join/gone");
		String revoked = invite("ATHLETE", "Eve Elm");
		String people = html(get("/people").with(user(this.coach)));
		Matcher revoke = Pattern.compile("/people/invitations/[\\w-]{36}/revoke").matcher(people);
		assertThat(revoke.find()).isTrue();
		this.mvc.perform(post(revoke.group()).with(csrf()).with(user(this.coach))).andExpect(redirectedUrl("/people"));
		assertGone(revoked);
		assertGone(Secret.draw().text());
		assertGone(invite("ATHLETE", "Eve Elm").substring(1));
		assertGone("x");
		assertThat(athletes()).containsExactly("Ann Ashe");
	}

	@Test
	void worksOnANodeWhoseClockIsAFewMinutesOff() throws Exception {
		String secret = invite("ATHLETE", "Eve Elm");
		this.clock.advance(Duration.ofMinutes(-5));
		html(get("/join").cookie(open(secret)));
		this.clock.advance(Invitations.LIFE);
		html(get("/join").cookie(open(secret)));
		this.clock.advance(Duration.ofMinutes(6));
		assertGone(secret);
	}

	@Test
	void isAcceptedOnceThoughTwoTryAtOnce() throws Exception {
		String hash = new Secret(invite("ATHLETE", "Eve Elm")).hash();
		List<Callable<List<Problem>>> both = new ArrayList<>();
		for (int i = 0; i < 2; i++) {
			Newcomer newcomer = new Newcomer("Eve Elm", i + this.username, PASSWORD, LocalDate.of(2065, 3, 4), true, "",
					"");
			both.add(() -> this.joining.join(hash, newcomer));
		}
		ExecutorService threads = Executors.newFixedThreadPool(2);
		List<List<Problem>> outcomes = new ArrayList<>();
		for (Future<List<Problem>> done : threads.invokeAll(both)) {
			outcomes.add(done.get());
		}
		threads.shutdown();
		assertThat(outcomes).containsExactlyInAnyOrder(List.of(), List.of(Problem.of("", "join.gone")));
		assertThat(athletes()).containsExactlyInAnyOrder("Ann Ashe", "Eve Elm");
	}

	@Test
	void givesACoachOfGroupsTheirAthletesOnly() throws Exception {
		Athlete far = CurrentPerson.callAs(this.coachId,
				() -> this.people.addAthlete(this.team.id(), NewAthlete.named("Far Field")));
		String secret = secret(html(post("/people/invitations").with(csrf())
			.with(user(this.coach))
			.param("whom", "Gus Group")
			.param("kind", "GROUP_COACH")
			.param("intoTeam", this.team.id().toString())
			.param("groupIds", this.track.id().toString())));
		Cookie session = open(secret);
		assertThat(html(get("/join").cookie(session))).contains("As a coach of groups").doesNotContain("birthDate");
		this.mvc.perform(filled(session)).andExpect(redirectedUrl("/sign-in"));
		UserDetails gus = this.users.loadUserByUsername(this.username);
		assertThat(html(get("/board").with(user(gus)))).contains("Ann Ashe").doesNotContain("Far Field");
		html(get("/athletes/" + this.ann.id()).with(user(gus)));
		this.mvc.perform(get("/athletes/" + far.id()).with(user(gus))).andExpect(status().isNotFound());
		this.mvc.perform(get("/people").with(user(gus))).andExpect(status().isForbidden());
	}

	@Test
	void letsADeputyBeStricterButNeverLooser() throws Exception {
		Cookie session = open(deputy(TODAY.plusDays(3)));
		this.mvc.perform(filled(session)).andExpect(redirectedUrl("/sign-in"));
		UserDetails deputy = this.users.loadUserByUsername(this.username);
		String athlete = "/athletes/" + this.ann.id();
		html(get(athlete).with(user(deputy)));
		this.mvc
			.perform(post(athlete + "/clearance").with(csrf())
				.with(user(deputy))
				.param("requestId", UUID.randomUUID().toString())
				.param("who", "Dr Hill")
				.param("role", "GP")
				.param("from", TODAY.toString())
				.param("scope", "FULL_TRAINING"))
			.andExpect(status().isNotFound());
		this.mvc
			.perform(post(athlete + "/decision/hold").with(csrf())
				.with(user(deputy))
				.param("requestId", UUID.randomUUID().toString())
				.param("reason", "looked grey"))
			.andExpect(status().is3xxRedirection());
	}

	@Test
	void makesNoDeputyWithoutALastDay() throws Exception {
		assertThat(html(post("/people/invitations").with(csrf())
			.with(user(this.coach))
			.param("whom", "Del Deputy")
			.param("kind", "DEPUTY")
			.param("wholeTeam", "true")
			.param("intoTeam", this.team.id().toString()))).contains("A deputy needs a last day");
	}

	@Test
	void invitesNobodyIntoAnotherTeam() throws Exception {
		assertThat(html(post("/people/invitations").with(csrf())
			.with(user(this.coach))
			.param("whom", "Eve Elm")
			.param("kind", "ATHLETE")
			.param("intoTeam", this.other.id().toString()))).contains("one of your own teams").doesNotContain("/join/");
	}

	@Test
	void endsTheCoachsViewTheMomentSharingEnds() throws Exception {
		UserDetails own = account(this.ann.id());
		String page = "/athletes/" + this.ann.id();
		html(get(page).with(user(this.coach)));
		assertThat(html(get("/sharing").with(user(own)))).contains("Cay Coach", "opened your page");
		this.mvc.perform(post("/sharing/withdraw").with(csrf()).with(user(own))).andExpect(redirectedUrl("/sharing"));
		this.mvc.perform(get(page).with(user(this.coach))).andExpect(status().isNotFound());
		assertThat(html(get("/board").with(user(this.coach)))).contains("One athlete shares nothing")
			.doesNotContain("Ann Ashe");
		assertThat(html(get("/people").with(user(this.coach)))).contains("Ann Ashe", "please ask in person");
		html(get("/today").with(user(own)));
		this.mvc.perform(post("/sharing/give").with(csrf()).with(user(own))).andExpect(redirectedUrl("/sharing"));
		html(get(page).with(user(this.coach)));
		this.mvc.perform(post("/sharing/leave").with(csrf()).with(user(own))).andExpect(redirectedUrl("/sharing"));
		this.mvc.perform(get(page).with(user(this.coach))).andExpect(status().isNotFound());
		assertThat(html(get("/people").with(user(this.coach)))).doesNotContain("Ann Ashe");
		assertThat(html(get("/sharing").with(user(own)))).contains("You are in no team");
		html(get("/today").with(user(own)));
	}

	@Test
	void givesARevokedCoachWithAnOpenPageNothing() throws Exception {
		PersonId second = as(null, () -> this.people.addCoach(this.team.id(), "Dov"));
		UserDetails dov = account(second);
		String page = "/athletes/" + this.ann.id();
		html(get(page).with(user(dov)));
		StaffPost post = as(second, () -> this.posts.of(second)).get(0);
		this.mvc.perform(post("/people/posts/" + post.id() + "/end").with(csrf()).with(user(this.coach)))
			.andExpect(redirectedUrl("/people"));
		this.mvc.perform(get(page).with(user(dov))).andExpect(status().isForbidden());
		this.mvc
			.perform(post(page + "/decision/hold").with(csrf())
				.with(user(dov))
				.param("requestId", UUID.randomUUID().toString())
				.param("reason", "late"))
			.andExpect(status().isForbidden());
	}

	@Test
	void endsADeputyByItself() throws Exception {
		Cookie session = open(deputy(TODAY.plusDays(3)));
		this.mvc.perform(filled(session)).andExpect(redirectedUrl("/sign-in"));
		UserDetails deputy = this.users.loadUserByUsername(this.username);
		html(get("/board").with(user(deputy)));
		this.clock.set(TODAY.plusDays(4));
		this.mvc.perform(get("/board").with(user(deputy))).andExpect(status().isForbidden());
	}

	@Test
	void letsACoachWhoIsSignedInBecomeAnAthleteToo() throws Exception {
		String secret = invite("ATHLETE", "Cay Coach");
		Cookie session = Objects.requireNonNull(this.mvc.perform(get("/join/" + secret).with(user(this.coach)))
			.andExpect(redirectedUrl("/join"))
			.andReturn()
			.getResponse()
			.getCookie("SESSION"));
		assertThat(html(get("/join").cookie(session).with(user(this.coach)))).doesNotContain("name=\"password\"");
		this.mvc
			.perform(post("/join").with(csrf())
				.cookie(session)
				.with(user(this.coach))
				.param("birthDate", "2060-01-01")
				.param("agreed", "true"))
			.andExpect(redirectedUrl("/"));
		html(get("/today").with(user(this.coach)));
		assertThat(html(get("/board").with(user(this.coach)))).contains("Cay Coach", "Ann Ashe");
		Cookie again = Objects
			.requireNonNull(this.mvc.perform(get("/join/" + invite("ATHLETE", "Cay Coach")).with(user(this.coach)))
				.andReturn()
				.getResponse()
				.getCookie("SESSION"));
		assertThat(html(post("/join").with(csrf()).cookie(again).with(user(this.coach)).param("agreed", "true")))
			.contains("an athlete of a team already");
	}

	private String deputy(LocalDate lastDay) throws Exception {
		return secret(html(post("/people/invitations").with(csrf())
			.with(user(this.coach))
			.param("whom", "Del Deputy")
			.param("kind", "DEPUTY")
			.param("wholeTeam", "true")
			.param("lastDay", lastDay.toString())
			.param("intoTeam", this.team.id().toString())));
	}

	private String invite(String kind, String whom) throws Exception {
		return secret(html(post("/people/invitations").with(csrf())
			.with(user(this.coach))
			.param("whom", whom)
			.param("another", whom)
			.param("kind", kind)
			.param("intoTeam", this.team.id().toString())));
	}

	private static String secret(String html) {
		Matcher link = LINK.matcher(html);
		assertThat(link.find()).isTrue();
		return link.group(1);
	}

	private Cookie open(String secret) throws Exception {
		return Objects.requireNonNull(this.mvc.perform(get("/join/" + secret))
			.andExpect(redirectedUrl("/join"))
			.andReturn()
			.getResponse()
			.getCookie("SESSION"));
	}

	private void assertGone(String secret) throws Exception {
		this.mvc.perform(get("/join").cookie(open(secret))).andExpect(redirectedUrl("/join/gone"));
		this.mvc.perform(get("/join/gone")).andExpect(status().isGone());
	}

	private MockHttpServletRequestBuilder filled(Cookie session) {
		return filled(session, "2065-03-04");
	}

	private MockHttpServletRequestBuilder filled(Cookie session, String born) {
		return post("/join").with(csrf())
			.cookie(session)
			.param("name", "Eve Elm")
			.param("username", this.username)
			.param("password", PASSWORD)
			.param("birthDate", born)
			.param("agreed", "true");
	}

	private List<String> athletes() {
		return as(this.coachId, () -> this.squad.athletesIn(this.team.id())).stream().map(Athlete::name).toList();
	}

	private static <T> T as(@org.jspecify.annotations.Nullable PersonId person, java.util.function.Supplier<T> work) {
		return (person == null) ? org.fallow.access.Purpose.OPERATION.call(work) : CurrentPerson.callAs(person, work);
	}

	private UserDetails account(PersonId person) {
		String name = person + "@club.example";
		as(null, () -> {
			this.accounts.open(person, name, PASSWORD);
			return true;
		});
		return org.fallow.access.Purpose.SIGN_IN.call(() -> this.users.loadUserByUsername(name));
	}

	private String html(RequestBuilder request) throws Exception {
		return this.mvc.perform(request)
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
	}

}
