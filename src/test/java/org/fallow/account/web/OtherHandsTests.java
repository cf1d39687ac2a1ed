package org.fallow.account.web;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;

import jakarta.mail.internet.MimeMessage;
import jakarta.servlet.http.Cookie;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.platform.Language;
import org.fallow.team.Group;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/** No unseen hands: what others do about an account is seen by the person it is of. */
class OtherHandsTests extends SignInTestCase {

	private static final String MADE = "made a link by which a new password for your account can be set";

	private static final String USED = "A new password was set by the link that Cay had made";

	private static final String MARK = "entered after a link made by Cay";

	private static final String DOUBTED = "Perhaps entered by somebody else";

	private static final String TOLD = "/account/told";

	@Autowired
	private Posts posts;

	@BeforeEach
	void emptyTheMailbox() throws Exception {
		MAIL.purgeEmailFromAllMailboxes();
	}

	@Test
	void tellsTheAthleteThatALinkWasMadeAndUsed() throws Exception {
		String token = make(this.ann);
		assertThat(mails(1).get(0)).contains("Cay made a link");
		use(token, WANTED);
		assertThat(mails(2).get(1)).contains("by the link that Cay had made");
		Cookie session = enter(WANTED);
		this.mvc.perform(get("/today?x=y").cookie(session)).andExpect(redirectedUrl(TOLD));
		String told = html(get(TOLD).cookie(session), 200);
		assertThat(told).contains("Somebody else opened a way into your account", MADE, USED, "href=\"/today?x=y\"",
				this.address);
		html(get("/today").cookie(session), 200);
		assertThat(html(get("/sharing").cookie(session), 200)).contains(MADE, USED);
	}

	@Test
	void mailsInTheLanguageThatWasChosen() throws Exception {
		this.accounts.speak(this.ann, Language.GERMAN);
		make(this.ann);
		assertThat(mails(1).get(0)).contains("Cay hat einen Link gemacht");
	}

	@Test
	void marksWhatIsEnteredUntilThePasswordIsTheAthletesOwn() throws Exception {
		use(make(this.ann), WANTED);
		Cookie coach = told(enter(WANTED));
		enterMorning(coach);
		assertThat(lines(coach)).contains("In your account entered a morning " + MARK);
		assertThat(lines(coach)).noneMatch((line) -> line.startsWith("You "));
		change(coach, WANTED, PASSWORD);
		enterSession(coach);
		Cookie own = told(enter(PASSWORD));
		enterSession(own);
		assertThat(lines(own).subList(0, 4)).containsExactly("You entered a session",
				"In your account entered a session " + MARK, "In your account changed the password " + MARK,
				"In your account entered a morning " + MARK);
	}

	/** Whoever used the link may read the telling first, and may change the password. */
	@Test
	void tellsAtEachSignInForThirtyDays() throws Exception {
		use(make(this.ann), WANTED);
		change(told(enter(WANTED)), WANTED, PASSWORD);
		told(enter(PASSWORD));
		this.clock.advance(Duration.ofDays(29));
		told(enter(PASSWORD));
		this.clock.advance(Duration.ofDays(2));
		Cookie later = enter(PASSWORD);
		html(get("/today").cookie(later), 200);
		assertThat(html(get(TOLD).cookie(later), 200)).contains("Nobody else has opened a way");
		assertThat(lines(later)).anyMatch((line) -> line.contains(USED));
	}

	@Test
	void tellsHoweverLongItIsAgoIfNobodySignedInSince() throws Exception {
		enter(PASSWORD);
		make(this.ann);
		this.clock.advance(Duration.ofDays(300));
		assertThat(html(get(TOLD).cookie(enter(PASSWORD)), 200)).contains(MADE);
		this.clock.advance(Duration.ofDays(31));
		html(get("/today").cookie(enter(PASSWORD)), 200);
	}

	@Test
	void marksNothingAfterALinkThatWasMailedToTheAthlete() throws Exception {
		use(make(this.ann), WANTED);
		this.clock.advance(Duration.ofMinutes(6));
		mails(2);
		MAIL.purgeEmailFromAllMailboxes();
		this.mvc.perform(post("/forgotten").with(csrf()).param("username", this.annName));
		use(mails(1).get(0).replaceAll("(?s).*/reset/([A-Za-z0-9_-]{43}).*", "$1"), PASSWORD);
		Cookie own = told(enter(PASSWORD));
		enterMorning(own);
		assertThat(lines(own)).contains("You entered a morning",
				"In your account A new password was set by a link that was mailed to you");
	}

	@Test
	void tellsNobodyOfWhatTheyDidThemselves() throws Exception {
		Cookie session = enter(PASSWORD);
		change(session, PASSWORD, WANTED);
		assertThat(mails(1).get(0)).contains("A new password was set for your Fallow account");
		html(get("/today").cookie(enter(WANTED)), 200);
		assertThat(lines(session)).contains("You changed the password");
	}

	@Test
	void tellsACoachAsWell() throws Exception {
		PersonId peer = this.people.addCoach(this.team.id(), "Pat");
		open(peer);
		String token = make(peer);
		use(token, WANTED);
		Cookie session = session(
				this.mvc.perform(signIn(peer + "@club.example", WANTED)).andExpect(redirectedUrl("/")).andReturn());
		assertThat(html(get(TOLD).cookie(session), 200)).contains(MADE, USED);
		this.mvc.perform(get("/athletes/" + this.ann).cookie(session)).andExpect(status().isOk());
		html(get("/board").cookie(session), 200);
		assertThat(lines(enter(PASSWORD))).contains("Pat Head coach opened your page " + MARK,
				"Pat Head coach saw you on the squad board or the session roll " + MARK);
	}

	/** A coach decides by what stands on these pages, and cannot read the trace. */
	@Test
	void tellsTheCoachWhereverTheyReadWhatWasEntered() throws Exception {
		enterMorning(enter(PASSWORD));
		assertThat(pagesOfTheCoach()).allSatisfy((page) -> assertThat(page).doesNotContain(DOUBTED, MARK));
		this.clock.advance(Duration.ofDays(1));
		use(make(this.ann), WANTED);
		Cookie coach = told(enter(WANTED));
		enterMorning(coach);
		enterSession(coach);
		enterSession(coach);
		report(coach);
		assertThat(pagesOfTheCoach()).allSatisfy((page) -> assertThat(page)
			.contains(DOUBTED, "In the account of Ann: a morning, the latest on ",
					"In the account of Ann: 2 sessions, the latest on ",
					"In the account of Ann: a report or decision about an illness, the latest on ")
			.containsOnlyOnce("In the account of Ann: a morning"));
		String page = pagesOfTheCoach().get(0);
		assertThat(page.split(MARK, -1)).as("a morning, two sessions and a report").hasSize(5);
		change(coach, WANTED, PASSWORD);
		Cookie own = told(enter(PASSWORD));
		enterSession(own);
		assertThat(pagesOfTheCoach()).allSatisfy((still) -> assertThat(still).contains("2 sessions, the latest on"));
		this.clock.advance(Duration.ofDays(28));
		assertThat(pagesOfTheCoach()).allSatisfy((later) -> assertThat(later).doesNotContain(DOUBTED));
	}

	private List<String> pagesOfTheCoach() throws Exception {
		Cookie coach = signedIn(this.cay);
		List<String> pages = new ArrayList<>();
		for (String page : List.of("", "/return-path", "/clearance")) {
			pages.add(html(get("/athletes/" + this.ann + page).cookie(coach), 200));
		}
		return pages;
	}

	private void report(Cookie session) throws Exception {
		String form = html(get("/report").cookie(session), 200);
		this.mvc
			.perform(post("/report").with(csrf())
				.cookie(session)
				.param("onset", value(form, "onset"))
				.param("requestId", value(form, "requestId"))
				.param("kind", "ABOVE_NECK")
				.param("worst", "3"))
			.andExpect(status().is3xxRedirection());
	}

	@Test
	void keepsPartsOfPagesAndWhatIsSentGoing() throws Exception {
		make(this.ann);
		Cookie session = enter(PASSWORD);
		html(get("/today").cookie(session).header("HX-Request", "true"), 200);
		enterMorning(session);
		this.mvc.perform(get("/").cookie(session)).andExpect(redirectedUrl(TOLD));
	}

	@Test
	void tracesPostsGivenAndEnded() throws Exception {
		Group near = this.people.findOrAddGroup(this.team.id(), "Near");
		Group far = this.people.findOrAddGroup(this.team.id(), "Far");
		PersonId ben = this.people.addAthlete(this.team.id(), new NewAthlete("Ben", null, null, null, near.name()))
			.id();
		PersonId dov = this.people.addCoach(this.team.id(), "Dov");
		PersonId owner = this.people.addPerson("Olu", ZoneOffset.UTC);
		this.people.owns(this.team.clubId(), owner);
		open(ben);
		UUID all = give(dov, new NewPost(Post.DEPUTY, this.team.clubId(), this.team.id(), true, List.of(),
				this.clock.instant().plus(Duration.ofDays(3))));
		UUID some = give(dov,
				new NewPost(Post.GROUP_COACH, this.team.clubId(), this.team.id(), false, List.of(near.id()), null));
		give(dov, new NewPost(Post.GROUP_COACH, this.team.clubId(), this.team.id(), false, List.of(far.id()), null));
		CurrentPerson.runAs(this.cay, () -> this.posts.end(all, this.cay));
		CurrentPerson.runAs(owner, () -> this.posts.end(some, owner));
		assertThat(lines(enter(PASSWORD))).containsExactly("Cay Head coach No longer looks after you: Dov, Deputy",
				"Cay Head coach From now on Dov looks after you: Deputy");
		assertThat(lines(signedIn(ben))).containsExactly(
				"Olu Owner of the club No longer looks after you: Dov, Coach of groups",
				"Cay Head coach No longer looks after you: Dov, Deputy",
				"Cay Head coach From now on Dov looks after you: Coach of groups",
				"Cay Head coach From now on Dov looks after you: Deputy");
	}

	@Test
	void tracesAddressesOfTheCalendar() throws Exception {
		Cookie session = enter(PASSWORD);
		html(post("/calendar/new").with(csrf()).cookie(session), 200);
		this.mvc.perform(post("/calendar/revoke").with(csrf()).cookie(session)).andExpect(redirectedUrl("/calendar"));
		this.mvc.perform(post("/calendar/revoke").with(csrf()).cookie(session)).andExpect(redirectedUrl("/calendar"));
		assertThat(lines(session)).containsExactly("You ended the address of your calendar",
				"You made an address for your calendar");
	}

	private UUID give(PersonId person, NewPost post) {
		return CurrentPerson.callAs(this.cay, () -> this.posts.give(person, post));
	}

	private String make(PersonId person) throws Exception {
		String html = html(post("/people/" + person + "/reset-link").with(csrf()).cookie(signedIn(this.cay)), 200);
		return html.replaceAll("(?s).*/reset/([A-Za-z0-9_-]{43}).*", "$1");
	}

	private void use(String token, String password) throws Exception {
		Cookie follow = session(this.mvc.perform(from(get("/reset/" + token))).andReturn());
		this.mvc
			.perform(
					from(post("/reset").with(csrf()).cookie(follow).param("wanted", password).param("again", password)))
			.andExpect(redirectedUrl("/sign-in?reset"));
	}

	private MockHttpServletRequestBuilder from(MockHttpServletRequestBuilder request) {
		return request.with((sent) -> {
			sent.setRemoteAddr(this.address);
			return sent;
		});
	}

	/** Somebody who knows Ann's password. */
	private Cookie enter(String password) throws Exception {
		return session(this.mvc.perform(signIn(this.annName, password)).andExpect(redirectedUrl("/")).andReturn());
	}

	private Cookie told(Cookie session) throws Exception {
		this.mvc.perform(get("/today").cookie(session)).andExpect(redirectedUrl(TOLD));
		html(get(TOLD).cookie(session), 200);
		return session;
	}

	private void change(Cookie session, String present, String wanted) throws Exception {
		this.mvc
			.perform(post("/password").with(csrf())
				.cookie(session)
				.param("present", present)
				.param("wanted", wanted)
				.param("again", wanted))
			.andExpect(redirectedUrl("/password"));
	}

	private void enterMorning(Cookie session) throws Exception {
		String form = html(get("/morning").cookie(session).header("HX-Request", "true"), 200);
		this.mvc
			.perform(post("/morning").with(csrf())
				.cookie(session)
				.param("day", value(form, "day"))
				.param("requestId", value(form, "requestId"))
				.param("feels", "WELL"))
			.andExpect(status().is3xxRedirection());
	}

	private void enterSession(Cookie session) throws Exception {
		String form = html(get("/session").cookie(session), 200);
		this.mvc
			.perform(post("/session").with(csrf())
				.cookie(session)
				.param("day", value(form, "day"))
				.param("requestId", value(form, "requestId"))
				.param("activity", "RUN")
				.param("minutes", "30"))
			.andExpect(status().is3xxRedirection());
	}

	private static String value(String html, String name) {
		String tag = Pattern.compile("<input[^>]*name=\"" + name + "\"[^>]*>")
			.matcher(html)
			.results()
			.findFirst()
			.orElseThrow()
			.group();
		return tag.replaceAll("(?s).*value=\"([^\"]*)\".*", "$1");
	}

	/** Who and what of the trace's lines, newest first. */
	private List<String> lines(Cookie session) throws Exception {
		String page = html(get("/sharing").cookie(session).header("HX-Request", "true"), 200);
		List<String> lines = new ArrayList<>();
		Pattern.compile("(?s)<th scope=\"row\" role=\"rowheader\"[^>]*>(.*?)</th>(.*?)</td>")
			.matcher(page)
			.results()
			.forEach((row) -> lines.add((row.group(1) + " " + row.group(2)).replaceAll("<[^>]*>", " ")
				.replace("&#39;", "'")
				.replaceAll("\\s+", " ")
				.strip()));
		return lines;
	}

	private List<String> mails(int many) throws Exception {
		assertThat(MAIL.waitForIncomingEmail(20_000, many)).isTrue();
		List<String> texts = new ArrayList<>();
		for (MimeMessage mail : Arrays.asList(MAIL.getReceivedMessages())) {
			texts.add(String.valueOf(mail.getContent()));
		}
		return texts;
	}

}
