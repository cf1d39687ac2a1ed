package org.fallow.account.web;

import java.time.Duration;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import com.icegreen.greenmail.util.GreenMailUtil;
import jakarta.mail.internet.MimeMessage;
import jakarta.servlet.http.Cookie;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.platform.Language;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

class ResetTests extends SignInTestCase {

	private static final String GONE = "This link does not work";

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	@BeforeEach
	void emptyTheMailbox() throws Exception {
		MAIL.purgeEmailFromAllMailboxes();
	}

	@Test
	void mailsALinkThatSetsAPassword() throws Exception {
		Cookie before = signedIn(this.ann);
		ask(this.annName.toUpperCase());
		String token = mailed();
		assertThat(html(get("/reset").cookie(follow(token)), 200)).contains(this.annName).doesNotContain(token);
		this.mvc.perform(set(follow(token), WANTED)).andExpect(redirectedUrl("/sign-in?reset"));
		this.mvc.perform(get("/account").cookie(before)).andExpect(redirectedUrl("/sign-in?expired"));
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/sign-in?failed"));
		this.mvc.perform(signIn(this.annName, WANTED)).andExpect(redirectedUrl("/"));
	}

	@Test
	void mailsInTheLanguageThatWasChosen() throws Exception {
		this.accounts.speak(this.ann, Language.GERMAN);
		ask(this.annName);
		mailed();
		MimeMessage mail = MAIL.getReceivedMessages()[0];
		assertThat(mail.getSubject()).isEqualTo("Dein Link für ein neues Fallow-Passwort");
		assertThat(String.valueOf(mail.getContent())).contains("innerhalb einer Stunde");
	}

	@Test
	void answersAlikeWhoeverAsks() throws Exception {
		ask(UUID.randomUUID() + "@club.example");
		ask("x".repeat(1_000_000));
		ask("nobody");
		ask("");
		ask(this.annName);
		assertThat(html(get("/forgotten?sent"), 200)).contains("If there is such an account");
		mailed();
		assertThat(MAIL.getReceivedMessages()).hasSize(1);
	}

	@Test
	void mailsNobodyTwiceWithinFiveMinutes() throws Exception {
		ask(this.annName);
		String first = mailed();
		ask(this.annName);
		ask(open(this.people.addCoach(this.team.id(), "Dov")));
		assertThat(MAIL.waitForIncomingEmail(20_000, 2)).isTrue();
		assertThat(MAIL.getReceivedMessages()).hasSize(2);
		follow(first);
		this.clock.advance(Duration.ofMinutes(5));
		ask(this.annName);
		assertThat(MAIL.waitForIncomingEmail(20_000, 3)).isTrue();
		assertThat(html(get("/reset/" + first), 404)).contains(GONE);
	}

	@Test
	void worksOnceOnly() throws Exception {
		String token = this.accounts.resetLink(this.ann);
		Cookie one = follow(token);
		Cookie other = follow(token);
		this.mvc.perform(set(one, WANTED)).andExpect(redirectedUrl("/sign-in?reset"));
		assertThat(html(set(other, "another " + WANTED), 404)).contains(GONE).doesNotContain(this.annName);
		assertThat(html(get("/reset/" + token), 404)).contains(GONE).doesNotContain(this.annName);
		this.mvc.perform(signIn(this.annName, WANTED)).andExpect(redirectedUrl("/"));
	}

	@Test
	void worksWithinItsLifeAndNeverAfter() throws Exception {
		String token = this.accounts.resetLink(this.ann);
		this.clock.advance(Accounts.LINK_BY_HAND.minusMillis(1));
		Cookie session = follow(token);
		this.clock.advance(Duration.ofMillis(1));
		assertThat(html(get("/reset/" + token), 404)).contains(GONE);
		assertThat(html(set(session, WANTED), 404)).contains(GONE);
		this.mvc.perform(signIn(this.annName, PASSWORD)).andExpect(redirectedUrl("/"));
	}

	@Test
	void standsNodesWhoseClocksDiffer() throws Exception {
		for (Duration ahead : new Duration[] { Duration.ofMinutes(4), Duration.ofMinutes(-4) }) {
			this.clock.advance(ahead);
			String token = this.accounts.resetLink(this.ann);
			this.clock.advance(ahead.negated());
			follow(token);
			this.clock.advance(Accounts.LINK_BY_HAND.plus(ahead).minusSeconds(1));
			Cookie session = follow(token);
			this.clock.advance(Duration.ofSeconds(1));
			assertThat(html(set(session, WANTED), 404)).contains(GONE);
		}
	}

	@Test
	void refusesGuessedAndTamperedLinks() throws Exception {
		String token = this.accounts.resetLink(this.ann);
		String other = (token.charAt(20) == 'A') ? "B" : "A";
		for (String wrong : new String[] { "x", "A".repeat(43), token.substring(1), token + "A",
				token.substring(0, 20) + other + token.substring(21), "x".repeat(5000) }) {
			assertThat(html(get("/reset/" + wrong), 404)).contains(GONE).doesNotContain(this.annName, "Ann");
		}
		assertThat(html(get("/reset"), 404)).contains(GONE);
		assertThat(html(post("/reset").with(csrf()).param("wanted", WANTED).param("again", WANTED), 404))
			.contains(GONE);
		follow(token);
	}

	@Test
	void keepsTheNewestLinkOnly() throws Exception {
		String older = this.accounts.resetLink(this.ann);
		String newer = this.accounts.resetLink(this.ann);
		assertThat(html(get("/reset/" + older), 404)).contains(GONE);
		follow(newer);
	}

	@Test
	void saysWhatIsWrongAndLetsTheLinkBeUsed() throws Exception {
		Cookie session = follow(this.accounts.resetLink(this.ann));
		assertThat(html(set(session, "short"), 200)).contains("at least 12");
		assertThat(html(set(session, "x".repeat(1_000_000)), 200)).contains("at most 200").doesNotContain("xxxx");
		assertThat(html(set(session, "password1234"), 200)).contains("guessed first");
		assertThat(html(post("/reset").with(csrf()).cookie(session).param("wanted", WANTED).param("again", "x"), 200))
			.contains("not the same");
		this.mvc.perform(set(session, WANTED)).andExpect(redirectedUrl("/sign-in?reset"));
	}

	@Test
	void givesTheTokenToASessionNobodyKnewBefore() throws Exception {
		Cookie planted = session(this.mvc.perform(get("/sign-in")).andReturn());
		String token = this.accounts.resetLink(this.ann);
		Cookie after = session(this.mvc.perform(get("/reset/" + token).cookie(planted)).andReturn());
		assertThat(after.getValue()).isNotEqualTo(planted.getValue());
		html(get("/reset").cookie(after), 200);
	}

	@Test
	void followsALinkInABrowserWhoseSessionHasEnded() throws Exception {
		Cookie ended = signedIn(this.ann);
		this.mvc.perform(post("/account/sessions/end-all").with(csrf()).cookie(ended));
		String path = "/reset/" + this.accounts.resetLink(this.ann);
		this.mvc.perform(get(path).cookie(ended)).andExpect(redirectedUrl(path));
	}

	@Test
	void keepsAHashOfTheTokenOnly() throws Exception {
		String token = this.accounts.resetLink(this.ann);
		TransactionTemplate transaction = new TransactionTemplate(this.transactions);
		String row = Purpose.OPERATION.call(() -> transaction
			.execute((status) -> this.jdbc.sql("select l::text from password_link l where person_id = ?")
				.param(this.ann.value())
				.query(String.class)
				.single()));
		assertThat(row).doesNotContain(token).containsPattern("[0-9a-f]{64}");
	}

	private void ask(String name) throws Exception {
		this.mvc.perform(post("/forgotten").with(csrf()).param("username", name))
			.andExpect(redirectedUrl("/forgotten?sent"));
	}

	private String mailed() throws Exception {
		assertThat(MAIL.waitForIncomingEmail(20_000, 1)).isTrue();
		MimeMessage mail = MAIL.getReceivedMessages()[0];
		assertThat(mail.getAllRecipients()).extracting(Object::toString).containsExactly(this.annName);
		Matcher link = Pattern.compile("http://localhost:8080/reset/([A-Za-z0-9_-]{43})")
			.matcher(GreenMailUtil.getBody(mail));
		assertThat(link.find()).isTrue();
		return link.group(1);
	}

	private Cookie follow(String token) throws Exception {
		return session(this.mvc.perform(get("/reset/" + token)).andExpect(redirectedUrl("/reset")).andReturn());
	}

	private static MockHttpServletRequestBuilder set(Cookie session, String wanted) {
		return post("/reset").with(csrf()).cookie(session).param("wanted", wanted).param("again", wanted);
	}

}
