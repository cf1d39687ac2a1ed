package org.fallow.account.web;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.UUID;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetupTest;
import jakarta.servlet.http.Cookie;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.http.HttpHeaders;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.MvcResult;
import org.springframework.test.web.servlet.RequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

/** Ann, an athlete of a team of her own, its coach Cay, a mail server and a clock. */
@DatabaseTest
@Import(SettableClock.class)
abstract class SignInTestCase {

	static final String PASSWORD = "a long enough sentence";

	static final String WANTED = "kelp orbit lantern mule";

	static final String PHONE = "Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0";

	/** One for all classes, so that they share the application. */
	static final GreenMail MAIL = new GreenMail(ServerSetupTest.SMTP.dynamicPort());

	static {
		MAIL.start();
	}

	@Autowired
	MockMvc mvc;

	@Autowired
	SettableClock clock;

	@Autowired
	People people;

	@Autowired
	Accounts accounts;

	Team team;

	PersonId cay;

	PersonId ann;

	String annName;

	/** A network of this test alone. */
	String address;

	@DynamicPropertySource
	static void mailServer(DynamicPropertyRegistry registry) {
		registry.add("spring.mail.host", () -> "127.0.0.1");
		registry.add("spring.mail.port", () -> MAIL.getSmtp().getPort());
	}

	@BeforeEach
	void makePeople() {
		UUID random = UUID.randomUUID();
		this.address = "10." + (random.hashCode() & 255) + "." + (random.hashCode() >> 8 & 255) + "."
				+ (random.hashCode() >> 16 & 255);
		this.team = this.people.addTeam(this.people.foundClub("Club " + random).id(), "Team", ZoneOffset.UTC);
		this.cay = this.people.addCoach(this.team.id(), "Cay");
		this.ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann")).id();
		this.annName = open(this.ann);
		open(this.cay);
	}

	String open(PersonId person) {
		String name = person + "@club.example";
		this.accounts.open(person, name, PASSWORD);
		return name;
	}

	MockHttpServletRequestBuilder signIn(String name, String password) {
		return post("/sign-in").with(csrf()).with((request) -> {
			request.setRemoteAddr(this.address);
			return request;
		}).header(HttpHeaders.USER_AGENT, PHONE).param("username", name).param("password", password);
	}

	/** The session's cookie. */
	Cookie signedIn(PersonId person) throws Exception {
		return session(
				this.mvc.perform(signIn(person + "@club.example", PASSWORD)).andExpect(redirectedUrl("/")).andReturn());
	}

	static Cookie session(MvcResult result) {
		return Objects.requireNonNull(result.getResponse().getCookie("SESSION"));
	}

	String html(RequestBuilder request, int status) throws Exception {
		MvcResult result = this.mvc.perform(request).andReturn();
		String html = result.getResponse().getContentAsString(StandardCharsets.UTF_8);
		assertThat(result.getResponse().getStatus()).as(html).isEqualTo(status);
		assertThat(html).doesNotContain("??");
		return html;
	}

}
