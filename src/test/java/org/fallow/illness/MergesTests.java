package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.Trace;
import org.fallow.access.TraceSubject;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.team.Entries;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.fallow.team.Squad;
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
import org.springframework.web.context.request.RequestContextHolder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/** Two entries of an invented person made one, and parted. */
@DatabaseTest
@Import(SettableClock.class)
class MergesTests {

	private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Squad squad;

	@Autowired
	private Entries entries;

	@Autowired
	private Mornings mornings;

	@Autowired
	private IllnessFacts illness;

	@Autowired
	private ClearanceFacts clearances;

	@Autowired
	private SlipFacts slips;

	@Autowired
	private Assessments assessments;

	@Autowired
	private Merges merges;

	@Autowired
	private SilentDays silentDays;

	@Autowired
	private Trace trace;

	@Autowired
	private JdbcClient jdbc;

	private TransactionTemplate transactions;

	private Team team;

	private PersonId coach;

	private PersonId kept;

	private PersonId other;

	private PersonId third;

	private int day;

	@BeforeEach
	void enterAPersonTwice(@Autowired PlatformTransactionManager manager) {
		this.transactions = new TransactionTemplate(manager);
		on(0);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		this.team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		this.kept = this.people.addAthlete(this.team.id(), NewAthlete.named("Nkechi Umeadi")).id();
		this.other = this.people.addAthlete(this.team.id(), NewAthlete.named("Nkechi  Umeadi")).id();
		this.third = this.people.addAthlete(this.team.id(), NewAthlete.named("N. Umeadi")).id();
		this.coach = this.people.addCoach(this.team.id(), "Cay");
		As.person(this.coach);
	}

	@Test
	void readsTheFactsOfBoth() {
		for (int i = 0; i < 20; i++) {
			on(i);
			enter((i % 2 == 0) ? this.kept : this.other, 50 + i % 3);
		}
		merge(this.kept, this.other);
		assertThat(today(this.kept).rhr().n()).isEqualTo(19);
		assertThat(this.assessments.of(this.kept, day(0), day(30))).hasSize(20);
		assertThat(this.assessments.status(List.of(this.kept)).get(this.kept).lastEntry()).isEqualTo(day(19));
		on(20);
		enter(this.kept, 63);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REST);
	}

	/** A clearance given for one entry does not lift the hold of the other. */
	@Test
	void aHoldIsNotLiftedByTheOthersClearance() {
		enter(this.kept, 50, Symptom.CHEST_PAIN);
		on(1);
		enter(this.other, 50, Symptom.FAINTING);
		on(2);
		this.clearances.clear(this.other,
				new NewClearance(day(2), null, Clearance.FULL_TRAINING, "Dr Hill", "GP", null), byCoach());
		enter(this.other, 50);
		enter(this.kept, 50);
		merge(this.kept, this.other);
		assertThat(today(this.kept).reasons()).anySatisfy((reason) -> {
			assertThat(reason.code()).isEqualTo("reason.hold");
			assertThat(reason.arguments().get(0)).isEqualTo("CHEST_PAIN");
		});
		on(3);
		enter(this.kept, 50);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REFER);
		this.clearances.clear(this.kept, new NewClearance(day(3), null, Clearance.FULL_TRAINING, "Dr Hill", "GP", null),
				byCoach());
		assertThat(clearance(this.kept)).isNotEqualTo(Clearance.REFER);
	}

	@Test
	void aHoldOfTheOtherStands() {
		enter(this.kept, 50);
		enter(this.other, 50, Symptom.CHEST_PAIN);
		merge(this.kept, this.other);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REFER);
		undo();
		assertThat(clearance(this.kept)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(clearance(this.other)).isEqualTo(Clearance.REFER);
	}

	/** What the clinician of one said stands until a clinician's next word. */
	@Test
	void aCliniciansCeilingStands() {
		enter(this.kept, 50, Symptom.CHEST_PAIN);
		enter(this.other, 50, Symptom.CHEST_PAIN);
		on(1);
		clear(this.kept, Clearance.EASY_ONLY);
		on(2);
		clear(this.other, Clearance.FULL_TRAINING);
		merge(this.kept, this.other);
		assertThat(today(this.kept).seen().coachCeiling()).isEqualTo(Clearance.EASY_ONLY);
		on(5);
		enter(this.kept, 50);
		assertThat(today(this.kept).seen().coachCeiling()).isEqualTo(Clearance.EASY_ONLY);
		clear(this.kept, Clearance.FULL_TRAINING);
		assertThat(today(this.kept).seen().coachCeiling()).isEqualTo(Clearance.FULL_TRAINING);
	}

	/** A withdrawal in one entry closes no illness of the other. */
	@Test
	void anIllnessIsNotWithdrawnByTheOthersWithdrawal() {
		enter(this.kept, 50, Symptom.COUGH);
		on(1);
		enter(this.other, 50, Symptom.COUGH);
		on(2);
		assertThat(this.illness.withdraw(this.other, "a slip", byCoach())).isInstanceOf(Saved.Stored.class);
		assertThat(today(this.other).state().episode()).isNull();
		DayAssessment before = today(this.kept);
		assertThat(before.state().episode()).isNotNull();
		merge(this.kept, this.other);
		assertThat(today(this.kept).state().episode()).isNotNull()
			.satisfies((episode) -> assertThat(episode.stage()).isZero());
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REST);
		on(3);
		enter(this.kept, 50);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REST);
	}

	/** Of one day nothing ticked in either is lost, nor corrected away in one. */
	@Test
	void ofOneDayTheSaferCounts() {
		enter(this.kept, 50);
		enter(this.other, 61, Symptom.COUGH);
		merge(this.kept, this.other);
		DayAssessment day = today(this.kept);
		assertThat(day.rhr().reading()).isEqualTo(61);
		assertThat(day.clearance()).isEqualTo(Clearance.REST);
		this.mornings.save(this.kept, measured(52).basedOn(1), Submission.page(this.kept, Role.ATHLETE, Ids.next()));
		assertThat(today(this.kept).rhr().reading()).isEqualTo(61);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REST);
	}

	@Test
	void theOtherLeavesEverything() {
		enter(this.other, 50);
		merge(this.kept, this.other);
		freshRequest();
		assertThat(this.squad.athletesOf(this.coach)).extracting((one) -> one.id())
			.contains(this.kept)
			.doesNotContain(this.other);
		assertThat(this.entries.isSetAside(this.other)).isTrue();
		assertThat(this.entries.isSetAside(this.kept)).isFalse();
		on(3);
		As.nobody();
		this.silentDays.bringEveryoneToToday();
		assertThat(lastDecided(this.other)).isEqualTo(day(0));
		assertThat(lastDecided(this.kept)).isEqualTo(day(3));
		CurrentPerson.runAs(this.other,
				() -> assertThatThrownBy(() -> this.mornings.save(this.other, measured(50),
						Submission.page(this.other, Role.ATHLETE, Ids.next())))
					.isInstanceOf(DataAccessException.class)
					.hasStackTraceContaining("not_set_aside"));
	}

	/** Each day and decision to the byte; states are kept of other days only. */
	@Test
	void undoneItIsAsIfItHadNotBeen() {
		on(-3);
		enter(this.other, 48);
		for (int i = 0; i < 12; i++) {
			on(i);
			enter(this.kept, 50 + i % 3);
			if (i % 2 == 0) {
				enter(this.other, 55, Symptom.SORE_THROAT);
			}
		}
		today(this.other);
		String before = rows(this.kept);
		String beforeOther = rows(this.other);
		merge(this.kept, this.other);
		assertThat(rows(this.kept)).isNotEqualTo(before);
		undo();
		assertThat(rows(this.kept)).isEqualTo(before);
		assertThat(rows(this.other)).isEqualTo(beforeOther);
		freshRequest();
		assertThat(this.squad.athletesOf(this.coach)).extracting((one) -> one.id()).contains(this.kept, this.other);
		assertThat(this.entries.isSetAside(this.other)).isFalse();
	}

	@Test
	void anEntryWithoutAnythingIsEmptyAgain() {
		enter(this.other, 50);
		merge(this.kept, this.other);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.FULL_TRAINING);
		undo();
		assertThat(this.assessments.day(this.kept, day(0))).isEmpty();
		assertThat(rows(this.kept)).isEqualTo("[][]");
		assertThat(this.assessments.status(List.of(this.kept)).get(this.kept).latest()).isNull();
		merge(this.other, this.kept);
		assertThat(clearance(this.other)).isEqualTo(Clearance.FULL_TRAINING);
	}

	/** An illness that opened since, from facts of both, does not end with the merge. */
	@Test
	void anIllnessThatOpenedSinceStandsOn() {
		enter(this.other, 50, Symptom.SORE_THROAT, Severity.MILD);
		on(1);
		enter(this.other, 50, Symptom.SORE_THROAT, Severity.MILD);
		enter(this.kept, 50);
		merge(this.kept, this.other);
		assertThat(today(this.kept).state().episode()).isNull();
		on(2);
		enter(this.kept, 50, Symptom.SORE_THROAT, Severity.MILD);
		assertThat(today(this.kept).state().episode()).isNotNull();
		on(3);
		enter(this.kept, 50);
		undo();
		assertThat(today(this.kept).state().episode()).isNotNull();
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REST);
	}

	@Test
	void aMergeOfThreeIsUndoneLastFirst() {
		enter(this.third, 50, Symptom.CHEST_PAIN);
		enter(this.other, 51);
		enter(this.kept, 52);
		UUID first = merge(this.other, this.third);
		assertThatThrownBy(() -> this.merges.merge(this.third, this.other, "again", Ids.next()))
			.isInstanceOfAny(NoSuchAthlete.class, AccessDeniedException.class);
		assertThat(this.merges.thatPutAside(this.third.value())).map(PersonMerge::id).contains(first);
		UUID second = merge(this.kept, this.other);
		assertThat(clearance(this.kept)).isEqualTo(Clearance.REFER);
		freshRequest();
		assertThat(codes(this.merges.merge(this.kept, this.third, "again", Ids.next())))
			.containsExactly("merge.part-already");
		assertThatThrownBy(() -> this.merges.undo(this.other, first)).isInstanceOfAny(NoSuchAthlete.class,
				AccessDeniedException.class);
		assertThat(this.merges.undo(this.kept, second)).isInstanceOf(Saved.Stored.class);
		freshRequest();
		assertThat(clearance(this.kept)).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(clearance(this.other)).isEqualTo(Clearance.REFER);
		assertThat(this.merges.undo(this.other, first)).isInstanceOf(Saved.Stored.class);
		assertThat(clearance(this.other)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void twoIntoOneAreUndoneLastFirst() {
		enter(this.kept, 52);
		UUID first = merge(this.kept, this.other);
		UUID second = merge(this.kept, this.third);
		assertThat(codes(this.merges.undo(this.kept, first))).containsExactly("merge.undo.order");
		assertThat(this.merges.undo(this.kept, second)).isInstanceOf(Saved.Stored.class);
		assertThat(this.merges.undo(this.kept, first)).isInstanceOf(Saved.Stored.class);
	}

	@Test
	void isUndoneWithinThirtyDaysOnly() {
		enter(this.kept, 52);
		UUID id = merge(this.kept, this.other);
		on(30);
		assertThat(codes(this.merges.undo(this.kept, id))).containsExactly("merge.undo.late");
		assertThat(codes(this.merges.undo(this.kept, Ids.next()))).containsExactly("merge.gone");
	}

	@Test
	void sentTwiceItIsOne() {
		UUID id = merge(this.kept, this.other);
		assertThat(this.merges.merge(this.kept, this.other, "the same person", id))
			.isEqualTo(new Saved.Stored(id.toString(), 1, true));
		assertThat(codes(this.merges.merge(this.kept, this.third, "the same person", id)))
			.containsExactly("merge.sent");
		undo();
		assertThat(this.merges.undo(this.kept, id)).isEqualTo(new Saved.Stored(id.toString(), 1, true));
	}

	@Test
	void refusesWhatIsNone() {
		assertThat(codes(this.merges.merge(this.kept, this.kept, "x", Ids.next()))).containsExactly("merge.same");
		assertThat(codes(this.merges.merge(this.kept, this.other, " ", Ids.next()))).hasSize(1);
		this.posts.give(this.other,
				new NewPost(Post.HEAD_COACH, this.team.clubId(), this.team.id(), true, List.of(), null));
		assertThat(codes(this.merges.merge(this.kept, this.other, "x", Ids.next()))).containsExactly("merge.post");
		PersonId young = born("Nkechi U", LocalDate.of(2010, 5, 5));
		PersonId old = born("Nkechi Um", LocalDate.of(1990, 5, 5));
		assertThat(codes(this.merges.merge(old, young, "x", Ids.next()))).containsExactly("merge.younger");
		assertThat(this.merges.merge(young, old, "x", Ids.next())).isInstanceOf(Saved.Stored.class);
	}

	@Test
	void isForFullCoachesOfBothOnly() {
		As.nobody();
		PersonId deputy = staff(Post.DEPUTY, this.team);
		Team elsewhere = this.people.addTeam(this.team.clubId(), "Elsewhere", ZoneOffset.UTC);
		PersonId far = this.people.addAthlete(elsewhere.id(), NewAthlete.named("Nkechi Far")).id();
		for (PersonId person : List.of(deputy, this.kept)) {
			freshRequest();
			As.person(person);
			assertThatThrownBy(() -> this.merges.merge(this.kept, this.other, "x", Ids.next()))
				.isInstanceOfAny(NoSuchAthlete.class, AccessDeniedException.class);
		}
		freshRequest();
		As.person(this.coach);
		assertThatThrownBy(() -> this.merges.merge(this.kept, far, "x", Ids.next())).isInstanceOf(NoSuchAthlete.class);
		As.nobody();
		this.people.alsoCoaches(elsewhere.id(), this.coach);
		As.person(this.coach);
		freshRequest();
		assertThat(this.merges.merge(this.kept, far, "x", Ids.next())).isInstanceOf(Saved.Stored.class);
	}

	/** The wall of the database: while it stands, and no longer. */
	@Test
	void showsTheOthersFactsToTheKeptOneWhileItStands() {
		enter(this.other, 50, Symptom.COUGH);
		As.nobody();
		PersonId stranger = this.people.addCoach(this.people.addTeam(this.team.clubId(), "Far", ZoneOffset.UTC).id(),
				"Sam");
		As.person(this.coach);
		assertThat(seen(this.kept)).isZero();
		merge(this.kept, this.other);
		assertThat(seen(this.kept)).isEqualTo(2);
		assertThat(seen(this.coach)).isEqualTo(2);
		assertThat(seen(this.third)).isZero();
		assertThat(seen(stranger)).isZero();
		assertThat(as(this.kept, "select count(*) from person where id = ?")).isOne();
		undo();
		assertThat(seen(this.kept)).isZero();
		assertThat(seen(this.coach)).isEqualTo(2);
		assertThat(as(this.kept, "select count(*) from person where id = ?")).isZero();
	}

	@Test
	void nobodyForgesAMerge() {
		String sql = "insert into person_merge (id, kept_id, other_id, actor_id, merged_at, merged_on, reason) "
				+ "values (gen_random_uuid(), :kept, :other, :me, now(), current_date, 'x')";
		for (PersonId person : List.of(this.kept, this.other, this.third, staff(Post.DEPUTY, this.team))) {
			assertThatThrownBy(() -> CurrentPerson.callAs(person,
					() -> this.transactions.execute((status) -> this.jdbc.sql(sql)
						.params(Map.of("kept", this.kept.value(), "other", this.other.value(), "me", person.value()))
						.update())))
				.isInstanceOf(DataAccessException.class)
				.hasStackTraceContaining("row-level security");
		}
		assertThatThrownBy(() -> this.jdbc.sql("update person_merge set reason = 'y'").update())
			.hasStackTraceContaining("permission denied");
		assertThatThrownBy(() -> this.jdbc.sql("delete from person_merge_undone").update())
			.hasStackTraceContaining("permission denied");
	}

	@Test
	void isTracedAndTold() {
		enter(this.kept, 50);
		enter(this.other, 50);
		UUID id = merge(this.kept, this.other);
		assertThat(traced(this.kept)).contains(TraceSubject.MERGE);
		assertThat(traced(this.other)).contains(TraceSubject.MERGE);
		As.nobody();
		assertThat(this.merges.unread(this.kept)).extracting(PersonMerge::id).containsExactly(id);
		assertThat(this.merges.read(this.kept, id)).isTrue();
		assertThat(this.merges.unread(this.kept)).isEmpty();
		assertThat(this.merges.read(this.third, id)).isFalse();
		As.person(this.coach);
		undo();
		assertThat(traced(this.kept)).contains(TraceSubject.MERGE_UNDONE);
		assertThat(traced(this.other)).contains(TraceSubject.MERGE_UNDONE);
		As.nobody();
		assertThat(this.merges.unread(this.kept)).extracting(PersonMerge::id).containsExactly(id);
		assertThat(this.merges.unread(this.other)).extracting(PersonMerge::id).containsExactly(id);
	}

	@Test
	void daysDecidedOtherwiseStayTraceable() {
		enter(this.kept, 50);
		enter(this.other, 50, Symptom.CHEST_PAIN);
		on(1);
		enter(this.kept, 50);
		UUID id = merge(this.kept, this.other);
		PersonMerge merge = this.merges.find(id).orElseThrow();
		assertThat(this.merges.replaced(merge, 50)).extracting(ReplacedDay::day, ReplacedDay::before, ReplacedDay::now)
			.contains(org.assertj.core.groups.Tuple.tuple(day(0), Clearance.FULL_TRAINING, Clearance.REFER));
	}

	private PersonId born(String name, LocalDate day) {
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, null, day, null)).id();
	}

	private PersonId staff(Post kind, Team of) {
		PersonId person = this.people.addPerson("Staff", ZoneOffset.UTC);
		this.posts.give(person, new NewPost(kind, of.clubId(), of.id(), true, List.of(),
				(kind == Post.DEPUTY) ? java.time.Instant.now().plusSeconds(86400) : null));
		return person;
	}

	private List<TraceSubject> traced(PersonId person) {
		return CurrentPerson.callAs(person,
				() -> this.trace.of(person, null, 50).stream().map((line) -> line.what()).toList());
	}

	private int seen(PersonId person) {
		return as(person, "select count(*) from morning_entry where athlete_id = ?")
				+ as(person, "select count(*) from morning_symptom where athlete_id = ?");
	}

	private int as(PersonId person, String sql) {
		return CurrentPerson.callAs(person, () -> this.transactions
			.execute((status) -> this.jdbc.sql(sql).param(this.other.value()).query(Integer.class).single()));
	}

	private String rows(PersonId athlete) {
		return CurrentPerson.callAs(this.coach, () -> this.transactions.execute((status) -> {
			List<Map<String, Object>> days = this.jdbc.sql("select * from assessment where athlete_id = ? order by day")
				.param(athlete.value())
				.query()
				.listOfRows();
			days.forEach((row) -> row.remove("state"));
			return days.toString()
					+ this.jdbc.sql("select * from stage_decision where athlete_id = ? order by day, number")
						.param(athlete.value())
						.query()
						.listOfRows();
		}));
	}

	private LocalDate lastDecided(PersonId athlete) {
		return CurrentPerson.callAs(athlete,
				() -> this.transactions
					.execute((status) -> this.jdbc.sql("select latest_day from athlete_status where athlete_id = ?")
						.param(athlete.value())
						.query(LocalDate.class)
						.single()));
	}

	private UUID merge(PersonId into, PersonId part) {
		UUID id = Ids.next();
		freshRequest();
		assertThat(this.merges.merge(into, part, "the same person", id))
			.isEqualTo(new Saved.Stored(id.toString(), 1, false));
		freshRequest();
		return id;
	}

	private void undo() {
		freshRequest();
		PersonMerge last = this.merges.all().stream().filter(PersonMerge::stands).findFirst().orElseThrow();
		assertThat(this.merges.undo(last.kept(), last.id())).isInstanceOf(Saved.Stored.class);
		freshRequest();
	}

	/** Who covers whom is asked once a request. */
	private static void freshRequest() {
		RequestContextHolder.resetRequestAttributes();
	}

	private void clear(PersonId athlete, Clearance ceiling) {
		assertThat(this.clearances.clear(athlete, new NewClearance(day(this.day), null, ceiling, "Dr Hill", "GP", null),
				byCoach()))
			.isInstanceOf(Saved.Stored.class);
	}

	private DayAssessment today(PersonId athlete) {
		this.assessments.bringUpTo(List.of(athlete), day(this.day));
		return this.assessments.day(athlete, day(this.day)).orElseThrow();
	}

	private Clearance clearance(PersonId athlete) {
		Clearance decided = today(athlete).clearance();
		AssessedDay stored = this.assessments.status(List.of(athlete)).get(athlete).latest();
		assertThat(stored).isNotNull();
		assertThat(stored.clearance()).isEqualTo(decided);
		return decided;
	}

	private void enter(PersonId athlete, double bpm, Symptom... felt) {
		for (Symptom symptom : felt) {
			enter(athlete, bpm, symptom, Severity.MODERATE);
			return;
		}
		save(athlete, measured(bpm));
	}

	private void enter(PersonId athlete, double bpm, Symptom symptom, Severity severity) {
		save(athlete, measured(bpm).with(ReportedSymptom.of(symptom, severity)));
	}

	private void save(PersonId athlete, NewMorning morning) {
		assertThat(this.mornings.save(athlete, morning, Submission.page(athlete, Role.ATHLETE, Ids.next())))
			.isInstanceOf(Saved.Stored.class);
	}

	private NewMorning measured(double bpm) {
		return NewMorning.measured(day(this.day), Method.STRAP, Posture.LYING, bpm, null);
	}

	private Submission byCoach() {
		return Submission.page(this.coach, Role.COACH, Ids.next());
	}

	private void on(int number) {
		this.day = number;
		this.clock.set(day(number));
	}

	private static LocalDate day(int number) {
		return FIRST.plusDays(number);
	}

	private static List<String> codes(Saved saved) {
		assertThat(saved).isInstanceOf(Saved.Refused.class);
		return ((Saved.Refused) saved).problems().stream().map((problem) -> problem.message().code()).toList();
	}

}
