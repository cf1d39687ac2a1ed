package org.fallow.contact.web;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.contact.Marks;
import org.fallow.contact.Threads;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

/** An athlete whose name is written from right to left, ill this morning. */
@DatabaseTest
@Import(SettableClock.class)
class ContactPagesTests {

	private static final LocalDate TENTH = LocalDate.of(2026, 3, 10);

	private static final String NAME = "דנה לוי";

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

	@Autowired
	private Marks marks;

	@Autowired
	private Threads threads;

	private Team team;

	private PersonId athlete;

	private PersonId coach;

	private UserDetails byAthlete;

	private UserDetails byCoach;

	@BeforeEach
	void fallIll() {
		this.clock.set(TENTH);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.athlete = this.people
			.addAthlete(this.team.id(),
					new NewAthlete(NAME, null, ZoneId.of("Asia/Jerusalem"), LocalDate.of(1990, 1, 2), null))
			.id();
		this.coach = this.people.addCoach(this.team.id(), "Cay");
		this.byAthlete = signedIn(this.athlete);
		this.byCoach = signedIn(this.coach);
		enter(this.athlete, Symptom.FEVERISH);
	}

	@Test
	void putsWhoNeedsAWordAboveTheTable() throws Exception {
		String board = html(get("/board"), this.byCoach);
		assertThat(board).contains("Needs a word", "Newly ill", NAME, "since Tue 10 Mar", "A mark changes no clearance",
				"not medical advice");
		assertThat(board.indexOf("Newly ill")).isLessThan(board.indexOf("table class=\"board"));
		assertThat(html(get("/board").param("day", "2026-03-09"), this.byCoach)).as("nothing lies before today")
			.contains("Needs a word");
		this.clock.set(TENTH.plusDays(1));
		assertThat(html(get("/board").param("day", "2026-03-10"), this.byCoach)).doesNotContain("Needs a word");
	}

	@Test
	void saysSomethingKindWhereNobodyNeedsAWord() throws Exception {
		Team quiet = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "T", ZoneOffset.UTC);
		UserDetails other = signedIn(this.people.addCoach(quiet.id(), "Gil"));
		assertThat(html(get("/board"), other)).contains("Nobody needs a word today.");
	}

	@Test
	void foldsAllButFiveAway() throws Exception {
		for (int i = 0; i < 6; i++) {
			enter(this.people.addAthlete(this.team.id(), NewAthlete.named("Runner " + i)).id(), Symptom.FEVERISH);
		}
		String board = html(get("/board"), this.byCoach);
		assertThat(board).contains("2 more");
		assertThat(board.split("class=\"need\"", -1)).hasSize(8);
		assertThat(board.substring(0, board.indexOf("2 more")).split("class=\"need\"", -1)).hasSize(6);
	}

	@Test
	void marksAndSharesANote() throws Exception {
		assertThat(send(mark("NEW_ILLNESS", "2026-03-10", "Rest 🛌, <b>please</b>.").param("share", "true"))
			.getRedirectedUrl()).isEqualTo("/board");
		String board = html(get("/board"), this.byCoach);
		assertThat(board).contains("Off the list by a mark in the last 14 days: 1",
				"Rest 🛌, &lt;b&gt;please&lt;/b&gt;.");
		assertThat(html(get("/today"), this.byAthlete)).contains("From your coaches", "Cay",
				"Rest 🛌, &lt;b&gt;please&lt;/b&gt;.");
		assertThat(html(get("/athletes/" + this.athlete + "/words"), this.byCoach)).contains("shared with the athlete",
				"Contacted, 10 Mar, 07:00, Cay");
		assertThat(html(get("/sharing"), this.byAthlete)).contains("noted a talk with you",
				"opened the notes on talks with you");
	}

	@Test
	void sharesNothingUnlessTicked() throws Exception {
		send(mark("NEW_ILLNESS", "2026-03-10", "Between coaches."));
		assertThat(html(get("/today"), this.byAthlete)).doesNotContain("Between coaches.", "From your coaches");
		assertThat(html(get("/board"), this.byCoach)).contains("Between coaches.");
	}

	@Test
	void keepsTextThatIsTooLongInTheForm() throws Exception {
		String note = "x".repeat(5000);
		MockHttpServletResponse answer = send(mark("NEW_ILLNESS", "2026-03-10", note).param("share", "true"));
		assertThat(answer.getStatus()).isEqualTo(200);
		assertThat(answer.getContentAsString())
			.contains("Not saved yet", "At most 1,000 characters, please; these are 5,000.", note + "</textarea>")
			.containsPattern("name=\"share\" value=\"true\" checked");
		assertThat(all()).isEmpty();
	}

	@Test
	void asksForANote() throws Exception {
		assertThat(send(mark("NEW_ILLNESS", "2026-03-10", " \r\n ")).getContentAsString()).contains("Not saved yet",
				"Please fill this in.");
		assertThat(all()).isEmpty();
	}

	/** Text that belongs to no line any more is still there to be copied. */
	@ParameterizedTest
	@CsvSource({ "REFER, 2026-03-10", "NEW_ILLNESS, 2026-03-09", "NEW_ILLNESS, yesterday", "NONSENSE, 2026-03-10",
			"'', ''" })
	void refusesAForgedMatter(String matter, String arose) throws Exception {
		MockHttpServletResponse answer = send(mark(matter, arose, "Words of mine."));
		assertThat(answer.getStatus()).isEqualTo(200);
		assertThat(answer.getContentAsString()).contains("This is not on the list, or not any more.",
				"Words of mine.</textarea>");
		assertThat(all()).isEmpty();
	}

	@Test
	void refusesAMarkOfNoKnownState() throws Exception {
		assertThat(this.mvc.perform(mark("NEW_ILLNESS", "2026-03-10", "Hm.", "CURED").with(user(this.byCoach)))
			.andReturn()
			.getResponse()
			.getContentAsString()).contains("Please say how far you have got");
		assertThat(all()).isEmpty();
	}

	@Test
	void storesADoubleTapOnce() throws Exception {
		String request = UUID.randomUUID().toString();
		for (int taps = 0; taps < 2; taps++) {
			assertThat(send(mark("NEW_ILLNESS", "2026-03-10", "Once.").param("requestId", request)).getRedirectedUrl())
				.isEqualTo("/board");
			assertThat(message("/thread", "Once.", request, this.byAthlete).getRedirectedUrl()).isEqualTo("/thread");
		}
		assertThat(all()).hasSize(1);
		assertThat(CurrentPerson.callAs(this.athlete, () -> this.threads.of(this.athlete))).hasSize(1);
	}

	/** Two lines of one athlete on one page are two forms. */
	@Test
	void givesEachFormItsOwnSending() throws Exception {
		enter(this.people.addAthlete(this.team.id(), NewAthlete.named("Ben")).id(), Symptom.FEVERISH);
		Matcher ids = Pattern.compile("name=\"requestId\" value=\"([^\"]+)\"")
			.matcher(html(get("/board"), this.byCoach));
		List<String> found = ids.results().map((one) -> one.group(1)).toList();
		assertThat(found).hasSize(2).doesNotHaveDuplicates();
	}

	@Test
	void carriesMessagesBothWays() throws Exception {
		String text = "כואב לי 🤒\r\n<script>alert(1)</script>";
		assertThat(message("/thread", text, "", this.byAthlete).getRedirectedUrl()).isEqualTo("/thread");
		this.clock.set(TENTH, LocalTime.of(12, 0), ZoneOffset.UTC);
		assertThat(
				message("/athletes/" + this.athlete + "/thread", "Stay in bed.", "", this.byCoach).getRedirectedUrl())
			.isEqualTo("/athletes/" + this.athlete + "/thread");
		String own = html(get("/thread"), this.byAthlete);
		assertThat(own).contains("dir=\"auto\">כואב לי 🤒\n&lt;script&gt;alert(1)&lt;/script&gt;</p>", "10 Mar, 14:00",
				"Illness episode opened");
		assertThat(own.indexOf("כואב")).isLessThan(own.indexOf("Stay in bed."));
		String coaches = html(get("/athletes/" + this.athlete + "/thread"), this.byCoach);
		assertThat(coaches).contains("<bdi>" + NAME + "</bdi>", "10 Mar, 12:00", "Stay in bed.");
		assertThat(html(get("/sharing"), this.byAthlete)).contains("opened the messages with you", "wrote a message");
	}

	@Test
	void warnsBeforeTheField() throws Exception {
		for (String page : List.of(html(get("/thread"), this.byAthlete),
				html(get("/athletes/" + this.athlete + "/thread"), this.byCoach))) {
			assertThat(page).contains("Messages are not read at once", "Call 112", "Chest pain or pressure");
			assertThat(page.indexOf("Call 112")).isLessThan(page.indexOf("<textarea"));
		}
	}

	@ParameterizedTest
	@CsvSource({ "0, Please fill this in.", "5000, 'At most 1,000 characters, please; these are 5,000.'" })
	void keepsAMessageThatIsRefused(int length, String problem) throws Exception {
		String text = "x".repeat(length);
		MockHttpServletResponse answer = message("/thread", text, "", this.byAthlete);
		assertThat(answer.getContentAsString()).contains("Not saved yet", problem, ">" + text + "</textarea>");
		assertThat(CurrentPerson.callAs(this.athlete, () -> this.threads.of(this.athlete))).isEmpty();
	}

	@ParameterizedTest
	@CsvSource({ "'2026-03-09', 2026-03-09", "'nonsense', 2026-03-10", "'9999-12-31', 2026-03-10",
			"'-999999999-01-01', 2026-03-10" })
	void opensAtTheMatterOfADay(String asked, String chosen) throws Exception {
		assertThat(html(get("/thread").param("day", asked), this.byAthlete))
			.containsPattern("value=\"" + chosen + "\" selected");
	}

	private List<?> all() {
		return CurrentPerson.callAs(this.coach, () -> this.marks.of(this.athlete));
	}

	private MockHttpServletRequestBuilder mark(String matter, String arose, String note) {
		return mark(matter, arose, note, "CONTACTED");
	}

	private MockHttpServletRequestBuilder mark(String matter, String arose, String note, String state) {
		return post("/athletes/" + this.athlete + "/words").with(csrf())
			.param("matter", matter)
			.param("arose", arose)
			.param("state", state)
			.param("note", note);
	}

	private MockHttpServletResponse send(MockHttpServletRequestBuilder request) throws Exception {
		return this.mvc.perform(request.with(user(this.byCoach))).andReturn().getResponse();
	}

	private MockHttpServletResponse message(String path, String text, String request, UserDetails by) throws Exception {
		return this.mvc
			.perform(post(path).with(csrf())
				.with(user(by))
				.param("about", "2026-03-10")
				.param("body", text)
				.param("requestId", request))
			.andReturn()
			.getResponse();
	}

	private String html(MockHttpServletRequestBuilder request, UserDetails by) throws Exception {
		return this.mvc.perform(request.with(user(by))).andReturn().getResponse().getContentAsString();
	}

	private void enter(PersonId who, Symptom symptom) {
		CurrentPerson.runAs(who,
				() -> assertThat(this.mornings.save(who,
						NewMorning.feeling(TENTH, new ReportedSymptom(symptom, Severity.MODERATE, null)),
						Submission.page(who, Role.ATHLETE, UUID.randomUUID())))
					.isInstanceOf(Saved.Stored.class));
	}

	private UserDetails signedIn(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return this.users.loadUserByUsername(person + "@club.example");
	}

}
