package org.fallow.illness;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.Spoken;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/** What clinicians, coaches and athletes record of a clearance, as it is stored. */
@DatabaseTest
@Import(SettableClock.class)
class ClinicTests {

	private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Mornings mornings;

	@Autowired
	private IllnessFacts illness;

	@Autowired
	private ClearanceFacts clearances;

	@Autowired
	private CeilingFacts ceilings;

	@Autowired
	private Assessments assessments;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager manager;

	private UUID club;

	private Team team;

	private PersonId ann;

	private PersonId coach;

	@BeforeEach
	void addAnAthlete() {
		this.clock.set(FIRST);
		this.club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(this.club, "Team", ZoneOffset.UTC);
		this.ann = added("Ann").id();
	}

	private Athlete added(String name) {
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, null, FIRST.minusYears(30), null));
	}

	private void withACoach() {
		this.coach = this.people.addCoach(this.team.id(), "Cay");
		As.person(this.coach);
	}

	@Test
	void keepsAllThatAPhysicianSays() {
		withACoach();
		ClinicianWord word = new ClinicianWord(ClinicianWord.By.PHYSICIAN, FIRST, true,
				List.of(ReportedSymptom.of(Symptom.PALPITATIONS, Severity.MILD),
						ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.MODERATE)));
		enter(Symptom.PALPITATIONS, Severity.SEVERE);
		this.clock.set(FIRST, LocalTime.of(15, 0), ZoneOffset.UTC);
		stored(this.clearances.clear(this.ann, clearance(FIRST, null, Clearance.FULL_TRAINING, word), byCoach()));
		assertThat(cleared()).singleElement()
			.satisfies((one) -> assertThat(one.word()).isEqualTo(word))
			.satisfies((one) -> assertThat(one.who()).isEqualTo("Dr Hill"));
		this.clock.set(FIRST.plusDays(1));
		enter(Symptom.PALPITATIONS, Severity.MILD);
		assertThat(latest().inEpisode()).isFalse();
		assertThat(latest().clearance()).isEqualTo(Clearance.EASY_ONLY);
		assertThat(this.assessments.decisions(this.ann)).extracting((d) -> d.decision().kind().name())
			.contains("NO_ILLNESS");
	}

	@Test
	void keepsNoStageUnderAHold() {
		withACoach();
		enter(Symptom.CHEST_PAIN, Severity.SEVERE);
		assertThat(latest().holding()).isTrue();
		assertThat(latest().inEpisode()).isTrue();
		assertThat(latest().stage()).isNull();
		assertThat(latest().dayInStage()).isNull();
	}

	@Test
	void refusesDaysThatCannotBeMeant() {
		withACoach();
		ClinicianWord plain = ClinicianWord.PLAIN;
		assertThat(codes(clear(FIRST.minusDays(1), null, plain))).containsExactly("clearance.back-dated");
		assertThat(codes(clear(FIRST.plusDays(61), null, plain))).containsExactly("clearance.from.late");
		assertThat(codes(clear(FIRST, FIRST.plusDays(367), plain))).containsExactly("clearance.until.late");
		ClinicianWord later = new ClinicianWord(ClinicianWord.By.PHYSICIAN, FIRST.plusDays(1), true, List.of());
		assertThat(codes(clear(FIRST, null, later))).containsExactly("clearance.examined.future");
		ClinicianWord said = new ClinicianWord(ClinicianWord.By.PHYSICIAN, FIRST, true, List.of());
		assertThat(codes(clear(FIRST, FIRST.plusDays(9), said))).containsExactly("clearance.no-illness.full");
		assertThat(codes(clear(FIRST, FIRST, ClinicianWord.toldByTheAthlete()))).contains("clearance.by");
		assertThat(this.illness.of(this.ann)).isEmpty();
		stored(clear(FIRST.plusDays(60), FIRST.plusDays(426), plain));
	}

	@Test
	void letsNobodyLiftTheirOwnHold() {
		withACoach();
		Athlete trains = added("Tom");
		As.nobody();
		this.posts.give(trains.id(), new NewPost(Post.HEAD_COACH, this.club, this.team.id(), true, List.of(), null));
		As.person(trains.id());
		Submission own = Submission.page(trains.id(), Role.COACH, Ids.next());
		NewClearance clearance = clearance(FIRST, null, Clearance.FULL_TRAINING, ClinicianWord.PLAIN);
		assertThat(codes(this.clearances.clear(trains.id(), clearance, own))).containsExactly("clearance.own");
		assertThatExceptionOfType(DataAccessException.class).as("the database says so again")
			.isThrownBy(() -> new TransactionTemplate(this.manager).executeWithoutResult((status) -> this.jdbc.sql("""
					insert into illness_event (athlete_id, key, revision, day, event, ceiling, clinician,
						clinician_role, word_by, no_illness, examined, zone_id, recorded_at, recorded_on, written_at,
						actor_id, role, source, request_id)
					values (:id, 'x', 1, :day, 'CLEARED', 'FULL_TRAINING', 'Dr', 'GP', 'CLINICIAN', false, '{}', 'UTC',
						now(), :day, now(), :id, 'COACH', 'PAGE', gen_random_uuid())""")
				.param("id", trains.id().value())
				.param("day", FIRST)
				.update()));
	}

	@Test
	void takesTheAthletesWordOnlyWhereTheAthleteIsAllThereIs() {
		As.person(this.ann);
		enter(Symptom.CHEST_PAIN, Severity.SEVERE);
		assertThat(this.clearances.isAllThereIs(this.ann)).isTrue();
		this.clock.set(FIRST, LocalTime.of(15, 0), ZoneOffset.UTC);
		ClinicianWord told = ClinicianWord.toldByTheAthlete();
		assertThat(codes(tell(FIRST.plusDays(14), Clearance.EASY_ONLY, told))).containsExactly("clearance.told.until");
		assertThat(codes(tell(FIRST.plusDays(9), Clearance.FULL_TRAINING, told)))
			.containsExactly("clearance.told.scope");
		assertThat(codes(tell(FIRST.plusDays(9), Clearance.EASY_ONLY, ClinicianWord.PLAIN)))
			.containsExactly("clearance.told.scope");
		stored(tell(FIRST.plusDays(13), Clearance.EASY_ONLY, told));
		assertThat(latest().clearance()).isEqualTo(Clearance.REST);
		assertThat(cleared()).singleElement().matches((one) -> one.word().equals(told));
	}

	@Test
	void takesNoWordOfAnAthleteWithACoachOrAnOwner() {
		this.people.addCoach(this.team.id(), "Cay");
		As.person(this.ann);
		assertThat(codes(tell(FIRST, Clearance.REST, ClinicianWord.toldByTheAthlete())))
			.containsExactly("clearance.not-alone");
		As.nobody();
		UUID other = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(other, "Team", ZoneOffset.UTC);
		PersonId owner = this.people.addPerson("Olga", ZoneOffset.UTC);
		this.posts.give(owner, new NewPost(Post.OWNER, other, null, false, List.of(), null));
		this.ann = added("Bea").id();
		As.person(this.ann);
		assertThat(this.clearances.isAllThereIs(this.ann)).isFalse();
	}

	@Test
	void refusesACeilingWithAWrongYear() {
		withACoach();
		assertThat(codes(stricter(FIRST.minusYears(1)))).containsExactly("stricter.until.past");
		assertThat(codes(stricter(FIRST.plusYears(1)))).containsExactly("stricter.until.late");
		assertThat(codes(stricter(FIRST.plusDays(61)))).containsExactly("stricter.until.late");
		stored(stricter(FIRST.plusDays(60)));
	}

	@Test
	void liftsAndReplacesTheCeilingNamed() {
		withACoach();
		well();
		stored(stricter(FIRST.plusDays(9)));
		String key = key();
		assertThat(latest().clearance()).isEqualTo(Clearance.REST);
		assertThat(codes(lift("unknown", null, null))).containsExactly("lift.unknown");
		NewStricter bad = new NewStricter(FIRST, FIRST.plusYears(1), Clearance.EASY_ONLY, "easier");
		assertThat(codes(lift(key, null, bad))).containsExactly("stricter.until.late");
		assertThat(latest().clearance()).isEqualTo(Clearance.REST);
		NewStricter easier = new NewStricter(FIRST, FIRST.plusDays(5), Clearance.EASY_ONLY, "easier");
		stored(lift(key, null, easier));
		assertThat(latest().clearance()).isEqualTo(Clearance.EASY_ONLY);
		assertThat(this.ceilings.from(this.ann, FIRST)).singleElement()
			.matches((one) -> ((IllnessEvent.Stricter) one.event()).reason().equals("easier"));
		stored(lift(key(), null, null));
		assertThat(latest().clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(this.illness.of(this.ann)).as("all stay stored").hasSize(4);
	}

	@Test
	void liftsACliniciansCeilingOnACliniciansWordOnly() {
		withACoach();
		well();
		Spoken clinician = new Spoken(Spoken.By.CLINICIAN, "Dr Hill");
		stored(this.ceilings.stricter(this.ann,
				new NewStricter(FIRST, FIRST.plusDays(9), Clearance.EASY_ONLY, "a scan first", clinician), byCoach()));
		assertThat(codes(lift(key(), null, null))).containsExactly("lift.word.CLINICIAN");
		assertThat(codes(lift(key(), new Spoken(Spoken.By.GUARDIAN, "Pat"), null)))
			.containsExactly("lift.word.CLINICIAN");
		assertThat(codes(lift(key(), new Spoken(Spoken.By.CLINICIAN, " "), null)))
			.containsExactly("entry.words.missing");
		stored(lift(key(), clinician, null));
		assertThat(latest().clearance()).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void letsNoDeputyLiftACeiling() {
		withACoach();
		stored(stricter(FIRST.plusDays(9)));
		String key = key();
		As.nobody();
		PersonId deputy = this.people.addPerson("Del", ZoneOffset.UTC);
		this.posts.give(deputy, new NewPost(Post.DEPUTY, this.club, this.team.id(), true, List.of(),
				FIRST.plusYears(50).atStartOfDay().toInstant(ZoneOffset.UTC)));
		As.person(deputy);
		this.coach = deputy;
		assertThatExceptionOfType(AccessDeniedException.class).isThrownBy(() -> lift(key, null, null));
		stored(stricter(FIRST.plusDays(2)));
	}

	@Test
	void takesWhatAnAdultSaidToday() {
		withACoach();
		assertThat(codes(this.ceilings.saidToday(this.ann, new NewSaid(false, false, "by phone"), byCoach())))
			.containsExactly("said-today.nothing");
		stored(this.ceilings.saidToday(this.ann, new NewSaid(true, false, "by phone"), byCoach()));
		assertThat(this.illness.of(this.ann)).singleElement()
			.matches((one) -> ((IllnessEvent.SaidToday) one.event()).able());
		this.ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Kim")).id();
		assertThat(codes(this.ceilings.saidToday(this.ann, new NewSaid(true, true, "by phone"), byCoach())))
			.containsExactly("said-today.minor");
	}

	private Saved clear(LocalDate from, LocalDate until, ClinicianWord word) {
		return this.clearances.clear(this.ann, clearance(from, until, ceiling(word), word), byCoach());
	}

	private static Clearance ceiling(ClinicianWord word) {
		return (word.by() == ClinicianWord.By.ATHLETE) ? Clearance.REST : Clearance.FULL_TRAINING;
	}

	private Saved tell(LocalDate until, Clearance ceiling, ClinicianWord word) {
		return this.clearances.tell(this.ann, clearance(FIRST, until, ceiling, word),
				Submission.page(this.ann, Role.ATHLETE, Ids.next()));
	}

	private static NewClearance clearance(LocalDate from, LocalDate until, Clearance ceiling, ClinicianWord word) {
		return new NewClearance(from, until, ceiling, "Dr Hill", "GP", null, word);
	}

	private Saved stricter(LocalDate until) {
		return this.ceilings.stricter(this.ann, new NewStricter(FIRST, until, Clearance.REST, "a long week"),
				byCoach());
	}

	private Saved lift(String key, Spoken word, NewStricter instead) {
		return this.ceilings.lift(this.ann, key, "a mistake", word, instead, byCoach());
	}

	private String key() {
		List<StoredEvent> holding = this.ceilings.from(this.ann, FIRST);
		return ((IllnessEvent.Stricter) holding.get(holding.size() - 1).event()).key();
	}

	private List<IllnessEvent.Cleared> cleared() {
		return this.illness.of(this.ann)
			.stream()
			.map(StoredEvent::event)
			.filter(IllnessEvent.Cleared.class::isInstance)
			.map(IllnessEvent.Cleared.class::cast)
			.toList();
	}

	private void enter(Symptom symptom, Severity severity) {
		LocalDate today = LocalDate.now(this.clock);
		stored(this.mornings.save(this.ann, NewMorning.measured(today, Method.STRAP, Posture.LYING, 50.0, null)
			.with(ReportedSymptom.of(symptom, severity)), Submission.page(this.ann, Role.ATHLETE, Ids.next())));
	}

	private void well() {
		stored(this.mornings.save(this.ann, NewMorning.measured(FIRST, Method.STRAP, Posture.LYING, 50.0, null),
				Submission.page(this.ann, Role.ATHLETE, Ids.next())));
	}

	private AssessedDay latest() {
		AssessedDay latest = this.assessments.status(List.of(this.ann)).get(this.ann).latest();
		assertThat(latest).isNotNull();
		return latest;
	}

	private static void stored(Saved saved) {
		assertThat(saved).isInstanceOf(Saved.Stored.class);
	}

	private static List<String> codes(Saved saved) {
		return ((Saved.Refused) saved).problems().stream().map((problem) -> problem.message().code()).toList();
	}

	private Submission byCoach() {
		return Submission.page(this.coach, Role.COACH, Ids.next());
	}

}
