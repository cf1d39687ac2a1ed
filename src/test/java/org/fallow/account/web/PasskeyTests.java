package org.fallow.account.web;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/** Passkeys that are none; those that are one are tried in a real browser. */
class PasskeyTests extends SignInTestCase {

	@Test
	void asksForAFingerAFaceOrACodeAndTellsTheDeviceTheName() throws Exception {
		Cookie session = signedIn(this.ann);
		String options = html(sent("/account/passkeys/options", "{}").cookie(session), 200);
		assertThat(options).contains("\"userVerification\":\"required\"", "\"displayName\":\"Ann\"",
				"\"id\":\"localhost\"");
		assertThat(html(sent("/sign-in/passkey/options", "{}"), 200)).contains("\"userVerification\":\"required\"");
	}

	@Test
	void drawsEachChallengeAnew() throws Exception {
		assertThat(challenge()).isNotEqualTo(challenge());
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "nonsense", "[]", "{}", "{\"label\":\"Phone\"}",
			"{\"label\":\"Phone\",\"credential\":{\"id\":\"x\"}}", "{\"label\":\"\",\"credential\":{}}", "null",
			"{\"label\":\"nul\\u0000\",\"credential\":{}}" })
	void keepsNoneThatIsNone(String body) throws Exception {
		Cookie session = signedIn(this.ann);
		html(sent("/account/passkeys/options", "{}").cookie(session), 200);
		this.mvc.perform(sent("/account/passkeys", body).cookie(session)).andExpect(status().isBadRequest());
		assertThat(html(get("/account").cookie(session), 200)).doesNotContain("passkeys/remove");
	}

	@Test
	void keepsNoneThatNobodyAskedFor() throws Exception {
		this.mvc.perform(sent("/account/passkeys", "{}").cookie(signedIn(this.ann))).andExpect(status().isBadRequest());
		this.mvc.perform(sent("/account/passkeys", "{}")).andExpect(redirectedUrl("/sign-in"));
	}

	@Test
	void readsNoMegabyte() throws Exception {
		String huge = "{\"label\":\"" + "x".repeat(1_000_000) + "\"}";
		Cookie session = signedIn(this.ann);
		html(sent("/account/passkeys/options", "{}").cookie(session), 200);
		this.mvc.perform(sent("/account/passkeys", huge).cookie(session)).andExpect(status().isBadRequest());
		this.mvc.perform(sent("/sign-in/passkey", huge)).andExpect(status().isNotFound());
	}

	@ParameterizedTest
	@ValueSource(strings = { "{}", "nonsense", "null" })
	void signsNobodyInWithoutASignature(String body) throws Exception {
		Cookie session = session(this.mvc.perform(sent("/sign-in/passkey/options", "{}")).andReturn());
		this.mvc.perform(sent("/sign-in/passkey", body).cookie(session)).andExpect(status().isUnauthorized());
		this.mvc.perform(get("/account").cookie(session)).andExpect(redirectedUrl("/sign-in"));
	}

	@Test
	void removesNobodyElsesPasskey() throws Exception {
		this.mvc.perform(post("/account/passkeys/remove").with(csrf()).cookie(signedIn(this.ann)).param("id", "x"))
			.andExpect(redirectedUrl("/account"));
	}

	private String challenge() throws Exception {
		Matcher challenge = Pattern.compile("\"challenge\":\"([A-Za-z0-9_-]{43})\"")
			.matcher(html(sent("/sign-in/passkey/options", "{}"), 200));
		assertThat(challenge.find()).isTrue();
		return challenge.group(1);
	}

	private static MockHttpServletRequestBuilder sent(String path, String body) {
		return post(path).with(csrf()).contentType(MediaType.APPLICATION_JSON).content(body);
	}

}
