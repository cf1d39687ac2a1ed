package org.fallow.account.web;

import java.lang.reflect.Method;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/** A page that somebody adds and no rule names: open to nobody. */
@DatabaseTest
class UnnamedPageTests {

	private static final String SECRET = "whoever reads this came in";

	@Autowired
	private MockMvc mvc;

	@Autowired
	@Qualifier("requestMappingHandlerMapping")
	private RequestMappingHandlerMapping mappings;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	private RequestMappingInfo added;

	private UserDetails owner;

	@BeforeEach
	void addAnOwner() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		UUID team = this.people.addTeam(club, "Team", ZoneOffset.UTC).id();
		PersonId id = this.people.addCoach(team, "Olu");
		this.posts.give(id, new NewPost(Post.OWNER, club, null, false, List.of(), null));
		this.accounts.open(id, id + "@club.example");
		this.owner = this.users.loadUserByUsername(id + "@club.example");
	}

	@AfterEach
	void takeThePageAway() {
		this.mappings.unregisterMapping(this.added);
	}

	@ParameterizedTest
	@ValueSource(strings = { "/added", "/today/added", "/session/1/added", "/account/added", "/programme/1/added" })
	void isClosed(String page) throws Exception {
		this.added = RequestMappingInfo.paths(page)
			.methods(RequestMethod.GET, RequestMethod.POST)
			.options(this.mappings.getBuilderConfiguration())
			.build();
		Method answer = Added.class.getDeclaredMethod("answer");
		this.mappings.registerMapping(this.added, new Added(), answer);
		var asked = this.mvc.perform(get(page).with(user(this.owner))).andReturn().getResponse();
		assertThat(asked.getStatus()).isEqualTo(404);
		assertThat(asked.getContentAsString()).doesNotContain(SECRET);
		var sent = this.mvc.perform(post(page).with(csrf()).with(user(this.owner))).andReturn().getResponse();
		assertThat(sent.getStatus()).isEqualTo(404);
		assertThat(this.mvc.perform(get(page)).andReturn().getResponse().getRedirectedUrl()).endsWith("/sign-in");
	}

	/** The page. */
	static final class Added {

		ResponseEntity<String> answer() {
			return ResponseEntity.ok(SECRET);
		}

	}

}
