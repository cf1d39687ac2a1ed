package org.fallow.entry.web;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.fallow.entry.AfterSession;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.RequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
@Import(SettableClock.class)
class SessionPageTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	@Autowired
	private SettableClock clock;

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	@Autowired
	private Sessions sessions;

	private Athlete ann;

	private UserDetails byAnn;

	@BeforeEach
	void addAnAthlete() {
		this.clock.set(TODAY);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.ann = this.people.addAthlete(team.id(), NewAthlete.named("Ann"));
		this.accounts.open(this.ann.id(), this.ann.id() + "@club.example");
		this.byAnn = this.users.loadUserByUsername(this.ann.id() + "@club.example");
	}

	@Test
	void showsAnEmptyForm() throws Exception {
		assertThat(html(get("/session").with(user(this.byAnn)))).contains("name=\"requestId\"", "value=\"2026-03-10\"");
	}

	@Test
	void savesOnceAndLeadsToToday() throws Exception {
		FilledForm form = form().with("note", "=1+1");
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		assertThat(stored()).singleElement().satisfies((log) -> {
			assertThat(log.minutes()).isEqualTo(45);
			assertThat(log.note()).isEqualTo("=1+1");
		});
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "minutes|fifty|not a number", "minutes|-1|between 0 and", "minutes|1500|between 0 and",
					"minutes||How many minutes", "rpe|11|between 0 and 10", "day|2026-03-11|has not come yet",
					"day|2026-02-23|too long ago", "activity||what it was" })
	void keepsWhatWasTypedBesideWhatIsWrong(String field, String value, String sentence) throws Exception {
		String html = html(form().with("note", "=1+1").with(field, (value == null) ? "" : value).sentBy(this.byAnn));
		assertThat(html).contains(sentence, ">=1+1</textarea>", "id=\"" + field + "-problem\"");
		assertThat(stored()).isEmpty();
	}

	@Test
	void holdsARedFlagFromTheFirstSave() throws Exception {
		this.mvc.perform(form().with("after", "CHEST_PAIN").sentBy(this.byAnn)).andExpect(redirectedUrl("/slip"));
		assertThat(stored()).singleElement()
			.satisfies((log) -> assertThat(log.after()).containsExactly(AfterSession.CHEST_PAIN));
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("Refer", "tel:112", "Chest pain");
		assertThat(html(get("/slip").with(user(this.byAnn)))).contains("call the emergency number", "Was it meant?");
	}

	@Test
	void holdsARedFlagInAFormWithAMistake() throws Exception {
		FilledForm form = form().with("after", "FAINTING").with("minutes", "fifty");
		String html = html(form.sentBy(this.byAnn));
		assertThat(html).contains("This is saved and holds already", "tel:112", "not a number", "value=\"fifty\"");
		assertThat(stored()).singleElement().satisfies((log) -> {
			assertThat(log.after()).containsExactly(AfterSession.FAINTING);
			assertThat(log.minutes()).isNull();
		});
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("Refer");
		this.mvc
			.perform(form.with("minutes", "50")
				.with("key", hidden(html, "key"))
				.with("requestId", hidden(html, "requestId"))
				.sentBy(this.byAnn))
			.andExpect(redirectedUrl("/slip"));
		assertThat(stored()).singleElement().satisfies((log) -> assertThat(log.minutes()).isEqualTo(50));
	}

	@Test
	void savesOtherThingsNoticedWithoutAsking() throws Exception {
		this.mvc.perform(form().with("after", "HEADACHE").sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
	}

	/** The after-session list is asked for once more the next morning. */
	@Test
	void takesInTheNextMorningHowTheSessionLeftTheAthlete() throws Exception {
		this.mvc.perform(form().sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		String key = stored().get(0).key();
		this.clock.set(TODAY.plusDays(1));
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("/session/" + key,
				"Say what you noticed after it, or this morning");
		String html = html(get("/session/" + key).with(user(this.byAnn)));
		assertThat(hidden(html, "key")).isEqualTo(key);
		assertThat(html).contains("value=\"45\"", "value=\"2026-03-10\"", "What you change here corrects it");
		this.mvc
			.perform(form().with("key", key)
				.with("requestId", hidden(html, "requestId"))
				.with("after", "HEADACHE")
				.sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(stored()).singleElement().satisfies((log) -> {
			assertThat(log.minutes()).isEqualTo(45);
			assertThat(log.after()).containsExactly(AfterSession.HEADACHE);
		});
	}

	@Test
	void opensNoSessionThatIsNotThere() throws Exception {
		assertThat(html(get("/session/" + UUID.randomUUID()).with(user(this.byAnn))))
			.contains("That session cannot be opened")
			.doesNotContain("name=\"key\"");
	}

	@Test
	void losesNothingThatWasChangedAfterGoingBack() throws Exception {
		FilledForm form = form();
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		FilledForm changed = form.with("after", "FAINTING").with("minutes", "50");
		String html = html(changed.sentBy(this.byAnn));
		assertThat(html).contains("saved already, with other answers", "tel:112");
		this.mvc
			.perform(changed.with("requestId", hidden(html, "requestId"))
				.with("key", hidden(html, "key"))
				.sentBy(this.byAnn))
			.andExpect(redirectedUrl("/slip"));
		assertThat(stored()).singleElement()
			.satisfies((log) -> assertThat(log.after()).containsExactly(AfterSession.FAINTING));
	}

	@Test
	void correctsNobodyElsesSession() throws Exception {
		assertThat(html(form().with("key", UUID.randomUUID().toString()).sentBy(this.byAnn)))
			.contains("What you want to correct is not there");
	}

	private FilledForm form() {
		return new FilledForm("/session", Map.of("day", TODAY.toString(), "activity", "RUN", "minutes", "45", "rpe",
				"3", "intensity", "EASY", "requestId", UUID.randomUUID().toString()));
	}

	private List<SessionLog> stored() {
		return this.sessions.of(this.ann.id(), TODAY.minusDays(60), TODAY.plusDays(1));
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

	private static String hidden(String html, String name) {
		Matcher field = Pattern.compile("name=\"" + name + "\" value=\"([^\"]+)\"").matcher(html);
		assertThat(field.find()).as(name).isTrue();
		return field.group(1);
	}

}
