package org.fallow.account.web;

import org.fallow.platform.DatabaseTest;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

/** Without a mail server. */
@DatabaseTest
class ForgottenTests {

	@Autowired
	private MockMvc mvc;

	@Test
	void saysWhomToAsk() throws Exception {
		this.mvc.perform(get("/forgotten"))
			.andExpect(content().string(containsString("Ask your head coach")))
			.andExpect(content().string(not(containsString("name=\"username\""))));
		this.mvc.perform(post("/forgotten").with(csrf()).param("username", "ann@club.example"))
			.andExpect(redirectedUrl("/forgotten?sent"));
		this.mvc.perform(get("/forgotten?sent")).andExpect(content().string(not(containsString("on its way"))));
	}

}
