package org.fallow.account;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import jakarta.servlet.http.Cookie;

import org.fallow.platform.DatabaseTest;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.RequestBuilder;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/**
 * Setting Fallow up, without any account: those of other tests are put aside meanwhile.
 */
@DatabaseTest
class SetUpTests {

	private static final String PASSWORD = "a long enough sentence";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private SetUpCode code;

	@Autowired
	private FlywayConnectionDetails owner;

	private String username;

	@BeforeEach
	void putAccountsAside() {
		this.username = UUID.randomUUID() + "@club.example";
		asOwner("create table account_aside as select * from account");
		asOwner("delete from account");
	}

	@AfterEach
	void putAccountsBack() {
		asOwner("delete from account");
		asOwner("insert into account select * from account_aside");
		asOwner("drop table account_aside");
	}

	@Test
	void leadsToSetUpWhileThereIsNoAccount() throws Exception {
		this.mvc.perform(get("/")).andExpect(redirectedUrl("/sign-in"));
		this.mvc.perform(get("/sign-in")).andExpect(redirectedUrl("/set-up"));
		assertThat(html(get("/set-up"))).contains("name=\"code\"").doesNotContain(this.code.code());
	}

	@Test
	void makesTheFirstCoach() throws Exception {
		this.mvc.perform(setUp(" " + this.code.code() + " ")).andExpect(redirectedUrl("/sign-in"));
		this.mvc.perform(post("/sign-in").with(csrf()).param("username", this.username).param("password", PASSWORD))
			.andExpect(redirectedUrl("/"));
	}

	@Test
	void closesOnceTheCodeIsUsed() throws Exception {
		this.mvc.perform(setUp(this.code.code())).andExpect(redirectedUrl("/sign-in"));
		this.mvc.perform(get("/set-up")).andExpect(redirectedUrl("/sign-in"));
		this.username = "second@club.example";
		assertThat(html(setUp(this.code.code()))).contains("set up already");
		this.mvc.perform(post("/sign-in").with(csrf()).param("username", this.username).param("password", PASSWORD))
			.andExpect(redirectedUrl("/sign-in?failed"));
	}

	/** As six clicks of one browser, or six people with the log open, would send it. */
	@ParameterizedTest
	@ValueSource(booleans = { true, false })
	void makesOneClubOfManyPostsAtOnceAndAnswersThemAlike(boolean oneBrowser) throws Exception {
		Cookie browser = this.mvc.perform(get("/set-up")).andReturn().getResponse().getCookie("SESSION");
		int clubs = clubs();
		ExecutorService clicks = Executors.newFixedThreadPool(6);
		try {
			List<Future<String>> answers = clicks.invokeAll(Collections.nCopies(6, () -> {
				MockHttpServletRequestBuilder request = setUp(this.code.code());
				MockHttpServletResponse answer = this.mvc.perform(oneBrowser ? request.cookie(browser) : request)
					.andReturn()
					.getResponse();
				return answer.getStatus() + " " + answer.getRedirectedUrl();
			}));
			for (Future<String> answer : answers) {
				assertThat(answer.get()).isEqualTo("302 /sign-in");
			}
		}
		finally {
			clicks.shutdown();
		}
		assertThat(clubs()).isEqualTo(clubs + 1);
		this.mvc.perform(post("/sign-in").with(csrf()).param("username", this.username).param("password", PASSWORD))
			.andExpect(redirectedUrl("/"));
	}

	@Test
	void answersASecondClickLikeTheFirst() throws Exception {
		this.mvc.perform(setUp(this.code.code())).andExpect(redirectedUrl("/sign-in"));
		this.mvc.perform(setUp(this.code.code())).andExpect(redirectedUrl("/sign-in"));
		assertThat(html(with(setUp(this.code.code()), "password", "another long sentence"))).contains("set up already");
	}

	private int clubs() {
		return JdbcClient
			.create(new DriverManagerDataSource(this.owner.getJdbcUrl(), this.owner.getUsername(),
					this.owner.getPassword()))
			.sql("select count(*) from club")
			.query(Integer.class)
			.single();
	}

	@Test
	void refusesAWrongCode() throws Exception {
		String html = html(setUp("aaaa-bbbb-cccc-dddd"));
		assertThat(html).contains("not the code in the log", "value=\"Club\"").doesNotContain(PASSWORD);
		this.mvc.perform(get("/sign-in")).andExpect(redirectedUrl("/set-up"));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "zone|Moon/Base|no such time zone", "username|a b|no spaces",
			"password|short|at least 12", "clubName| |A name has 1 to 120" })
	void saysWhatIsWrongAtItsField(String field, String value, String sentence) throws Exception {
		MockHttpServletRequestBuilder request = setUp(this.code.code());
		assertThat(html(with(request, field, (value == null) ? "" : value))).contains(sentence,
				"id=\"" + field + "-problem\"");
		this.mvc.perform(get("/sign-in")).andExpect(redirectedUrl("/set-up"));
	}

	private MockHttpServletRequestBuilder setUp(String typed) {
		return post("/set-up").with(csrf())
			.param("code", typed)
			.param("clubName", "Club")
			.param("teamName", "Team")
			.param("zone", "Europe/London")
			.param("name", "Cay")
			.param("username", this.username)
			.param("password", PASSWORD);
	}

	private static RequestBuilder with(MockHttpServletRequestBuilder request, String field, String value) {
		return request.with((sent) -> {
			sent.setParameter(field, value);
			return sent;
		});
	}

	private void asOwner(String sql) {
		JdbcClient
			.create(new DriverManagerDataSource(this.owner.getJdbcUrl(), this.owner.getUsername(),
					this.owner.getPassword()))
			.sql(sql)
			.update();
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
