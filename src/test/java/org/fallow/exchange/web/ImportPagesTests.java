package org.fallow.exchange.web;

import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import jakarta.servlet.http.Cookie;
import org.fallow.access.PersonId;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.Imports;
import org.fallow.platform.DatabaseTest;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Rosters;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.RequestBuilder;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.multipart;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.header;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

@DatabaseTest
@SuppressWarnings("NullAway.Init")
class ImportPagesTests {

	private static final String PASSWORD = "a long enough sentence";

	private static final String GOOD = "person,date,rhr_bpm\nAnn,2020-01-02,50\n<b>=1+1,2020-01-02,=1+1\n";

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Imports imports;

	@Autowired
	private Rosters rosters;

	private UUID team;

	private Cookie coach;

	@BeforeEach
	void signACoachIn() throws Exception {
		this.team = newTeam();
		this.coach = signedIn(this.people.addCoach(this.team, "Cay"));
	}

	@Test
	void leadsFromTheFileOverItsColumnsToTheSummary() throws Exception {
		String mapping = upload(GOOD);
		String job = mapping.substring(0, mapping.lastIndexOf('/'));
		this.mvc.perform(get(mapping).cookie(this.coach))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("=1+1")))
			.andExpect(content().string(not(containsString("<b>=1+1"))));
		this.mvc.perform(get(job).cookie(this.coach)).andExpect(redirectedUrl(mapping));
		choose(mapping, "0").andExpect(redirectedUrl(job + "/people"));
		this.mvc.perform(get(job).cookie(this.coach)).andExpect(redirectedUrl(job + "/people"));
		this.mvc.perform(get(job + "/people").cookie(this.coach))
			.andExpect(content().string(containsString("2 names that nobody in the team has")))
			.andExpect(content().string(not(containsString("<b>=1+1"))));
		this.mvc.perform(adding(job)).andExpect(redirectedUrl(job));
		waitUntilDone(job);
		this.mvc.perform(get(job + "/progress").cookie(this.coach)).andExpect(header().string("HX-Redirect", job));
		this.mvc.perform(get(job).cookie(this.coach))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString("=1+1")))
			.andExpect(content().string(containsString("This is not a number.")));
		choose(mapping, "0").andExpect(redirectedUrl(job));
		this.mvc.perform(get("/import").cookie(this.coach)).andExpect(content().string(containsString("mornings.csv")));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			''                          | The file is empty.
			'person,date,rhr_bpm'       | The file has names of columns and no rows.
			'person,date\\nP\\0,2020'   | This is not a text file.
			'person,person\\nP,2020'    | Two columns are named person.
			""")
	void saysWhatIsWrongWithAFile(String text, String sentence) throws Exception {
		this.mvc.perform(sending(text.replace("\\n", "\n").replace("\\0", "\0").getBytes(StandardCharsets.UTF_8)))
			.andExpect(status().isOk())
			.andExpect(content().string(containsString(sentence)));
	}

	@Test
	void refusesAnotherEncoding() throws Exception {
		this.mvc.perform(sending("person,date\nJos\u00e9,2020-01-02\n".getBytes(StandardCharsets.ISO_8859_1)))
			.andExpect(content().string(containsString("The file is not in UTF-8.")));
	}

	@Test
	void asksForAFile() throws Exception {
		this.mvc
			.perform(multipart("/import").file(new MockMultipartFile("file", "", null, new byte[0]))
				.param("teamId", this.team.toString())
				.cookie(this.coach)
				.with(csrf()))
			.andExpect(content().string(containsString("Choose a file.")));
	}

	@Test
	void asksForTheColumnThatSaysWho() throws Exception {
		choose(upload(GOOD), "").andExpect(status().isOk())
			.andExpect(content().string(containsString("Choose the column that says who.")));
		choose(upload(GOOD), "9").andExpect(content().string(containsString("The file has no such column.")));
		choose(upload(GOOD), "x").andExpect(content().string(containsString("The file has no such column.")));
	}

	@Test
	void asksBeforeAnythingIsTakenInWhomTheFileNames() throws Exception {
		Athlete nkechi = this.people.addAthlete(this.team, NewAthlete.named("Nkechi Umeadi"));
		String page = peopleOf("person,date,rhr\nNkechi Umedai,2020-01-02,50\nCy,2020-01-02,50\n<i>,2020-01-02,50\n"
				+ "NKECHI\u00a0 UMEADI,2020-01-03,50\n");
		String job = page.substring(0, page.lastIndexOf('/'));
		String html = html(get(page));
		assertThat(html).contains("Almost the same name", "Nkechi Umedai", "value=\"" + nkechi.id() + "\"",
				"2 names that nobody in the team has", "Recognised in another spelling", "NKECHI\u00a0 UMEADI \u2192 #")
			.doesNotContain("<i>", "checked", "??");
		Matcher decide = Pattern.compile("decide\\.[0-9a-f]{16}").matcher(html);
		assertThat(decide.find()).isTrue();
		assertThat(html(post(page).with(csrf()))).contains("Please decide for each name");
		assertThat(html(post(page).with(csrf()).param(decide.group(), PersonId.next().toString())))
			.contains("Please decide for each name");
		assertThat(html(post(page).with(csrf()).param(decide.group(), "NEW")))
			.contains("Please say on whose word the data are kept.");
		assertThat(html(
				post(page).with(csrf()).param(decide.group(), nkechi.id().toString()).param("createPeople", "true")))
			.contains("Please say on whose word the data are kept.", "checked");
		assertThat(this.rosters.count(this.team)).isOne();
		this.mvc.perform(post(page).with(csrf()).cookie(this.coach).param(decide.group(), nkechi.id().toString()))
			.andExpect(redirectedUrl(job));
		waitUntilDone(job);
		assertThat(this.rosters.count(this.team)).isOne();
		assertThat(this.imports.find(UUID.fromString(job.substring(8))).orElseThrow().counts().stored()).isEqualTo(2);
		this.mvc.perform(get(page).cookie(this.coach)).andExpect(redirectedUrl(job));
		this.mvc.perform(adding(job)).andExpect(redirectedUrl(job));
		assertThat(this.rosters.count(this.team)).isOne();
	}

	@Test
	void ticksAddingPeopleOnlyInATeamOfNobody() throws Exception {
		assertThat(html(get(peopleOf(GOOD)))).contains("name=\"createPeople\" value=\"true\" checked");
		this.people.addAthlete(this.team, NewAthlete.named("Zoe"));
		assertThat(html(get(peopleOf(GOOD)))).doesNotContain("checked");
	}

	@Test
	void staysReadableWithAThousandUnknownNames() throws Exception {
		StringBuilder text = new StringBuilder("person,date,rhr\n");
		for (int i = 1; i <= 1000; i++) {
			text.append("Athlete %04d,2020-01-02,50\n".formatted(i));
		}
		assertThat(html(get(peopleOf(text.toString()))))
			.contains("1,000 names that nobody in the team has", "and 981 more", "Athlete 0019")
			.doesNotContain("Athlete 0020");
		StringBuilder near = new StringBuilder("person,date,rhr\n");
		for (int i = 0; i < 300; i++) {
			near.append("Umeadi %c%c%c,2020-01-02,50\n".formatted('a' + i % 26, 'a' + i / 26 % 26, 'a'));
		}
		assertThat(html(get(peopleOf(near.toString())))).contains("200 more names are almost the same as somebody");
	}

	@Test
	void refusesAColumnThatCannotBeThatOfPeople() throws Exception {
		StringBuilder text = new StringBuilder("person,date,rhr\n");
		for (int i = 0; i <= 20_000; i++) {
			text.append(i).append(",2020-01-02,50\n");
		}
		choose(upload(text.toString()), "0")
			.andExpect(content().string(containsString("This column names more than 20,000 people.")));
	}

	/** Days of any year are told with it. */
	@Test
	void tellsDaysWithTheirYear() throws Exception {
		this.people.addAthlete(this.team, NewAthlete.named("Ann"));
		String mapping = upload("person,date,rhr\nAnn,2999-03-04,50\nAnn,1999-03-04,50\n");
		String job = mapping.substring(0, mapping.lastIndexOf('/'));
		choose(mapping, "0").andExpect(redirectedUrl(job));
		waitUntilDone(job);
		assertThat(html(get(job))).contains("4 Mar 2999 has not come yet", "4 Mar 1999 is too long ago");
	}

	private String peopleOf(String text) throws Exception {
		return Objects.requireNonNull(choose(upload(text), "0").andReturn().getResponse().getRedirectedUrl());
	}

	private String html(MockHttpServletRequestBuilder request) throws Exception {
		return this.mvc.perform(request.cookie(this.coach))
			.andExpect(status().isOk())
			.andReturn()
			.getResponse()
			.getContentAsString(StandardCharsets.UTF_8);
	}

	@Test
	void takesNoFileForAnotherTeam() throws Exception {
		this.mvc
			.perform(multipart("/import").file(file(GOOD.getBytes(StandardCharsets.UTF_8)))
				.param("teamId", newTeam().toString())
				.cookie(this.coach)
				.with(csrf()))
			.andExpect(content().string(containsString("Choose one of your teams.")));
	}

	@Test
	void showsNobodyElsesImport() throws Exception {
		String mapping = upload(GOOD);
		String job = mapping.substring(0, mapping.lastIndexOf('/'));
		Cookie other = signedIn(this.people.addCoach(newTeam(), "Other"));
		this.mvc.perform(get(mapping).cookie(other)).andExpect(status().isNotFound());
		this.mvc.perform(get(job).cookie(other)).andExpect(status().isNotFound());
		this.mvc.perform(get(job + "/progress").cookie(other)).andExpect(status().isNotFound());
		this.mvc.perform(post(mapping).param("column.PERSON", "0").cookie(other).with(csrf()))
			.andExpect(status().isNotFound());
		this.mvc.perform(get(job + "/people").cookie(other)).andExpect(status().isNotFound());
		this.mvc.perform(adding(job, other)).andExpect(status().isNotFound());
	}

	@Test
	void letsNoAthleteImport() throws Exception {
		Cookie athlete = signedIn(this.people.addAthlete(this.team, NewAthlete.named("Ann")).id());
		this.mvc.perform(get("/import").cookie(athlete)).andExpect(status().isForbidden());
	}

	private String upload(String text) throws Exception {
		String url = this.mvc.perform(sending(text.getBytes(StandardCharsets.UTF_8)))
			.andExpect(status().is3xxRedirection())
			.andReturn()
			.getResponse()
			.getRedirectedUrl();
		assertThat(url).matches("/import/[0-9a-f-]{36}/mapping");
		return Objects.requireNonNull(url);
	}

	private RequestBuilder sending(byte[] bytes) {
		return multipart("/import").file(file(bytes))
			.param("teamId", this.team.toString())
			.cookie(this.coach)
			.with(csrf());
	}

	private static MockMultipartFile file(byte[] bytes) {
		return new MockMultipartFile("file", "C:\\folder\\mornings.csv", "text/csv", bytes);
	}

	private ResultActions choose(String mapping, String person) throws Exception {
		return this.mvc.perform(post(mapping).param("column.PERSON", person)
			.param("column.DAY", "1")
			.param("column.RHR", "2")
			.param("method", "STRAP")
			.param("posture", "LYING")
			.cookie(this.coach)
			.with(csrf()));
	}

	private MockHttpServletRequestBuilder adding(String job) {
		return adding(job, this.coach);
	}

	private static MockHttpServletRequestBuilder adding(String job, Cookie who) {
		return post(job + "/people").param("createPeople", "true")
			.param("basis", "CLUB_RECORD")
			.cookie(who)
			.with(csrf());
	}

	private void waitUntilDone(String job) throws InterruptedException {
		UUID id = UUID.fromString(job.substring(job.lastIndexOf('/') + 1));
		for (int i = 0; i < 600 && state(id) == ImportJob.State.RUNNING; i++) {
			Thread.sleep(100);
		}
		assertThat(state(id)).isEqualTo(ImportJob.State.DONE);
	}

	private ImportJob.State state(UUID id) {
		return this.imports.find(id).orElseThrow().state();
	}

	private UUID newTeam() {
		return this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", ZoneOffset.UTC)
			.id();
	}

	private Cookie signedIn(PersonId person) throws Exception {
		String username = UUID.randomUUID() + "@example.org";
		this.accounts.open(person, username, PASSWORD);
		return Objects.requireNonNull(
				this.mvc.perform(post("/sign-in").with(csrf()).param("username", username).param("password", PASSWORD))
					.andReturn()
					.getResponse()
					.getCookie("SESSION"));
	}

}
