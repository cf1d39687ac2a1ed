package org.fallow;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.Language;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;

/** Ann, whose resting heart rate is high this morning, and Cay, who looks after her. */
@DatabaseTest
@Import(SettableClock.class)
@SuppressWarnings("NullAway.Init")
class LanguagePagesTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 10);

	private static final int USUAL_MORNINGS = 20;

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

	private PersonId ann;

	private UserDetails byAnn;

	private UserDetails byCay;

	@BeforeEach
	void liveSomeMornings() {
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.clock.set(TODAY.minusDays(USUAL_MORNINGS));
		this.ann = this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		this.byAnn = signedIn(this.ann);
		this.byCay = signedIn(this.people.addCoach(team.id(), "Cay"));
		for (int i = USUAL_MORNINGS; i > 0; i--) {
			this.clock.set(TODAY.minusDays(i));
			save(TODAY.minusDays(i), 50.0);
		}
		this.clock.set(TODAY);
	}

	@Test
	void asksToSignInInGerman() throws Exception {
		String html = html(get("/sign-in"), null, "de-AT,de;q=0.9,en;q=0.8");
		assertThat(html).contains("<html lang=\"de\"", "Anmeldename", "Passwort vergessen?")
			.doesNotContain("Sign in", "password?");
	}

	@ParameterizedTest
	@ValueSource(strings = { "fr", "fr-CH, fr;q=0.9", "*", "zz;q=bad" })
	void speaksEnglishToWhoeverWishesAnotherLanguage(String header) throws Exception {
		assertThat(html(get("/sign-in"), null, header)).contains("<html lang=\"en\"", "Sign-in name");
		assertThat(html(get("/today"), this.byAnn, header)).contains("<html lang=\"en\"", "Tuesday 10 March 2026");
	}

	@Test
	void asksForTheMorningInGerman() throws Exception {
		save(TODAY, 61.5);
		String html = html(get("/morning"), this.byAnn, "de");
		assertThat(html).contains("<html lang=\"de\"", "Morgeneintrag", "Fieber in den letzten 24 Stunden: 38,0 °C",
				"Schmerzen, Druck oder Enge in der Brust", "value=\"61,5\"");
	}

	@Test
	void takesADecimalCommaAndSaysTheDayInGerman() throws Exception {
		MockHttpServletRequestBuilder morning = post("/morning").with(csrf())
			.with(user(this.byAnn))
			.param("day", TODAY.toString())
			.param("method", "STRAP")
			.param("posture", "LYING")
			.param("rhr", "61,5")
			.param("temperature", "36,8")
			.param("feels", "WELL")
			.param("feverMedicine", "NONE")
			.param("revision", "0")
			.param("requestId", UUID.randomUUID().toString());
		this.mvc.perform(morning).andExpect(redirectedUrl("/again"));
		String html = html(get("/today"), this.byAnn, "de");
		assertThat(html).contains("<html lang=\"de\"", "Dienstag, 10. März 2026", "Ruhe",
				"Ruhepuls 11,5 Schläge/min über dem Ausgangswert", "kein ärztlicher Rat und keine Diagnose",
				"Symptome gehen vor Zahlen");
		assertThat(html).doesNotContain("March", "11.5", "Full training", "heart rate");
		assertThat(html(get("/today"), this.byAnn, "en")).contains("Resting heart rate 11.5 bpm above baseline");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "2026-03-11 | 36,8 | Der 11. März 2026 ist noch nicht da; heute ist der 10. März 2026.",
					"2026-03-10 | 36,8,1 | Bitte schreib sie in Ziffern, zum Beispiel 52 oder 52,5.",
					"2026-03-10 | 46,5 | Die Körpertemperatur liegt zwischen 30 und 45 Grad Celsius." })
	void saysWhatIsWrongInGerman(String day, String temperature, String sentence) throws Exception {
		String html = html(post("/morning").with(csrf())
			.param("day", day)
			.param("temperature", temperature)
			.param("feels", "WELL"), this.byAnn, "de");
		assertThat(html).contains("Noch nicht gespeichert.", sentence, "value=\"" + temperature + "\"");
	}

	@Test
	void sendsToTheEmergencyServicesInGerman() throws Exception {
		save(TODAY, NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, 50.0, null)
			.with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.SEVERE)));
		assertThat(html(get("/today"), this.byAnn, "de")).contains("Ärztlich klären", "Wähle den Notruf",
				"href=\"tel:112\"", "kein Training irgendeiner Art", "Hier heraus führt nur eine ärztliche Freigabe");
	}

	@Test
	void showsTheBoardInGerman() throws Exception {
		save(TODAY, 61.5);
		String html = html(get("/board"), this.byCay, "de");
		assertThat(html).contains("<html lang=\"de\"", "Mannschaftstafel", "Dienstag, 10. März 2026", ">61,5<",
				">+11,5<", "heute Morgen", "Ruhepuls 11,5 Schläge/min über dem Ausgangswert");
		assertThat(html(get("/athletes/" + this.ann.value()), this.byCay, "de")).contains("Di, 10. Mär", "61,5",
				"bis zur Linie");
		assertThat(html(get("/rules"), this.byCay, "de")).contains("Fassung 1");
	}

	@Test
	void heedsAChoiceBeforeTheBrowser() throws Exception {
		choose("de");
		assertThat(html(get("/account"), this.byAnn, "en")).contains("<html lang=\"de\"", "Dein Konto",
				"value=\"de\" lang=\"de\" selected=\"selected\"");
		assertThat(html(get("/today"), this.byAnn, "en")).contains("Dienstag, 10. März 2026");
		choose("en");
		assertThat(html(get("/account"), this.byAnn, "de")).contains("<html lang=\"en\"", "Your account");
		choose("browser");
		assertThat(html(get("/account"), this.byAnn, "de")).contains("<html lang=\"de\"");
		assertThat(html(get("/account"), this.byAnn, "en")).contains("<html lang=\"en\"");
		assertThat(this.accounts.language(this.ann)).isEmpty();
	}

	@Test
	void leavesEverybodyElseTheirOwn() throws Exception {
		choose("de");
		assertThat(html(get("/board"), this.byCay, "en")).contains("<html lang=\"en\"");
		assertThat(html(get("/sign-in"), null, "en")).contains("<html lang=\"en\"");
	}

	@ParameterizedTest
	@ValueSource(strings = { "fr", "DE", "de-DE", "", "GERMAN", "de'; drop table account; --", "<b>de</b>" })
	void storesNoLanguageItDoesNotSpeak(String forged) throws Exception {
		choose("de");
		String html = html(post("/account/language").with(csrf()).param("language", forged), this.byAnn, "en");
		assertThat(html).contains("<html lang=\"de\"", "Hier steht eine Antwort, die Fallow nicht kennt.",
				"aria-invalid=\"true\"");
		assertThat(html).doesNotContain("<b>de</b>", "drop table");
		assertThat(this.accounts.language(this.ann)).contains(Language.GERMAN);
	}

	@Test
	void storesNothingOfAFormWithoutAnAnswer() throws Exception {
		choose("de");
		html(post("/account/language").with(csrf()), this.byAnn, "en");
		assertThat(this.accounts.language(this.ann)).contains(Language.GERMAN);
	}

	private void choose(String language) throws Exception {
		this.mvc.perform(post("/account/language").with(csrf()).with(user(this.byAnn)).param("language", language))
			.andExpect(redirectedUrl("/account"));
	}

	private String html(MockHttpServletRequestBuilder request, @Nullable UserDetails person, String languages)
			throws Exception {
		MockHttpServletRequestBuilder asked = request.header("Accept-Language", languages);
		MockHttpServletResponse answer = this.mvc.perform((person == null) ? asked : asked.with(user(person)))
			.andReturn()
			.getResponse();
		String html = answer.getContentAsString(StandardCharsets.UTF_8);
		assertThat(answer.getStatus()).as(html).isEqualTo(200);
		assertThat(html).doesNotContain("??");
		return html;
	}

	private UserDetails signedIn(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return this.users.loadUserByUsername(person + "@club.example");
	}

	private void save(LocalDate day, double rhr) {
		save(day, NewMorning.measured(day, Method.STRAP, Posture.LYING, rhr, null));
	}

	private void save(LocalDate day, NewMorning morning) {
		assertThat(this.mornings.save(this.ann, morning, Submission.page(this.ann, Role.ATHLETE, Ids.next())))
			.as("" + day)
			.isInstanceOf(Saved.Stored.class);
	}

}
