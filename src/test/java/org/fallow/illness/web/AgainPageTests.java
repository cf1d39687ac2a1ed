package org.fallow.illness.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.entry.Measurements;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

/** What a saved morning asks at once, and what a clinician's own figure changes. */
@DatabaseTest
@Import(SettableClock.class)
class AgainPageTests {

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
	private Measurements measurements;

	private PersonId ann;

	private PersonId coach;

	@BeforeEach
	void makePeople() {
		this.clock.set(TODAY);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = opened(this.people.addCoach(team.id(), "Cay Coach"));
		this.ann = opened(this.people
			.addAthlete(team.id(), new NewAthlete("Ann Ashe", null, null, LocalDate.of(2000, 3, 10), null))
			.id());
	}

	private PersonId opened(PersonId person) {
		this.accounts.open(person, person + "@club.example");
		return person;
	}

	@Test
	void measuresAgainAfterLyingAndShowsBoth() throws Exception {
		morning("104", 0).andExpect(redirectedUrl("/again"));
		assertThat(page(this.ann, "/again")).contains("High first: 104 bpm", "5 minutes more", "name=\"rhr\"",
				"Does anything ache");
		assertThat(page(this.ann, "/today")).contains("Rest", "href=\"/again\"");
		assertThat(html(rested("57"))).contains("Please lie still first");
		this.clock.advance(Duration.ofMinutes(5).minusSeconds(1));
		assertThat(html(rested("57"))).contains("Please lie still first");
		this.clock.advance(Duration.ofSeconds(1));
		MockHttpServletRequestBuilder form = form("RESTED", "STRAP", "57", TODAY.toString());
		this.mvc.perform(form).andExpect(redirectedUrl("/again"));
		this.mvc.perform(form).andExpect(redirectedUrl("/again"));
		rested("57").andExpect(redirectedUrl("/again"));
		assertThat(stored()).isEqualTo(1);
		assertThat(page(this.ann, "/again")).contains("Does anything ache", ">Nothing<").doesNotContain("name=\"rhr\"");
		assertThat(page(this.ann, "/today")).contains("Easy only", "high first, 104", "57");
		assertThat(page(this.coach, "/board")).contains("high first, 104");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains("First 104", "lying again 57");
		assertThat(html(rested("56"))).contains("only a higher reading takes its place");
		rested("101").andExpect(redirectedUrl("/again"));
		assertThat(page(this.ann, "/today")).contains("Rest");
	}

	@Test
	void refusesLateAndUnaskedMeasurements() throws Exception {
		assertThat(html(rested("57"))).contains("does not ask for this");
		morning("62", 0).andExpect(redirectedUrl("/today"));
		assertThat(html(rested("57"))).contains("does not ask for this");
		assertThat(page(this.ann, "/again")).contains("Nothing is asked");
		morning("104", 1).andExpect(redirectedUrl("/again"));
		this.clock.advance(Duration.ofHours(2).plusSeconds(1));
		assertThat(html(rested("57"))).contains("no morning’s reading any more", "value=\"57\"");
		this.clock.set(TODAY.plusDays(1));
		assertThat(html(rested("57"))).contains("only on its own day");
		assertThat(stored()).isZero();
	}

	@ParameterizedTest
	@CsvSource({ "'', Please write the second reading", "abc, number", "19, between 20 and 220",
			"221, between 20 and 220" })
	void refusesBadNumbersAndKeepsWhatWasTyped(String typed, String told) throws Exception {
		morning("104", 0);
		this.clock.advance(Duration.ofMinutes(6));
		assertThat(html(rested(typed))).contains(told, "value=\"" + typed + "\"");
		assertThat(html(this.mvc.perform(form("RESTED", "WHAT", "57", TODAY.toString())))).contains("how");
		assertThat(html(this.mvc.perform(form("SLEPT", "STRAP", "57", TODAY.toString()))))
			.contains("nothing was changed");
		assertThat(html(this.mvc.perform(form("RESTED", "STRAP", "57", "soon")))).contains("nothing was changed");
		assertThat(html(this.mvc.perform(form("RESTED", "STRAP", "57", TODAY.minusDays(1).toString()))))
			.contains("only on its own day");
		assertThat(stored()).isZero();
	}

	@Test
	void asksRedFlagsAndACountAtOnceFrom120() throws Exception {
		morning("124", 0).andExpect(redirectedUrl("/again"));
		String asked = page(this.ann, "/again");
		assertThat(asked).contains("tel:112", "Chest pain, pressure or tightness", "Count your pulse by finger, now")
			.doesNotContain("name=\"rhr\"");
		assertThat(page(this.ann, "/today")).contains("Rest", "not counted by finger", "have a clinician look today");
		this.clock.advance(Duration.ofMinutes(6));
		assertThat(html(rested("57"))).contains("First the pulse is counted by finger");
		assertThat(html(counted("COUNT_60", ""))).contains("how many beats");
		assertThat(html(counted("STRAP", "60"))).contains("counted by finger, over 30 or 60 seconds");
		counted("COUNT_30", "60").andExpect(redirectedUrl("/again"));
		assertThat(page(this.ann, "/again")).contains("tel:112", "still 120 bpm at rest",
				"Stop. This needs a clinician");
		assertThat(page(this.ann, "/today")).contains("Refer", "tel:112");
		assertThat(page(this.coach, "/board")).contains("row-refer");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains("by finger 120");
	}

	@Test
	void takesALowerCountAsTheReading() throws Exception {
		morning("180", 0);
		counted("COUNT_60", "61").andExpect(redirectedUrl("/today"));
		assertThat(page(this.ann, "/today")).contains("Full training", "counted by finger 61");
		assertThat(page(this.ann, "/again")).contains("Nothing is asked");
	}

	@Test
	void storesARedFlagTickedThere() throws Exception {
		morning("124", 0);
		assertThat(html(this.mvc.perform(redFlags()))).contains("Please tick what is true");
		this.mvc.perform(redFlags().param("redFlags", "CHEST_PAIN")).andExpect(redirectedUrl("/slip"));
		assertThat(page(this.ann, "/today")).contains("Refer");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains("Chest pain, pressure or tightness",
				"124");
	}

	@Test
	void goesByAClinicianSOwnFigureFromItsRecordingOn() throws Exception {
		String figure = "/athletes/" + this.ann.value() + "/figure";
		assertThat(page(this.coach, figure)).contains("None: the usual figures are used");
		assertThat(html(figure("99"))).contains("between 100 and 119");
		assertThat(html(figure("120"))).contains("between 100 and 119");
		assertThat(html(figure("a lot"))).contains("whole number");
		figure("110").andExpect(redirectedUrl("/athletes/" + this.ann.value()));
		assertThat(page(this.coach, figure)).contains("From 110 bpm", "Doc Day", "cardiologist");
		morning("104", 0).andExpect(redirectedUrl("/again"));
		assertThat(page(this.ann, "/today")).contains("Full training", "too fast at rest from 110");
		assertThat(page(this.coach, "/athletes/" + this.ann.value())).contains("own figure: too fast at rest from 110",
				"Chest strap");
		assertThat(page(this.ann, "/return-path")).contains("too fast at rest from 110");
		assertThat(html(end(""))).contains("From 110 bpm");
		end("moved on").andExpect(status().is3xxRedirection());
		assertThat(page(this.ann, "/today")).contains("Rest").doesNotContain("too fast at rest from 110");
		assertThat(html(end("again"))).contains("No such figure is recorded");
	}

	private ResultActions figure(String bpm) throws Exception {
		return this.mvc.perform(as(this.coach, "/athletes/" + this.ann.value() + "/figure").param("bpm", bpm)
			.param("method", "STRAP")
			.param("posture", "LYING")
			.param("who", "Doc Day")
			.param("role", "cardiologist")
			.param("spokenOn", TODAY.toString()));
	}

	private ResultActions end(String reason) throws Exception {
		return this.mvc.perform(as(this.coach, "/athletes/" + this.ann.value() + "/figure/end").param("method", "STRAP")
			.param("posture", "LYING")
			.param("reason", reason));
	}

	private int stored() {
		return CurrentPerson.callAs(this.ann,
				() -> this.measurements.of(this.ann, TODAY.minusDays(9), TODAY.plusDays(9)).size());
	}

	private ResultActions morning(String bpm, int revision) throws Exception {
		return this.mvc.perform(as(this.ann, "/morning").param("day", TODAY.toString())
			.param("revision", String.valueOf(revision))
			.param("method", "STRAP")
			.param("posture", "LYING")
			.param("rhr", bpm)
			.param("feels", "WELL"));
	}

	private ResultActions rested(String bpm) throws Exception {
		return this.mvc.perform(form("RESTED", "STRAP", bpm, TODAY.toString()));
	}

	private ResultActions counted(String method, String beats) throws Exception {
		return this.mvc
			.perform(form("COUNTED", method, null, TODAY.toString()).param("beats", beats).param("posture", "LYING"));
	}

	private MockHttpServletRequestBuilder redFlags() {
		return as(this.ann, "/again/red-flags").param("requestId", UUID.randomUUID().toString());
	}

	private MockHttpServletRequestBuilder form(String kind, String method, String rhr, String day) {
		MockHttpServletRequestBuilder form = as(this.ann, "/again").param("kind", kind)
			.param("method", method)
			.param("day", day)
			.param("requestId", UUID.randomUUID().toString());
		return (rhr == null) ? form : form.param("rhr", rhr);
	}

	private MockHttpServletRequestBuilder as(PersonId person, String path) {
		return post(path).with(user(this.users.loadUserByUsername(person + "@club.example"))).with(csrf());
	}

	private String page(PersonId person, String path) throws Exception {
		return html(this.mvc.perform(get(path).with(user(this.users.loadUserByUsername(person + "@club.example")))));
	}

	private static String html(ResultActions result) throws Exception {
		return result.andExpect(status().isOk()).andReturn().getResponse().getContentAsString(StandardCharsets.UTF_8);
	}

}
