package org.fallow.board.web;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Trace;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/** By which post a board was looked at: for each athlete the one that covers them. */
@DatabaseTest
@Import(SettableClock.class)
class BoardTraceTests {

	/** Ahead of the database's own clock, which the policies go by. */
	private static final LocalDate TODAY = LocalDate.of(2099, 5, 6);

	@Autowired
	private SettableClock clock;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Trace trace;

	@Autowired
	private UserDetailsService users;

	private Team team;

	private UUID track;

	private UUID road;

	private PersonId coachId;

	private UserDetails coach;

	@BeforeEach
	void addACoachOfOneGroupWhoStandsInForAnother() {
		this.clock.set(TODAY);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.track = this.people.findOrAddGroup(this.team.id(), "Track").id();
		this.road = this.people.findOrAddGroup(this.team.id(), "Road").id();
		this.coachId = this.people.addPerson("Gus", ZoneOffset.UTC);
		post(Post.GROUP_COACH, this.track, false);
		post(Post.DEPUTY, this.road, true);
		this.accounts.open(this.coachId, this.coachId + "@club.example");
		this.coach = this.users.loadUserByUsername(this.coachId + "@club.example");
	}

	@Test
	void notesEachAthleteByThePostThatCoversThem() throws Exception {
		PersonId ann = athlete("Ann", "Track", null);
		PersonId ben = athlete("Ben", "Road", null);
		PersonId cat = athlete("Cat", "Track", ZoneId.of("Pacific/Auckland"));
		PersonId dan = athlete("Dan", "Road", ZoneId.of("Pacific/Auckland"));
		look();
		look();
		assertThat(posts(ann)).containsExactly("GROUP_COACH");
		assertThat(posts(ben)).containsExactly("DEPUTY");
		assertThat(posts(cat)).containsExactly("GROUP_COACH");
		assertThat(posts(dan)).containsExactly("DEPUTY");
	}

	@Test
	void notesAnotherLookOnTheNextOwnDay() throws Exception {
		PersonId ann = athlete("Ann", "Track", null);
		PersonId cat = athlete("Cat", "Track", ZoneId.of("Pacific/Auckland"));
		look();
		this.clock.set(TODAY, LocalTime.of(13, 0), ZoneOffset.UTC);
		look();
		assertThat(posts(ann)).hasSize(1);
		assertThat(posts(cat)).as("the next day in Auckland").hasSize(2);
	}

	private void post(Post kind, UUID group, boolean ends) {
		this.posts.give(this.coachId, new NewPost(kind, this.team.clubId(), this.team.id(), false, List.of(group),
				ends ? this.clock.instant().plus(Duration.ofDays(3)) : null));
	}

	private PersonId athlete(String name, String group, @Nullable ZoneId zone) {
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, zone, LocalDate.of(2060, 1, 2), group))
			.id();
	}

	private void look() throws Exception {
		this.mvc.perform(get("/board").with(user(this.coach))).andExpect(status().isOk());
	}

	private List<String> posts(PersonId athlete) {
		return CurrentPerson.callAs(athlete, () -> this.trace.of(athlete, null, 10))
			.stream()
			.map((line) -> line.actor().post())
			.toList();
	}

}
