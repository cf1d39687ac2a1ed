package org.fallow.account.web;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import jakarta.servlet.http.Cookie;
import org.fallow.access.PersonId;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MvcResult;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

class SessionsTests extends SignInTestCase {

	private static final String EXPIRED = "/sign-in?expired";

	@Autowired
	private JdbcClient jdbc;

	@Test
	void namesASessionByThePersonsIdAlone() throws Exception {
		signedIn(this.ann);
		assertThat(this.jdbc.sql("select principal_name from spring_session where principal_name is not null")
			.query(String.class)
			.list()).contains(this.ann.toString()).allSatisfy(PersonId::parse);
	}

	@Test
	void listsTheSessionsInWordsAndMarksThisOne() throws Exception {
		Cookie first = signedIn(this.ann);
		signedIn(this.ann);
		String html = html(get("/account").cookie(first), 200);
		assertThat(html).contains("Firefox on Android").containsOnlyOnce("This one, here");
		assertThat(handles(html).results()).hasSize(1);
		assertThat(html).doesNotContain(first.getValue());
	}

	@Test
	void endsOneSession() throws Exception {
		Cookie first = signedIn(this.ann);
		Cookie second = signedIn(this.ann);
		Matcher handle = handles(html(get("/account").cookie(first), 200));
		assertThat(handle.find()).isTrue();
		this.mvc.perform(post("/account/sessions/end").with(csrf()).cookie(first).param("session", handle.group(1)))
			.andExpect(redirectedUrl("/account"));
		this.mvc.perform(get("/account").cookie(second)).andExpect(redirectedUrl(EXPIRED));
		this.mvc.perform(get("/account").cookie(first)).andExpect(status().isOk());
	}

	@Test
	void endsNobodyElsesSession() throws Exception {
		Cookie anns = signedIn(this.ann);
		signedIn(this.ann);
		Cookie cays = signedIn(this.cay);
		Matcher handle = handles(html(get("/account").cookie(anns), 200));
		assertThat(handle.find()).isTrue();
		this.mvc.perform(post("/account/sessions/end").with(csrf()).cookie(cays).param("session", handle.group(1)));
		assertThat(handles(html(get("/account").cookie(anns), 200)).results()).hasSize(1);
	}

	@Test
	void signsOutEverywhere() throws Exception {
		Cookie first = signedIn(this.ann);
		Cookie second = signedIn(this.ann);
		Cookie cays = signedIn(this.cay);
		this.mvc.perform(post("/account/sessions/end-all").with(csrf()).cookie(first))
			.andExpect(redirectedUrl("/sign-in?signed-out-everywhere"));
		this.mvc.perform(get("/account").cookie(first)).andExpect(redirectedUrl(EXPIRED));
		this.mvc.perform(get("/account").cookie(second)).andExpect(redirectedUrl(EXPIRED));
		this.mvc.perform(get("/account").cookie(cays)).andExpect(status().isOk());
		assertThat(html(get("/sign-in?signed-out-everywhere"), 200)).contains("on all devices");
	}

	@Test
	void endsTheOthersWithANewPassword() throws Exception {
		Cookie first = signedIn(this.ann);
		Cookie second = signedIn(this.ann);
		this.mvc
			.perform(post("/password").with(csrf())
				.cookie(first)
				.param("present", PASSWORD)
				.param("wanted", WANTED)
				.param("again", WANTED))
			.andExpect(redirectedUrl("/password"));
		this.mvc.perform(get("/account").cookie(second)).andExpect(redirectedUrl(EXPIRED));
		this.mvc.perform(get("/account").cookie(first)).andExpect(status().isOk());
	}

	@Test
	void slowsDownGuessingThePresentPassword() throws Exception {
		Cookie session = signedIn(this.ann);
		for (int i = 0; i < 5; i++) {
			assertThat(change(session, "wrong")).contains("not your current password");
		}
		assertThat(change(session, PASSWORD)).contains("Please wait 2 seconds");
	}

	private String change(Cookie session, String present) throws Exception {
		return html(post("/password").with(csrf())
			.cookie(session)
			.param("present", present)
			.param("wanted", WANTED)
			.param("again", WANTED), 200);
	}

	@Test
	void staysSignedInOnlyWhereThatIsAskedFor() throws Exception {
		Cookie session = signedIn(this.ann);
		assertThat(session.getMaxAge()).isNegative();
		MvcResult stayed = this.mvc.perform(signIn(this.annName, PASSWORD).param("stay", "on"))
			.andExpect(redirectedUrl("/"))
			.andReturn();
		assertThat(session(stayed).getMaxAge()).isEqualTo((int) Duration.ofDays(60).toSeconds());
		assertThat(this.jdbc
			.sql("select distinct max_inactive_interval from spring_session where principal_name = ? order by 1")
			.param(this.ann.toString())
			.query(Integer.class)
			.list()).containsExactly(1800, (int) Duration.ofDays(60).toSeconds());
	}

	/** Or a cookie would end while its session is used. */
	@Test
	void writesTheCookieThatStaysAnewOnEachDayOfUse() throws Exception {
		Cookie stay = session(this.mvc.perform(signIn(this.annName, PASSWORD).param("stay", "on")).andReturn());
		Cookie brief = signedIn(this.ann);
		for (int day = 0; day < 3; day++) {
			assertThat(this.mvc.perform(get("/account").cookie(stay)).andReturn().getResponse().getHeader("Set-Cookie"))
				.startsWith("SESSION=" + stay.getValue() + ";")
				.contains("Max-Age=" + Duration.ofDays(60).toSeconds() + ";");
			assertThat(this.mvc.perform(get("/account").cookie(stay)).andReturn().getResponse().getCookie("SESSION"))
				.isNull();
			assertThat(this.mvc.perform(get("/account").cookie(brief)).andReturn().getResponse().getCookie("SESSION"))
				.isNull();
			this.clock.advance(Duration.ofDays(1));
		}
	}

	@Test
	void changesTheSessionIdAtSignIn() throws Exception {
		Cookie planted = session(this.mvc.perform(get("/sign-in")).andReturn());
		Cookie after = session(this.mvc.perform(signIn(this.annName, PASSWORD).cookie(planted)).andReturn());
		assertThat(after.getValue()).isNotEqualTo(planted.getValue());
		this.mvc.perform(get("/account").cookie(planted)).andExpect(redirectedUrl(EXPIRED));
	}

	@Test
	void keepsNothingOfAFailedSignIn() throws Exception {
		Cookie session = session(this.mvc.perform(get("/sign-in")).andReturn());
		this.mvc.perform(signIn(this.annName, "wrong").cookie(session));
		assertThat(this.jdbc.sql("select attribute_name from spring_session_attributes").query(String.class).list())
			.doesNotContain("SPRING_SECURITY_LAST_EXCEPTION");
	}

	private static Matcher handles(String html) {
		return Pattern.compile("name=\"session\" value=\"([0-9a-f]{64})\"").matcher(html);
	}

}
