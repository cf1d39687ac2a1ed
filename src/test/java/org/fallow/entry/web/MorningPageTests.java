package org.fallow.entry.web;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import jakarta.servlet.http.Cookie;
import org.fallow.entry.Feels;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.StoredMorning;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.fallow.wording.Message;
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
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.flash;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
@Import(SettableClock.class)
class MorningPageTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final String SHORT_RR = "1000 1010 1000 1010";

	private static final String KEPT = "This is saved and holds already";

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
	private Mornings mornings;

	private Athlete ann;

	private Athlete ben;

	private UserDetails byAnn;

	@BeforeEach
	void addTwoAthletes() {
		this.clock.set(TODAY);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.ann = this.people.addAthlete(team.id(), NewAthlete.named("Ann"));
		this.ben = this.people.addAthlete(team.id(), NewAthlete.named("Ben"));
		this.accounts.open(this.ann.id(), this.ann.id() + "@club.example");
		this.byAnn = this.users.loadUserByUsername(this.ann.id() + "@club.example");
	}

	@Test
	void savesAndLeadsToToday() throws Exception {
		this.mvc.perform(form().with("rhr", "52.5").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"))
			.andExpect(flash().attribute("notice", Message.of("morning.stored")));
		assertThat(stored()).singleElement().satisfies((morning) -> {
			assertThat(morning.entry().rhrBpm()).isEqualTo(52.5);
			assertThat(morning.actor()).isEqualTo(this.ann.id());
		});
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("Full training");
	}

	@Test
	void savesAllWellWithOneTap() throws Exception {
		this.mvc.perform(form().with("feels", "").with("allWell", "true").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(stored()).singleElement()
			.satisfies((morning) -> assertThat(morning.entry().feels()).isEqualTo(Feels.WELL));
	}

	@Test
	void savesNothingWhenAllWellIsContradicted() throws Exception {
		String html = html(form().with("allWell", "true").with("symptom.SORE_THROAT", "MILD").sentBy(this.byAnn));
		assertThat(html).contains("You pressed All well, but");
		assertThat(stored()).isEmpty();
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "rhr|0|between 20 and 220", "rhr|19|between 20 and 220", "rhr|221|between 20 and 220",
					"rhr|fifty|not a number", "rhr|52,5,5|not a number", "rmssd|-1|above 0 and at most 300",
					"rmssd|0|above 0 and at most 300", "rmssd|301|above 0 and at most 300",
					"temperature|12|between 30 and 45",
					"day|2026-03-11|11 March 2026 has not come yet; today is 10 March 2026.",
					"day|2026-03-02|too long ago", "day|soon|not a day" })
	void keepsWhatWasTypedBesideWhatIsWrong(String field, String value, String sentence) throws Exception {
		String html = html(form().with("note", "slept badly").with(field, value).sentBy(this.byAnn));
		assertThat(html).contains(sentence, "slept badly", "id=\"" + field + "-problem\"", "value=\"" + value + "\"");
		assertThat(stored()).isEmpty();
	}

	@Test
	void wantsMethodWithAMeasurement() throws Exception {
		assertThat(html(form().with("rhr", "52").with("method", "").sentBy(this.byAnn)))
			.contains("id=\"method-problem\"");
	}

	@Test
	void writesTheOwnMorningWhateverIdTheFormNames() throws Exception {
		this.mvc
			.perform(form().with("athleteId", this.ben.id().toString())
				.with("athlete", this.ben.id().toString())
				.with("id", this.ben.id().toString())
				.sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(stored()).hasSize(1);
		assertThat(this.mornings.latest(this.ben.id(), TODAY)).isEmpty();
	}

	@Test
	void storesOnceWhenSentAgain() throws Exception {
		FilledForm form = form().with("rhr", "52");
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		assertThat(stored()).hasSize(1);
	}

	/** A red flag ticked after going back must not vanish as "sent already": it holds. */
	@Test
	void losesNothingThatWasChangedAfterGoingBack() throws Exception {
		FilledForm form = form().with("rhr", "52");
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		FilledForm changed = form.with("symptom.CHEST_PAIN", "SEVERE").with("rhr", "57");
		String html = html(changed.sentBy(this.byAnn));
		assertThat(html).contains("There is an entry of this day already", KEPT, "tel:112");
		assertThat(stored()).hasSize(2);
		assertThat(stored().get(1).entry().hasRedFlag()).isTrue();
		assertThat(stored().get(1).entry().rhrBpm()).isEqualTo(52);
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("Refer");
		this.mvc
			.perform(changed.with("requestId", hidden(html, "requestId"))
				.with("revision", hidden(html, "revision"))
				.sentBy(this.byAnn))
			.andExpect(redirectedUrl("/slip"));
		assertThat(stored()).hasSize(3);
		assertThat(stored().get(2).entry().rhrBpm()).isEqualTo(57);
	}

	@Test
	void overwritesAnotherTabOnlyDeliberately() throws Exception {
		FilledForm one = form().with("rhr", "52");
		FilledForm two = form().with("rhr", "57");
		this.mvc.perform(one.sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		String html = html(two.sentBy(this.byAnn));
		assertThat(html).contains("There is an entry of this day already", "value=\"57\"");
		assertThat(stored()).hasSize(1);
		this.mvc
			.perform(two.with("requestId", hidden(html, "requestId"))
				.with("revision", hidden(html, "revision"))
				.sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(stored()).extracting((morning) -> morning.entry().rhrBpm()).containsExactly(52.0, 57.0);
	}

	@Test
	void takesAFormOverToADayWithoutEntry() throws Exception {
		this.mvc.perform(form().sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		this.mvc.perform(form().with("revision", "1").with("day", "2026-03-09").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(this.mornings.latest(this.ann.id(), TODAY.minusDays(1))).isPresent();
	}

	/** Whoever puts the phone away after the first tap has everything stored. */
	@Test
	void holdsARedFlagFromTheFirstSave() throws Exception {
		this.mvc.perform(form().with("symptom.CHEST_PAIN", "SEVERE").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/slip"));
		assertThat(stored()).singleElement().satisfies((morning) -> assertThat(morning.entry().hasRedFlag()).isTrue());
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("Refer", "href=\"tel:112\"",
				"or the number where you are");
		assertThat(html(get("/slip").with(user(this.byAnn)))).contains("call the emergency number", "tel:112",
				"Was it meant?", "Chest pain, pressure or tightness");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "rhr|5o", "rhr|400", "day|2026-03-11", "day|2026-02-01", "day|", "temperature|99" })
	void holdsARedFlagInAFormWithAMistake(String field, String typed) throws Exception {
		FilledForm form = form().with("symptom.FAINTING", "SEVERE").with(field, (typed == null) ? "" : typed);
		String html = html(form.sentBy(this.byAnn));
		assertThat(html).contains(KEPT, "tel:112", "call the emergency number", "id=\"" + field + "-problem\"");
		assertThat(html(form.sentBy(this.byAnn))).contains(KEPT);
		assertThat(stored()).singleElement().satisfies((morning) -> {
			assertThat(morning.entry().hasRedFlag()).isTrue();
			assertThat(morning.entry().rhrBpm()).isNull();
		});
		assertThat(html(get("/today").with(user(this.byAnn)))).contains("Refer");
	}

	@Test
	void asksOnceForABetterMeasurementThenKeepsItAsUnsure() throws Exception {
		FilledForm form = form().with("rr", SHORT_RR);
		String html = html(form.sentBy(this.byAnn));
		assertThat(html).contains("Please measure once more", SHORT_RR, "name=\"repeated\"");
		assertThat(stored()).isEmpty();
		this.mvc.perform(form.with("repeated", "true").sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		assertThat(stored()).singleElement().satisfies((morning) -> {
			assertThat(morning.entry().unsure()).isTrue();
			assertThat(morning.rrMs()).containsExactly(1000, 1010, 1000, 1010);
		});
	}

	@Test
	void holdsNoRedFlagUpForABetterMeasurement() throws Exception {
		FilledForm form = form().with("rr", SHORT_RR).with("symptom.FAINTING", "SEVERE");
		this.mvc.perform(form.sentBy(this.byAnn)).andExpect(redirectedUrl("/slip"));
	}

	@Test
	void keepsDoubtThroughACorrection() throws Exception {
		this.mornings.takeIn(this.ann.id(),
				List.of(NewMorning.measured(TODAY, Method.WORN, Posture.LYING, 71.0, null).markedUnsure()),
				this.ann.id());
		this.mvc
			.perform(form().with("rhr", "71").with("revision", "1").with("note", "strap slipped").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(stored()).hasSize(2);
		assertThat(stored().get(1).entry().unsure()).isTrue();
	}

	@Test
	void showsWordsAsPlainText() throws Exception {
		String note = "=1+1 <script>alert(1)</script>";
		this.mvc.perform(form().with("note", note).sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		assertThat(html(get("/morning").with(user(this.byAnn))))
			.contains(">=1+1 &lt;script&gt;alert(1)&lt;/script&gt;</textarea>")
			.doesNotContain("<script>alert");
	}

	/** Emoji, and letters written from right to left, come back as they were. */
	@Test
	void keepsEmojiAndOtherScripts() throws Exception {
		String note = "\uD83E\uDD12 \u0645\u0631\u0647\u0642 \uD83D\uDC68\u200D\uD83D\uDC69\u200D\uD83D\uDC67";
		this.mvc.perform(form().with("note", note).sentBy(this.byAnn)).andExpect(redirectedUrl("/today"));
		assertThat(stored()).singleElement().satisfies((morning) -> assertThat(morning.entry().note()).isEqualTo(note));
		assertThat(html(get("/morning").with(user(this.byAnn)))).contains(">" + note + "</textarea>");
	}

	@Test
	void losesNothingOfANoteThatIsTooLong() throws Exception {
		String note = "x".repeat(5_000);
		assertThat(html(form().with("note", note).sentBy(this.byAnn))).contains(">" + note + "</textarea>",
				"id=\"note-problem\"", "2,000");
		assertThat(stored()).isEmpty();
	}

	@Test
	void remembersHowWasMeasuredLast() throws Exception {
		this.mvc
			.perform(form().with("day", "2026-03-09").with("rhr", "52").with("posture", "SITTING").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(html(get("/morning").with(user(this.byAnn)))).contains("value=\"STRAP\" selected",
				"value=\"SITTING\" selected", "name=\"revision\" value=\"0\"");
	}

	@Test
	void showsTheEntryOfTheDayForCorrection() throws Exception {
		this.mvc.perform(form().with("day", "2026-03-08").with("rhr", "52.5").sentBy(this.byAnn))
			.andExpect(redirectedUrl("/today"));
		assertThat(html(get("/morning?day=2026-03-08").with(user(this.byAnn)))).contains("value=\"52.5\"",
				"name=\"revision\" value=\"1\"", "There is an entry for this day already");
		assertThat(html(get("/morning?day=2026-02-01").with(user(this.byAnn)))).contains("value=\"2026-03-10\"");
	}

	@Test
	void savesNothingWithAnExpiredSession() throws Exception {
		Cookie gone = new Cookie("SESSION",
				Base64.getEncoder().encodeToString(UUID.randomUUID().toString().getBytes(StandardCharsets.UTF_8)));
		this.mvc.perform(form().sent().cookie(gone)).andExpect(redirectedUrl("/sign-in?expired"));
		assertThat(stored()).isEmpty();
	}

	private FilledForm form() {
		return new FilledForm("/morning", Map.of("day", TODAY.toString(), "feels", "WELL", "method", "STRAP", "posture",
				"LYING", "feverMedicine", "NONE", "requestId", UUID.randomUUID().toString(), "revision", "0"));
	}

	private List<StoredMorning> stored() {
		return this.mornings.of(this.ann.id(), TODAY.minusDays(60), TODAY.plusDays(1));
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
