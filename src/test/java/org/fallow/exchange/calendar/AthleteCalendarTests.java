package org.fallow.exchange.calendar;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import biweekly.property.Status;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.access.Secret;
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
import org.fallow.illness.Assessments;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.NewReport;
import org.fallow.illness.core.ReportKind;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.Language;
import org.fallow.platform.NobodyOperates;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Intensity;
import org.fallow.team.Consents;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.fallow.training.Programmes;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.jspecify.annotations.Nullable;
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
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/** The calendar of Ann, who trains with the group Track, read by another library. */
@DatabaseTest
@NobodyOperates
@Import(SettableClock.class)
@SuppressWarnings("NullAway.Init")
class AthleteCalendarTests {

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 16);

	private static final String PLACE = "Gelände; Süd, hinter \\ dem Café\nTor 2";

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Accounts accounts;

	@Autowired
	private Consents consents;

	@Autowired
	private Programmes programmes;

	@Autowired
	private Mornings mornings;

	@Autowired
	private IllnessFacts illness;

	@Autowired
	private Assessments assessments;

	@Autowired
	private CalendarAddresses addresses;

	@Autowired
	private AthleteCalendar calendar;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	private UUID group;

	private PersonId coach;

	private PersonId ann;

	private PersonId ben;

	private int revision;

	@BeforeEach
	void writeAWeek() {
		this.clock.set(MONDAY);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.group = this.people.findOrAddGroup(team.id(), "Track").id();
		this.coach = this.people.addCoach(team.id(), "Cay");
		this.ann = athlete(team, "Ann");
		this.ben = athlete(team, "Ben");
		this.revision = 0;
		write(easy(40), hard(LocalTime.of(18, 30)));
		CurrentPerson.runAs(this.ann, () -> this.addresses.make(this.ann));
	}

	@Test
	void holdsTheComingSessions() {
		Map<String, VEvent> events = events();
		assertThat(events).containsOnlyKeys("Easy run, 40 min", "Key session, 31 min");
		VEvent hard = event(events, "Key session, 31 min");
		assertThat(hard.getLocation().getValue()).isEqualTo(PLACE);
		assertThat(hard.getDescription().getValue()).contains("As programmed, 31 minutes.", "Repeats with Zoë",
				"Warm-up: 15 min, Easy", "Main part: 3 × 400 m with 1 min 30 s between, Hard intervals of minutes",
				"Cool-down: 8 min, Easy", "check Fallow", "not medical advice or a diagnosis");
		assertThat(event(events, "Easy run, 40 min").getDescription().getValue()).contains("not medical advice");
	}

	/** A person without an account has chosen nothing. */
	@Test
	void speaksTheLanguageTheAthleteHasChosen() {
		this.accounts.open(this.ann, this.ann + "@club.example");
		assertThat(feed()).contains("SUMMARY:Easy run\\, 40 min");
		this.accounts.speak(this.ann, Language.GERMAN);
		assertThat(feed()).contains("SUMMARY:Lockerer Lauf\\, 40 min", "SEQUENCE:1\r\n").doesNotContain("Easy run");
		this.accounts.speak(this.ann, null);
		assertThat(feed()).contains("SUMMARY:Easy run\\, 40 min");
	}

	@Test
	void hasTimesWithoutAZoneAndWholeDays() {
		assertThat(feed())
			.contains("DTSTART:20260319T183000\r\n", "DTEND:20260319T190100\r\n", "DTSTART;VALUE=DATE:20260317\r\n")
			.doesNotContain("TZID", "VTIMEZONE", "DTSTART:20260319T183000Z");
	}

	@Test
	void isTheSameWhileNothingChanges() {
		String first = feed();
		this.clock.advance(Duration.ofHours(5));
		assertThat(feed()).isEqualTo(first).contains("SEQUENCE:0\r\n").doesNotContain("SEQUENCE:1");
	}

	@Test
	void countsAChangeOfTheSessionThatChanged() {
		Map<String, VEvent> before = events();
		this.clock.advance(Duration.ofMinutes(5));
		write(easy(40), hard(LocalTime.of(19, 0)));
		Map<String, VEvent> after = events();
		VEvent then = event(before, "Key session, 31 min");
		VEvent now = event(after, "Key session, 31 min");
		assertThat(now.getUid().getValue()).isEqualTo(then.getUid().getValue());
		assertThat(sequence(then)).isZero();
		assertThat(sequence(now)).isOne();
		assertThat(now.getDateTimeStamp().getValue()).isAfter(then.getDateTimeStamp().getValue());
		assertThat(sequence(event(after, "Easy run, 40 min"))).isZero();
		write(easy(40), hard(LocalTime.of(18, 30)));
		assertThat(sequence(event(events(), "Key session, 31 min"))).isEqualTo(2);
	}

	@Test
	void cancelsWhatIsGoneAndTakesItBack() {
		VEvent before = event(events(), "Key session, 31 min");
		write(easy(40));
		VEvent gone = event(events(), "Key session, 31 min");
		assertThat(gone.getUid().getValue()).isEqualTo(before.getUid().getValue());
		assertThat(gone.getStatus().getValue()).isEqualTo(Status.cancelled().getValue());
		assertThat(sequence(gone)).isOne();
		assertThat(gone.getLocation().getValue()).isEqualTo(PLACE);
		assertThat(gone.getDateStart().getValue()).isEqualTo(before.getDateStart().getValue());
		assertThat(gone.getDescription().getValue()).contains("No longer in the programme", "not medical advice");
		assertThat(feed()).as("told again, not counted again").contains("SEQUENCE:1\r\n").doesNotContain("SEQUENCE:2");
		write(easy(40), hard(LocalTime.of(18, 30)));
		VEvent back = event(events(), "Key session, 31 min");
		assertThat(back.getStatus().getValue()).isEqualTo(Status.confirmed().getValue());
		assertThat(sequence(back)).isEqualTo(2);
	}

	@Test
	void saysNothingOfTheCancelledOnceTheirDayIsPast() {
		events();
		write(easy(40));
		assertThat(events()).containsKey("Key session, 31 min");
		this.clock.set(MONDAY.plusDays(4));
		assertThat(feed()).doesNotContain("VEVENT");
		this.clock.set(MONDAY.plusDays(3 + 60));
		feed();
		assertThat(as(this.ann, () -> count("calendar_event"))).isOne();
		this.clock.set(MONDAY.plusDays(3 + 61));
		feed();
		assertThat(as(this.ann, () -> count("calendar_event"))).isZero();
	}

	/** The last day told is 27 days ahead. */
	@Test
	void looksFourWeeksAhead() {
		for (int day : List.of(27, 28)) {
			LocalDate monday = MONDAY.plusDays(day - day % 7);
			PlannedSession late = session("late" + day, MONDAY.plusDays(day), null, "", day + 100);
			CurrentPerson.runAs(this.coach,
					() -> assertThat(this.programmes.write(this.group,
							new ProgrammeWeek(monday, ProgrammeWeek.Kind.LOADING, List.of(late)), 0, this.coach))
						.isTrue());
		}
		assertThat(events()).containsKey("Easy run, 127 min").doesNotContainKey("Easy run, 128 min");
	}

	@Test
	void saysNothingOfTheIllness() {
		fallIll();
		String unfolded = feed().replace("\r\n ", "").replaceAll("UID:[0-9a-f]{40}@fallow\r\n", "");
		assertThat(unfolded).contains("SUMMARY:Rest\r\n").doesNotContain("UID");
		assertThat(unfolded).doesNotContain("Easy run", "Key session", "plover", "57.3", "57", "38.7", "sore", "Sore",
				"throat", "ill ", "Ill", "SORE_THROAT", "session.why", "rate is", "Ann", this.ann.toString());
		assertThat(unfolded.replace("does not rule out illness or fever", "")).doesNotContainIgnoringCase("fever")
			.doesNotContainIgnoringCase("illness");
	}

	@Test
	void showsTheEarliestDayOfTheNextGate() {
		fallIll();
		LocalDate earliest = as(this.ann, () -> {
			this.assessments.bringUpTo(List.of(this.ann), MONDAY);
			return this.assessments.status(List.of(this.ann)).get(this.ann).latest().nextGateEarliest();
		});
		assertThat(earliest).isAfter(MONDAY);
		VEvent gate = event(events(), "Next step possible from today");
		assertThat(gate.getDateStart().getValue().getRawComponents().toDate())
			.isEqualTo(java.util.Date.from(earliest.atStartOfDay(ZoneId.systemDefault()).toInstant()));
		assertThat(gate.getDescription().getValue()).contains("no promise", "not medical advice");
	}

	@Test
	void showsNoSessionToRunUnderAHold() {
		events();
		CurrentPerson.runAs(this.coach,
				() -> assertThat(this.illness.hold(this.ann, MONDAY, "a plover in the chest", by(this.coach)))
					.isInstanceOf(Saved.Stored.class));
		String text = feed().replace("\r\n ", "");
		List<VEvent> events = Biweekly.parse(text).first().getEvents();
		assertThat(events).hasSize(2).allSatisfy((event) -> {
			assertThat(event.getSummary().getValue()).isEqualTo("Rest");
			assertThat(event.getDescription().getValue()).startsWith("No running.").contains("talk to your coach");
			assertThat(event.getLocation()).isNull();
			assertThat(sequence(event)).isOne();
		});
		assertThat(text).doesNotContain("plover", "Zoë", " min", "T183000", "linician first", "hold");
	}

	@Test
	void endsWithTheTeam() {
		events();
		CurrentPerson.runAs(this.ann, () -> this.consents.leave(this.ann));
		assertThat(Biweekly.parse(feed()).first().getEvents()).hasSize(2)
			.allSatisfy((event) -> assertThat(event.getStatus().getValue()).isEqualTo(Status.cancelled().getValue()));
	}

	@Test
	void namesNobodyElsesEventAlike() {
		CurrentPerson.runAs(this.ben, () -> this.addresses.make(this.ben));
		List<String> hers = uids(feed());
		List<String> his = uids(as(this.ben, () -> this.calendar.of(this.ben)));
		assertThat(his).hasSameSizeAs(hers).doesNotContainAnyElementsOf(hers);
	}

	@Test
	void tellsTwoSessionsOfOneKeyApart() {
		write(session("same", MONDAY.plusDays(1), null, "", 40), session("same", MONDAY.plusDays(2), null, "", 50));
		assertThat(uids(feed())).hasSize(2).doesNotHaveDuplicates();
	}

	@Test
	void dropsControlCharacters() {
		write(session("a", MONDAY.plusDays(1), null, "Tra\u0007ck\r\nGate\u0000", 40));
		assertThat(feed()).contains("LOCATION:Track\\nGate\r\n");
	}

	@Test
	void isOpenToTheAthleteAlone() {
		Secret secret = as(this.ann, () -> this.addresses.make(this.ann));
		events();
		assertThat(as(this.ann, () -> count("calendar_feed"))).isOne();
		assertThat(as(this.ann, () -> count("calendar_event"))).isEqualTo(2);
		for (PersonId other : List.of(this.ben, this.coach)) {
			assertThat(as(other, () -> count("calendar_feed"))).isZero();
			assertThat(as(other, () -> count("calendar_event"))).isZero();
			assertThatThrownBy(() -> CurrentPerson.runAs(other, () -> this.addresses.make(this.ann)))
				.isInstanceOfAny(AccessDeniedException.class, DataAccessException.class);
			CurrentPerson.runAs(other, () -> {
				try {
					this.addresses.revoke(this.ann);
				}
				catch (AccessDeniedException ex) {
					assertThat(other).isEqualTo(this.ben);
				}
			});
		}
		assertThat(this.addresses.holder(secret.text())).contains(this.ann);
		assertThat(count("calendar_feed") + count("calendar_event")).as("nobody").isZero();
		assertThatExceptionOfType(AccessDeniedException.class)
			.isThrownBy(() -> CurrentPerson.runAs(this.ben, () -> this.calendar.of(this.ann)));
	}

	/** What finds an address out reads no health data and no name. */
	@Test
	void findsAddressesOutAndNothingElse() {
		fallIll();
		for (String table : List.of("morning_entry", "assessment", "athlete_status", "illness_event", "person",
				"membership", "account", "calendar_event")) {
			assertThat(Purpose.CALENDAR.<Integer>call(() -> count(table))).as(table).isZero();
		}
		assertThat(Purpose.CALENDAR.<Integer>call(() -> count("calendar_feed"))).isOne();
	}

	@Test
	void keepsTheHashOfAnAddressOnly() {
		Secret secret = as(this.ann, () -> this.addresses.make(this.ann));
		String row = as(this.ann,
				() -> new TransactionTemplate(this.transactions)
					.execute((status) -> this.jdbc.sql("select f::text from calendar_feed f where person_id = ?")
						.param(this.ann.value())
						.query(String.class)
						.single()));
		assertThat(row).contains(secret.hash()).doesNotContain(secret.text());
	}

	private void fallIll() {
		CurrentPerson.runAs(this.ann, () -> {
			NewMorning measured = NewMorning.measured(MONDAY, Method.STRAP, Posture.LYING, 57.3, null);
			assertThat(this.mornings.save(this.ann,
					new NewMorning(MONDAY, 0, measured.method(), measured.posture(), measured.rhrBpm(), null, List.of(),
							false, 38.7, List.of(ReportedSymptom.of(Symptom.SORE_THROAT, Severity.MODERATE)), true,
							measured.feverMedicine(), null, null, null, List.of(), "a plover was calling", null),
					by(this.ann)))
				.isInstanceOf(Saved.Stored.class);
			this.illness.report(this.ann, new NewReport(MONDAY, ReportKind.ABOVE_NECK, 3, "a plover", null),
					by(this.ann));
		});
	}

	private Submission by(PersonId person) {
		return Submission.page(person, person.equals(this.coach) ? Role.COACH : Role.ATHLETE, UUID.randomUUID());
	}

	private void write(PlannedSession... sessions) {
		ProgrammeWeek week = new ProgrammeWeek(MONDAY, ProgrammeWeek.Kind.LOADING, Arrays.asList(sessions));
		CurrentPerson.runAs(this.coach,
				() -> assertThat(this.programmes.write(this.group, week, this.revision, this.coach)).isTrue());
		this.revision++;
	}

	private static PlannedSession easy(int minutes) {
		return session("a", MONDAY.plusDays(1), null, "", minutes);
	}

	private static PlannedSession hard(LocalTime time) {
		return new PlannedSession("b", MONDAY.plusDays(3), PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, time, PLACE, "Repeats with Zoë",
				List.of(Part.of(Part.Role.WARM_UP, 900, Intensity.EASY),
						new Part(Part.Role.BLOCK, 3, 400, 100, Intensity.VO2MAX, 90),
						Part.of(Part.Role.COOL_DOWN, 480, Intensity.EASY)));
	}

	private static PlannedSession session(String key, LocalDate day, @Nullable LocalTime time, String place,
			int minutes) {
		return new PlannedSession(key, day, PlannedSession.Kind.EASY_RUN, PlannedSession.Terrain.FLAT, time, place, "",
				List.of(Part.of(Part.Role.BLOCK, minutes * 60, Intensity.EASY)));
	}

	private PersonId athlete(Team team, String name) {
		return this.people.addAthlete(team.id(), new NewAthlete(name, null, null, LocalDate.of(1990, 1, 2), "Track"))
			.id();
	}

	private String feed() {
		return as(this.ann, () -> this.calendar.of(this.ann));
	}

	private Map<String, VEvent> events() {
		return Biweekly.parse(feed())
			.first()
			.getEvents()
			.stream()
			.collect(Collectors.toMap((event) -> event.getSummary().getValue(), Function.identity(),
					(first, second) -> first));
	}

	private static VEvent event(Map<String, VEvent> events, String title) {
		assertThat(events).containsKey(title);
		return events.get(title);
	}

	private static int sequence(VEvent event) {
		return event.getSequence().getValue();
	}

	private static List<String> uids(String text) {
		return Biweekly.parse(text).first().getEvents().stream().map((event) -> event.getUid().getValue()).toList();
	}

	private int count(String table) {
		Integer count = new TransactionTemplate(this.transactions)
			.execute((status) -> this.jdbc.sql("select count(*) from " + table + " where " + switch (table) {
				case "person" -> "id";
				case "calendar_feed", "membership", "account" -> "person_id";
				default -> "athlete_id";
			} + " = ?").param(this.ann.value()).query(Integer.class).single());
		return (count == null) ? -1 : count;
	}

	private static <T> T as(PersonId person, Supplier<T> work) {
		return CurrentPerson.callAs(person, work);
	}

}
