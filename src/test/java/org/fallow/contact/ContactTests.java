package org.fallow.contact;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.contact.core.MarkState;
import org.fallow.contact.core.Matter;
import org.fallow.contact.core.MatterKey;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Absences;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewAbsence;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.platform.SettableClock;
import org.fallow.team.Consents;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/** Ann has been ill since the tenth; Cay looks after her. */
@DatabaseTest
@Import(SettableClock.class)
@NobodyOperates
class ContactTests {

	private static final LocalDate TENTH = LocalDate.of(2026, 3, 10);

	private static final UUID SENDING = UUID.fromString("00000000-0000-4000-8000-000000000001");

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Consents consents;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Absences absences;

	@Autowired
	private Assessments assessments;

	@Autowired
	private Needs needs;

	@Autowired
	private Marks marks;

	@Autowired
	private Threads threads;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	private Team team;

	private PersonId ann;

	private PersonId ben;

	private PersonId cay;

	private PersonId deputy;

	private PersonId stranger;

	private PersonId otherGroup;

	@BeforeEach
	void makePeople() {
		this.clock.set(TENTH);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		UUID track = this.people.findOrAddGroup(this.team.id(), "Track").id();
		UUID road = this.people.findOrAddGroup(this.team.id(), "Road").id();
		this.ann = this.people.addAthlete(this.team.id(), new NewAthlete("Ann", null, null, null, "Track")).id();
		this.ben = this.people.addAthlete(this.team.id(), new NewAthlete("Ben", null, null, null, "Road")).id();
		this.cay = this.people.addCoach(this.team.id(), "Cay");
		this.deputy = post("Del", club, Post.DEPUTY, track);
		this.otherGroup = post("Ria", club, Post.GROUP_COACH, road);
		this.stranger = this.people.addCoach(this.people.addTeam(club, "Other", ZoneOffset.UTC).id(), "Sam");
		enter(this.ann, TENTH, Symptom.FEVERISH);
	}

	@Test
	void listsANewIllnessUntilTheFirstMark() {
		assertThat(keys()).containsExactly(new MatterKey(this.ann, Matter.NEW_ILLNESS, TENTH));
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.CONTACTED, "Slept badly.", false)).isEmpty();
		assertThat(keys()).isEmpty();
		assertThat(lines().off()).singleElement().satisfies((line) -> {
			assertThat(line.mark()).isNotNull().satisfies((mark) -> {
				assertThat(mark.by()).isEqualTo("Cay");
				assertThat(mark.note()).isEqualTo("Slept badly.");
				assertThat(mark.shared()).isFalse();
			});
		});
		this.clock.set(TENTH.plusDays(Needs.OFF_DAYS + 1L));
		assertThat(lines().off()).isEmpty();
	}

	/** The mark stays in sight, and so does the hold. */
	@Test
	void keepsAHoldOnTheListWhateverIsMarked() {
		enter(this.ben, TENTH, Symptom.CHEST_PAIN);
		for (MarkState state : MarkState.values()) {
			this.clock.advance(Duration.ofMinutes(1));
			assertThat(mark(this.cay, this.ben, Matter.REFER, TENTH, state, "Sees Dr Wren.", false)).isEmpty();
		}
		assertThat(lines().open()).filteredOn((line) -> line.key().matter() == Matter.REFER)
			.singleElement()
			.satisfies((line) -> assertThat(line.mark()).isNotNull()
				.satisfies((mark) -> assertThat(mark.state()).isEqualTo(MarkState.DONE)));
		assertThat(CurrentPerson.callAs(this.cay, () -> this.assessments.on(List.of(this.ben), TENTH)).values())
			.extracting(AssessedDay::holding)
			.containsExactly(true);
	}

	@Test
	void comesBackWhenItArisesAnew() {
		well(TENTH.minusDays(0), this.ben);
		this.clock.set(TENTH.plusDays(3));
		MatterKey first = new MatterKey(this.ben, Matter.QUIET, TENTH.plusDays(1));
		assertThat(keys()).contains(first);
		assertThat(mark(this.cay, this.ben, Matter.QUIET, first.arose(), MarkState.DONE, "Away at work.", false))
			.isEmpty();
		assertThat(keys()).doesNotContain(first);
		this.clock.set(TENTH.plusDays(4));
		well(TENTH.plusDays(4), this.ben);
		this.clock.set(TENTH.plusDays(7));
		assertThat(keys()).contains(new MatterKey(this.ben, Matter.QUIET, TENTH.plusDays(5)));
	}

	@Test
	void takesTheLastMark() {
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.CONTACTED, "One.", false)).isEmpty();
		this.clock.set(TENTH.plusDays(2));
		MatterKey quiet = new MatterKey(this.ann, Matter.QUIET, TENTH.plusDays(1));
		assertThat(keys()).contains(quiet);
		assertThat(mark(this.cay, Matter.QUIET, quiet.arose(), MarkState.DONE, "Two.", false)).isEmpty();
		assertThat(keys()).doesNotContain(quiet);
		this.clock.advance(Duration.ofMinutes(1));
		assertThat(mark(this.deputy, Matter.QUIET, quiet.arose(), MarkState.AGREED, "Not yet.", false)).isEmpty();
		assertThat(keys()).contains(quiet);
	}

	@Test
	void doesNotMissWhoIsAway() {
		this.clock.set(TENTH.plusDays(5));
		assertThat(keys()).extracting(MatterKey::athlete).contains(this.ben);
		CurrentPerson.runAs(this.ben,
				() -> assertThat(this.absences.save(this.ben,
						new NewAbsence(null, TENTH, null, AbsenceKind.HOLIDAY, null, null), by(this.ben)))
					.isInstanceOf(Saved.Stored.class));
		assertThat(keys()).extracting(MatterKey::athlete).doesNotContain(this.ben);
	}

	/** In Honolulu the third morning has not come when it has in the coach's zone. */
	@Test
	void countsMorningsInTheAthletesZone() {
		ZoneId hawaii = ZoneId.of("Pacific/Honolulu");
		PersonId kai = Purpose.OPERATION
			.call(() -> this.people.addAthlete(this.team.id(), new NewAthlete("Kai", null, hawaii, null, null)).id());
		this.clock.set(TENTH, LocalTime.of(7, 0), hawaii);
		well(TENTH, kai);
		this.clock.set(TENTH.plusDays(3), LocalTime.of(6, 0), ZoneOffset.UTC);
		assertThat(keys()).extracting(MatterKey::athlete).doesNotContain(kai);
		this.clock.set(TENTH.plusDays(3), LocalTime.of(12, 0), ZoneOffset.UTC);
		assertThat(keys()).contains(new MatterKey(kai, Matter.QUIET, TENTH.plusDays(1)));
	}

	@Test
	void refusesWhatIsNotOnTheList() {
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH.minusDays(1), MarkState.DONE, "x", false)).hasSize(1);
		assertThat(mark(this.cay, Matter.REFER, TENTH, MarkState.DONE, "x", false)).extracting(Problem::message)
			.extracting((message) -> message.code())
			.containsExactly("words.gone");
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.DONE, " \n ", false)).extracting(Problem::field)
			.containsExactly("note");
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.DONE, "x".repeat(1001), false)).hasSize(1);
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.DONE, "a\0b", false)).hasSize(1);
		assertThat(rows(this.cay, "contact_mark")).isZero();
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.DONE, "😀".repeat(1000), false)).isEmpty();
	}

	@Test
	void storesTheSameSendingOnce() {
		for (int times = 0; times < 2; times++) {
			assertThat(CurrentPerson.callAs(this.cay, () -> this.marks.mark(this.ann, Matter.NEW_ILLNESS, TENTH,
					MarkState.AGREED, "Rest.", true, Submission.page(this.cay, Role.COACH, SENDING))))
				.isEmpty();
			assertThat(CurrentPerson.callAs(this.ann, () -> this.threads.write(this.ann, TENTH, "Hello.",
					Submission.page(this.ann, Role.ATHLETE, SENDING))))
				.isEmpty();
		}
		assertThat(rows(this.cay, "contact_mark")).isOne();
		assertThat(rows(this.cay, "contact_message")).isOne();
	}

	@Test
	void sharesOnlyWhatTheCoachTicked() {
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.CONTACTED, "Between coaches.", false)).isEmpty();
		assertThat(mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.AGREED, "Rest till Monday.", true)).isEmpty();
		assertThat(CurrentPerson.callAs(this.ann, () -> this.marks.shared(this.ann))).singleElement()
			.satisfies((note) -> {
				assertThat(note.note()).isEqualTo("Rest till Monday.");
				assertThat(note.by()).isEqualTo("Cay");
			});
		assertThat(rows(this.ann, "contact_mark")).isOne();
		assertThat(rows(this.cay, "contact_mark")).isEqualTo(2);
		this.clock.set(TENTH.plusDays(Marks.SHARED_DAYS + 1L));
		assertThat(CurrentPerson.callAs(this.ann, () -> this.marks.shared(this.ann))).isEmpty();
	}

	@Test
	void keepsMessagesInOrderAsTheyWereWritten() {
		write(this.ann, "\r\n  <b>Hi</b>\r\n\r\nmy legs 🦵 ache \r");
		write(this.cay, "שלום");
		write(this.deputy, "Del here.");
		List<ThreadMessage> all = CurrentPerson.callAs(this.ann, () -> this.threads.of(this.ann));
		assertThat(all).extracting(ThreadMessage::body)
			.containsExactly("<b>Hi</b>\n\nmy legs 🦵 ache", "שלום", "Del here.");
		assertThat(all).extracting(ThreadMessage::role).containsExactly(Role.ATHLETE, Role.COACH, Role.COACH);
		assertThat(all).extracting(ThreadMessage::name).containsExactly("Ann", "Cay", "Del");
		assertThat(all).extracting(ThreadMessage::about).containsOnly(TENTH);
	}

	@Test
	void refusesMessagesThatAreNone() {
		assertThat(problems(TENTH, " ")).containsExactly("body");
		assertThat(problems(TENTH, "x".repeat(1001))).containsExactly("body");
		assertThat(problems(TENTH.plusDays(1), "x")).containsExactly("about");
		assertThat(problems(TENTH.minusDays(Threads.ABOUT_DAYS + 1L), "x")).containsExactly("about");
		assertThat(rows(this.cay, "contact_message")).isZero();
		assertThat(problems(TENTH.minusDays(Threads.ABOUT_DAYS), "😀".repeat(1000))).isEmpty();
	}

	@Test
	void isClosedToStrangersAndOtherCoaches() {
		write(this.ann, "Hello.");
		mark(this.cay, Matter.NEW_ILLNESS, TENTH, MarkState.AGREED, "Rest.", true);
		for (PersonId other : List.of(this.ben, this.stranger, this.otherGroup)) {
			assertThat(rows(other, "contact_message")).isZero();
			assertThat(rows(other, "contact_mark")).isZero();
			assertThatThrownBy(() -> write(other, "x")).isInstanceOf(AccessDeniedException.class);
			assertThatThrownBy(() -> CurrentPerson.callAs(other, () -> this.threads.of(this.ann)))
				.isInstanceOf(AccessDeniedException.class);
			assertThatThrownBy(() -> mark(other, Matter.NEW_ILLNESS, TENTH, MarkState.DONE, "x", true))
				.isInstanceOf(AccessDeniedException.class);
			assertThatThrownBy(() -> CurrentPerson.callAs(other, () -> this.needs.of(List.of(this.ann), TENTH)))
				.isInstanceOf(AccessDeniedException.class);
		}
		assertThatThrownBy(() -> mark(this.ann, Matter.NEW_ILLNESS, TENTH, MarkState.DONE, "x", true))
			.isInstanceOf(AccessDeniedException.class);
		CurrentPerson.runAs(this.ann, () -> this.consents.withdraw(this.ann));
		assertThat(rows(this.cay, "contact_message")).isZero();
		assertThat(rows(this.cay, "contact_mark")).isZero();
		assertThat(rows(this.ann, "contact_message")).isOne();
	}

	/** The database alone, as a forgotten check would ask it. */
	@ParameterizedTest
	@ValueSource(strings = {
			"insert into contact_mark (athlete_id, id, matter, arose_on, state, note, shared, recorded_at, recorded_on, "
					+ "actor_id, request_id) values (:ann, gen_random_uuid(), 'QUIET', current_date, 'DONE', 'x', true, "
					+ "now(), current_date, :actor, gen_random_uuid())",
			"insert into contact_message (athlete_id, id, about_on, body, recorded_at, recorded_on, actor_id, actor_name, "
					+ "role, request_id) values (:ann, gen_random_uuid(), current_date, 'x', now(), current_date, :actor, "
					+ "'x', 'COACH', gen_random_uuid())" })
	void letsNobodyWriteWhoDoesNotCoverOrAsSomebodyElse(String sql) {
		for (PersonId other : List.of(this.ben, this.stranger, this.otherGroup)) {
			assertThatThrownBy(() -> insert(sql, other, other)).isInstanceOf(DataAccessException.class)
				.hasStackTraceContaining("row-level security");
		}
		assertThatThrownBy(() -> insert(sql, this.deputy, this.cay)).hasStackTraceContaining("row-level security");
		assertThatThrownBy(() -> insert(sql, this.ann, this.ann)).isInstanceOf(DataAccessException.class);
		insert(sql, this.cay, this.cay);
	}

	@ParameterizedTest
	@ValueSource(strings = { "update contact_mark set note = 'y'", "delete from contact_mark",
			"update contact_message set body = 'y'", "delete from contact_message" })
	void letsNobodyChangeOrDelete(String sql) {
		assertThatThrownBy(() -> CurrentPerson.callAs(this.cay,
				() -> new TransactionTemplate(this.transactions).execute((status) -> this.jdbc.sql(sql).update())))
			.hasStackTraceContaining("permission denied");
	}

	private void insert(String sql, PersonId as, PersonId actor) {
		CurrentPerson.runAs(as, () -> new TransactionTemplate(this.transactions).executeWithoutResult(
				(status) -> this.jdbc.sql(sql).param("ann", this.ann.value()).param("actor", actor.value()).update()));
	}

	private NeedLines lines() {
		return CurrentPerson.callAs(this.cay,
				() -> this.needs.lines(List.of(this.ann, this.ben), LocalDate.now(this.clock)));
	}

	/** On the list of Cay, all of whose athletes are asked for. */
	private List<MatterKey> keys() {
		List<PersonId> all = CurrentPerson.callAs(this.cay,
				() -> new TransactionTemplate(this.transactions)
					.execute((status) -> this.jdbc.sql("select person_id from membership where team_id = ?")
						.param(this.team.id())
						.query((row, n) -> new PersonId(row.getObject(1, UUID.class)))
						.list()));
		return CurrentPerson
			.callAs(this.cay, () -> this.needs.lines(all == null ? List.of() : all, LocalDate.now(this.clock)))
			.open()
			.stream()
			.map(NeedLine::key)
			.toList();
	}

	private List<Problem> mark(PersonId coach, Matter matter, LocalDate arose, MarkState state, String note,
			boolean shared) {
		return mark(coach, this.ann, matter, arose, state, note, shared);
	}

	private List<Problem> mark(PersonId coach, PersonId athlete, Matter matter, LocalDate arose, MarkState state,
			String note, boolean shared) {
		this.clock.advance(Duration.ofSeconds(1));
		return as(coach, () -> this.marks.mark(athlete, matter, arose, state, note, shared, by(coach)));
	}

	private void write(PersonId sender, String text) {
		this.clock.advance(Duration.ofSeconds(1));
		assertThat(as(sender, () -> this.threads.write(this.ann, TENTH, text, by(sender)))).isEmpty();
	}

	private List<String> problems(LocalDate about, String text) {
		return as(this.ann, () -> this.threads.write(this.ann, about, text, by(this.ann))).stream()
			.map(Problem::field)
			.toList();
	}

	private int rows(PersonId reader, String table) {
		Integer rows = as(reader,
				() -> new TransactionTemplate(this.transactions)
					.execute((status) -> this.jdbc.sql("select count(*) from " + table + " where athlete_id = ?")
						.param(this.ann.value())
						.query(Integer.class)
						.single()));
		return (rows == null) ? -1 : rows;
	}

	private void enter(PersonId athlete, LocalDate day, Symptom symptom) {
		save(athlete, NewMorning.feeling(day, new ReportedSymptom(symptom, Severity.MODERATE, null)));
	}

	private void well(LocalDate day, PersonId athlete) {
		save(athlete, NewMorning.measured(day, Method.STRAP, Posture.LYING, 50.0, null));
	}

	private void save(PersonId athlete, NewMorning morning) {
		CurrentPerson.runAs(athlete,
				() -> assertThat(this.mornings.save(athlete, morning, by(athlete))).isInstanceOf(Saved.Stored.class));
	}

	private PersonId post(String name, UUID club, Post kind, UUID group) {
		PersonId person = this.people.addPerson(name, ZoneOffset.UTC);
		this.posts.give(person, new NewPost(kind, club, this.team.id(), false, List.of(group),
				(kind == Post.DEPUTY) ? LocalDate.of(2099, 1, 1).atStartOfDay().toInstant(ZoneOffset.UTC) : null));
		return person;
	}

	private static Submission by(PersonId person) {
		return Submission.page(person, Role.COACH, UUID.randomUUID());
	}

	private static <T> T as(PersonId person, Supplier<T> work) {
		return CurrentPerson.callAs(person, work);
	}

}
