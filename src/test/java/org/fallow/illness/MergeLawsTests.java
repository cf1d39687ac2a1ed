package org.fallow.illness;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.Meanwhile;
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
import org.fallow.illness.core.Carry;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.HoldState;
import org.fallow.illness.core.ReportKind;
import org.fallow.illness.core.Tick;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.web.context.request.RequestContextHolder;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Random histories, invented and split over two entries: what stands in either on the day
 * they are made one stands on. The seeds are fixed.
 */
@DatabaseTest
@Import(SettableClock.class)
class MergeLawsTests {

	private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	private static final int TRIES = 100;

	private static final int QUIET = 15;

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

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

	private Team team;

	private PersonId coach;

	private LocalDate today = FIRST;

	@BeforeEach
	void foundATeam() {
		this.clock.set(FIRST);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.coach = this.people.addCoach(this.team.id(), "Cay");
	}

	static List<Integer> seeds() {
		return IntStream.range(0, TRIES).boxed().toList();
	}

	@ParameterizedTest
	@MethodSource("seeds")
	void isNeverLooserThanEither(int seed) {
		Random random = new Random(seed);
		List<PersonId> entries = List.of(entry("Nkechi Umeadi"), entry("N. Umeadi"));
		As.person(this.coach);
		int days = 1 + random.nextInt(14);
		this.today = FIRST.plusDays(QUIET);
		this.clock.set(this.today);
		entries.forEach((entry) -> quiet(random, entry));
		for (int i = 0; i < days; i++) {
			this.today = FIRST.plusDays(QUIET + i);
			this.clock.set(this.today);
			entries.forEach((entry) -> live(random, entry));
		}
		List<DayAssessment> before = new ArrayList<>();
		entries.forEach((entry) -> assessed(entry).forEach(before::add));
		freshRequest();
		assertThat(this.merges.merge(entries.get(0), entries.get(1), "the same person", Ids.next()))
			.isInstanceOf(Saved.Stored.class);
		freshRequest();
		List<DayAssessment> after = assessed(entries.get(0));
		assertThat(after.isEmpty()).isEqualTo(before.isEmpty());
		before.forEach((part) -> isNoLooser(after.get(0), part));
		this.today = this.today.plusDays(1);
		this.clock.set(this.today);
		save(entries.get(0), measured(50));
		DayAssessment next = assessed(entries.get(0)).get(0);
		before.forEach((part) -> owesAsMuch(next, part));
	}

	private static void isNoLooser(DayAssessment union, DayAssessment part) {
		if (part.clearance() != Clearance.NOT_ASSESSED) {
			assertThat(union.clearance()).isLessThanOrEqualTo(part.clearance());
		}
		assertThat(standing(union)).containsAll(standing(part));
		Episode episode = part.state().episode();
		if (episode != null) {
			assertThat(union.state().episode()).isNotNull()
				.satisfies((own) -> assertThat(Carry.isStricter(episode, own)).isFalse());
		}
		owesAsMuch(union, part);
	}

	/** Nobody asked, reported or examined since. */
	private static void owesAsMuch(DayAssessment union, DayAssessment part) {
		assertThat(standing(union)).containsAll(standing(part));
		if (part.seen().unasked() != null) {
			assertThat(union.seen().unasked()).isNotNull();
			assertThat(union.clearance()).isLessThanOrEqualTo(Clearance.EASY_ONLY);
		}
		if (part.state().silence() != null && part.state().silence().owedSince() != null) {
			assertThat(union.state().silence()).isNotNull()
				.satisfies((silence) -> assertThat(silence.owedSince()).isNotNull());
		}
	}

	private static List<String> standing(DayAssessment day) {
		return day.state().holds().stream().filter((hold) -> !hold.resumed()).map(HoldState::cause).toList();
	}

	private PersonId entry(String name) {
		As.nobody();
		return this.people.addAthlete(this.team.id(), new NewAthlete(name, null, null, LocalDate.of(1995, 5, 5), null))
			.id();
	}

	/** A baseline, in every other entry. */
	private void quiet(Random random, PersonId entry) {
		if (random.nextBoolean()) {
			return;
		}
		List<NewMorning> quiet = IntStream.range(0, QUIET)
			.mapToObj((i) -> NewMorning.measured(FIRST.plusDays(i), Method.STRAP, Posture.LYING, 49.0 + i % 3, null))
			.toList();
		assertThat(this.mornings.takeIn(entry, quiet, this.coach)).hasSize(QUIET);
	}

	private void live(Random random, PersonId entry) {
		if (random.nextInt(3) > 0) {
			morning(random, entry);
		}
		switch (random.nextInt(16)) {
			case 0 -> this.illness.report(entry, new NewReport(this.today,
					ReportKind.values()[random.nextInt(ReportKind.values().length)], 1 + random.nextInt(9), null, null),
					byCoach());
			case 1, 2 -> this.clearances.clear(entry,
					new NewClearance(this.today, random.nextBoolean() ? null : this.today.plusDays(random.nextInt(5)),
							random.nextBoolean() ? Clearance.FULL_TRAINING : Clearance.EASY_ONLY, "Dr Hill", "GP",
							null),
					byCoach());
			case 3, 4 -> this.illness.withdraw(entry, "no illness", byCoach());
			case 5 -> this.illness.hold(entry, this.today, "something is wrong", byCoach());
			case 6 -> this.slips.asked(entry, "asked", byCoach());
			case 7 -> this.sessions.save(entry, new NewSession(null, this.today, Activity.RUN, 40, 3.0, Intensity.EASY,
					List.of(AfterSession.values()[random.nextInt(AfterSession.values().length)]), false, null, null),
					byAthlete(entry));
			default -> {
			}
		}
	}

	private void morning(Random random, PersonId entry) {
		NewMorning morning = measured(random.nextInt(6) == 0 ? 62 : 48 + random.nextInt(4));
		Symptom felt = Symptom.values()[random.nextInt(Symptom.values().length)];
		if (random.nextInt(4) == 0 && !felt.isInOwnWords()) {
			morning = morning.with(ReportedSymptom.of(felt, Severity.values()[random.nextInt(3)]));
		}
		if (random.nextInt(8) == 0) {
			morning = morning.answering(random.nextBoolean() ? Meanwhile.NO : Meanwhile.ill(this.today.minusDays(1)));
		}
		boolean slipped = random.nextInt(5) == 0;
		if (slipped) {
			morning = measured(50).with(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.SEVERE));
		}
		save(entry, morning);
		if (slipped) {
			this.clock.advance(Duration.ofSeconds(20));
			LocalDate day = this.today;
			CurrentPerson.callAs(entry,
					() -> this.slips.slip(entry, day, Tick.of(Symptom.CHEST_PAIN), byAthlete(entry)));
		}
		this.clock.advance(Duration.ofSeconds(20));
	}

	private NewMorning measured(double bpm) {
		return NewMorning.measured(this.today, Method.STRAP, Posture.LYING, bpm, null);
	}

	private void save(PersonId entry, NewMorning morning) {
		this.mornings.save(entry, morning, byAthlete(entry));
	}

	private List<DayAssessment> assessed(PersonId entry) {
		this.assessments.bringUpTo(List.of(entry), this.today);
		return this.assessments.day(entry, this.today).stream().toList();
	}

	private Submission byAthlete(PersonId entry) {
		return Submission.page(entry, Role.ATHLETE, Ids.next());
	}

	private Submission byCoach() {
		return Submission.page(this.coach, Role.COACH, Ids.next());
	}

	/** Who covers whom is asked once a request. */
	private static void freshRequest() {
		RequestContextHolder.resetRequestAttributes();
	}

}
