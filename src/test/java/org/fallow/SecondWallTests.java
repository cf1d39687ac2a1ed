package org.fallow;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.account.Accounts;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.NewSession;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Sessions;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.Assessments;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.NewReport;
import org.fallow.illness.core.ReportKind;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.rules.Intensity;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.context.bean.override.mockito.MockitoBean;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.BDDMockito.given;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

/**
 * The application's own check taken away: a stand-in allows everybody everything and even
 * hands out the athlete. What is left is the database, and it gives no foreign row.
 */
@DatabaseTest
@NobodyOperates
class SecondWallTests {

	private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

	/** What only Ann's rows hold, as pages write it. */
	private static final List<String> HERS = List.of("a plover was calling", "47.3");

	private static final List<String> TABLES = List.of("morning_entry", "morning_symptom", "session_log", "assessment",
			"athlete_status", "stage_decision", "illness_event", "absence", "medicine_change", "known_symptom",
			"health_condition");

	@Autowired
	private MockMvc mvc;

	@Autowired
	private People people;

	@Autowired
	private Squad squad;

	@Autowired
	private Accounts accounts;

	@Autowired
	private UserDetailsService users;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	@Autowired
	private IllnessFacts illnesses;

	@Autowired
	private Assessments assessments;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	@MockitoBean
	private AthleteAccess access;

	private PersonId ann;

	private PersonId coach;

	/** A team-mate, a coach of another team, and the coach of a group she is not in. */
	private List<PersonId> others;

	private UserDetails coachSignedIn;

	private final Map<PersonId, UserDetails> othersSignedIn = new LinkedHashMap<>();

	@BeforeEach
	void makeEverybody() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		Team team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		this.ann = this.people
			.addAthlete(team.id(), new NewAthlete("Ann", null, null, LocalDate.of(1990, 1, 2), "Track"))
			.id();
		this.coach = this.people.addCoach(team.id(), "Cay");
		this.others = List.of(this.people.addAthlete(team.id(), NewAthlete.named("Ben")).id(),
				this.people.addCoach(this.people.addTeam(club, "Other", ZoneOffset.UTC).id(), "Sam"));
		this.coachSignedIn = signIn(this.coach);
		this.others.forEach((person) -> this.othersSignedIn.put(person, signIn(person)));
		Athlete athlete = as(this.ann, () -> this.squad.athlete(this.ann));
		CurrentPerson current = new CurrentPerson();
		given(this.access.person()).willAnswer((call) -> current.id().orElseThrow());
		given(this.access.self()).willReturn(athlete);
		given(this.access.coached(any())).willReturn(athlete);
		given(this.access.coached(any(), any())).willReturn(athlete);
		given(this.access.fullyCoached(any())).willReturn(athlete);
		given(this.access.maySee(any())).willReturn(true);
		given(this.access.maySeeAll(any())).willReturn(true);
		given(this.access.mayCoach(any())).willReturn(true);
		given(this.access.mayLoosen(any())).willReturn(true);
		given(this.access.leads(any())).willReturn(true);
		enter();
	}

	private void enter() {
		NewMorning morning = NewMorning.measured(TODAY, Method.STRAP, Posture.LYING, 47.3, null);
		assertThat(this.mornings.save(this.ann,
				new NewMorning(TODAY, 0, morning.method(), morning.posture(), morning.rhrBpm(), null, List.of(), false,
						null, List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MODERATE)), false,
						morning.feverMedicine(), null, null, null, List.of(), "a plover was calling", null),
				by(this.ann)))
			.isInstanceOf(Saved.Stored.class);
		this.sessions.save(this.ann, NewSession.run(TODAY, 30, 2.0, Intensity.EASY), by(this.ann));
		this.illnesses.report(this.ann, report(), by(this.ann));
	}

	@Test
	void showsNothingOfHersOnAnyPage() throws Exception {
		List<String> pages = List.of("/athletes/" + this.ann, "/athletes/" + this.ann + "/return-path",
				"/athletes/" + this.ann + "/decision", "/athletes/" + this.ann + "/clearance", "/board", "/today",
				"/morning", "/morning?day=" + TODAY, "/session", "/report", "/return-path", "/sharing", "/calendar");
		StringBuilder coachSees = new StringBuilder();
		for (String page : pages) {
			coachSees.append(page(page, this.coachSignedIn));
			for (PersonId other : this.others) {
				assertThat(page(page, this.othersSignedIn.get(other))).as(page).doesNotContain(HERS);
			}
		}
		assertThat(coachSees).as("with the right to see it, it is there").contains(HERS);
	}

	@Test
	void readsNothingOfHersThroughTheModules() {
		assertThat(as(this.coach, () -> this.mornings.of(this.ann, TODAY, TODAY))).hasSize(1);
		for (PersonId other : this.others) {
			CurrentPerson.runAs(other, () -> {
				assertThat(this.mornings.of(this.ann, TODAY, TODAY)).isEmpty();
				assertThat(this.mornings.latest(this.ann, TODAY)).isEmpty();
				assertThat(this.sessions.of(this.ann, TODAY, TODAY)).isEmpty();
				assertThat(this.illnesses.of(this.ann)).isEmpty();
				assertThat(this.assessments.of(this.ann, TODAY, TODAY)).isEmpty();
				assertThat(this.assessments.on(List.of(this.ann), TODAY)).isEmpty();
				assertThat(this.assessments.status(List.of(this.ann))).isEmpty();
				assertThat(this.assessments.decisions(this.ann)).isEmpty();
				assertThat(this.squad.find(this.ann)).isEmpty();
			});
		}
	}

	@Test
	void letsNobodyElseWrite() {
		Map<String, Long> before = rows();
		assertThat(before.get("morning_entry")).isOne();
		for (PersonId other : this.others) {
			List<Runnable> writes = new ArrayList<>();
			writes.add(() -> this.mornings.save(this.ann, NewMorning.feeling(TODAY.minusDays(1)), by(other)));
			writes.add(() -> this.mornings.takeIn(this.ann, List.of(NewMorning.feeling(TODAY.minusDays(2))), other));
			writes.add(() -> this.sessions.save(this.ann, NewSession.run(TODAY, 45, 2.0, Intensity.EASY), by(other)));
			writes.add(() -> this.illnesses.report(this.ann, report(), by(other)));
			writes.add(() -> this.illnesses.hold(this.ann, TODAY, "chest pain", by(other)));
			writes.add(() -> this.illnesses.withdraw(this.ann, "it was nothing", by(other)));
			writes.add(() -> this.illnesses.symptomsOnly(this.ann, "no device", by(other)));
			writes.forEach((write) -> assertThatThrownBy(() -> CurrentPerson.runAs(other, write))
				.isInstanceOfAny(DataAccessException.class, org.fallow.team.NoSuchAthlete.class));
		}
		assertThat(rows()).isEqualTo(before);
		CurrentPerson.runAs(this.coach, () -> this.illnesses.hold(this.ann, TODAY, "chest pain", by(this.coach)));
		assertThat(rows().get("illness_event")).as("with the right to, it is stored")
			.isGreaterThan(before.get("illness_event"));
	}

	@Test
	void showsNothingToThoseWhoSayTheirWorkIsAboutHer() {
		for (PersonId other : this.others) {
			assertThat(as(other, () -> rowsOfAnn(true)).values()).containsOnly(0L);
		}
		assertThat(as(this.coach, () -> rowsOfAnn(true))).isEqualTo(rows());
	}

	private String page(String address, UserDetails who) throws Exception {
		try {
			MockHttpServletResponse answer = this.mvc.perform(get(address).with(user(who))).andReturn().getResponse();
			return answer.getContentAsString();
		}
		catch (jakarta.servlet.ServletException ex) {
			return String.valueOf(ex.getMessage());
		}
	}

	private Map<String, Long> rows() {
		return as(this.ann, () -> rowsOfAnn(false));
	}

	private Map<String, Long> rowsOfAnn(boolean aboutHer) {
		return new TransactionTemplate(this.transactions).execute((status) -> {
			Map<String, Long> rows = new LinkedHashMap<>();
			if (aboutHer) {
				this.jdbc.sql("select set_config('fallow.athlete', ?, true)")
					.param(this.ann.toString())
					.query(String.class)
					.single();
			}
			for (String table : TABLES) {
				rows.put(table,
						this.jdbc.sql("select count(*) from " + table + " where athlete_id = ?")
							.param(this.ann.value())
							.query(Long.class)
							.single());
			}
			return rows;
		});
	}

	private static NewReport report() {
		return new NewReport(TODAY, ReportKind.ABOVE_NECK, 3, null, null);
	}

	private Submission by(PersonId person) {
		return Submission.page(person, person.equals(this.ann) ? Role.ATHLETE : Role.COACH, UUID.randomUUID());
	}

	private UserDetails signIn(PersonId person) {
		String username = person + "@club.example";
		this.accounts.open(person, username, "a long enough sentence");
		return Purpose.SIGN_IN.call(() -> this.users.loadUserByUsername(username));
	}

	private static <T> T as(PersonId person, Supplier<T> work) {
		return CurrentPerson.callAs(person, work);
	}

}
