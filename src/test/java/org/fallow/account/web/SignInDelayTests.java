package org.fallow.account.web;

import java.time.Duration;
import java.util.Locale;
import java.util.UUID;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.BeforeEach;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.test.context.bean.override.mockito.MockitoSpyBean;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.argThat;
import static org.mockito.Mockito.clearInvocations;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

class SignInDelayTests extends SignInTestCase {

	private static final String FAILED = "/sign-in?failed";

	@MockitoSpyBean
	private PasswordEncoder encoder;

	@Autowired
	private JdbcClient jdbc;

	@BeforeEach
	void forgetHashes() {
		clearInvocations(this.encoder);
	}

	@Test
	void slowsANameDownWhetherOrNotThereIsAnAccount() throws Exception {
		String nobody = UUID.randomUUID() + "@club.example";
		for (String name : new String[] { this.annName, nobody }) {
			fail(name, 5);
			this.mvc.perform(signIn(name, "wrong")).andExpect(redirectedUrl("/sign-in?wait=2"));
			this.clock.advance(Duration.ofSeconds(2));
			fail(name, 1);
			this.mvc.perform(signIn(name, "wrong")).andExpect(redirectedUrl("/sign-in?wait=4"));
		}
		assertThat(html(get("/sign-in?wait=4"), 200)).contains("Please wait 4 seconds");
		assertThat(html(get("/sign-in?wait=900"), 200)).contains("Please wait 15 minutes");
		assertThat(html(get("/sign-in?wait=<b>"), 200)).doesNotContain("Please wait", "<b>");
	}

	@Test
	void hashesOnceForEachTryAndNeverWhileItWaits() throws Exception {
		String nobody = UUID.randomUUID() + "@club.example";
		this.mvc.perform(signIn(this.annName, "wrong")).andExpect(redirectedUrl(FAILED));
		this.mvc.perform(signIn(nobody, "wrong")).andExpect(redirectedUrl(FAILED));
		verify(this.encoder, times(2)).matches(any(), any());
		fail(this.annName, 4);
		clearInvocations(this.encoder);
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/sign-in?wait=2"));
		verify(this.encoder, never()).matches(any(), any());
	}

	@Test
	void countsLookAlikesAsOneName() throws Exception {
		fail(this.annName.toUpperCase(Locale.ROOT), 3);
		fail(this.annName.replace('@', '\uFF20'), 2);
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/sign-in?wait=2"));
	}

	@Test
	void beginsAnewAfterASuccess() throws Exception {
		fail(this.annName, 4);
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/"));
		fail(this.annName, 4);
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/"));
	}

	@Test
	void slowsANetworkDownThatTriesManyNames() throws Exception {
		for (int i = 0; i < 20; i++) {
			fail(UUID.randomUUID() + "@club.example", 1);
		}
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/sign-in?wait=2"));
		this.address = "192.0.2.77";
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/"));
	}

	@Test
	void doesNotCountSuccessesAgainstANetwork() throws Exception {
		for (int i = 0; i < 25; i++) {
			this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/"));
		}
	}

	@Test
	void keepsNeitherNamesNorAddresses() throws Exception {
		fail(this.annName, 1);
		assertThat(this.jdbc.sql("select t::text from sign_in_tries t").query(String.class).list()).isNotEmpty()
			.noneMatch((row) -> row.contains(this.annName) || row.contains(this.address));
	}

	@Test
	void neverHashesAMegabyte() throws Exception {
		String huge = "x".repeat(1_000_000);
		this.mvc.perform(signIn(this.annName, huge)).andExpect(redirectedUrl(FAILED));
		this.mvc.perform(signIn(huge, huge)).andExpect(redirectedUrl(FAILED));
		verify(this.encoder, times(2)).matches(argThat((typed) -> typed.length() <= 200), any());
	}

	private void fail(String name, int times) throws Exception {
		for (int i = 0; i < times; i++) {
			this.mvc.perform(signIn(name, "wrong")).andExpect(redirectedUrl(FAILED));
		}
	}

}
