package org.fallow.training;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
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
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.Version;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.security.access.AccessDeniedException;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/**
 * An athlete was ill in the first days of March; the group races on Sunday the 15th. A
 * cold of three mornings closes on the short path within the fortnight.
 */
@DatabaseTest
@Import(SettableClock.class)
@NobodyOperates
class RaceWordsTests {

	private static final LocalDate ONSET = LocalDate.of(2026, 3, 1);

	private static final LocalDate RACE = LocalDate.of(2026, 3, 15);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Programmes programmes;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Sessions sessions;

	@Autowired
	private Plans plans;

	@Autowired
	private RaceWords words;

	private PersonId coach;

	private PersonId deputy;

	private PersonId athlete;

	@BeforeEach
	void makeAGroupThatRaces() {
		this.clock.set(ONSET);
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		Team team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		UUID group = this.people.findOrAddGroup(team.id(), "Track").id();
		this.coach = this.people.addCoach(team.id(), "Cay");
		this.deputy = this.people.addPerson("Del", ZoneOffset.UTC);
		this.posts.give(this.deputy, new NewPost(Post.DEPUTY, club, team.id(), false, List.of(group),
				LocalDate.of(2099, 1, 1).atStartOfDay().toInstant(ZoneOffset.UTC)));
		this.athlete = this.people.addAthlete(team.id(), new NewAthlete("Ann", null, null, null, "Track")).id();
		PlannedSession race = new PlannedSession("r", RACE, PlannedSession.Kind.RACE, PlannedSession.Terrain.FLAT, null,
				"", "", List.of(Part.of(Part.Role.BLOCK, 1800, Intensity.RACE_PACE)));
		ProgrammeWeek week = new ProgrammeWeek(LocalDate.of(2026, 3, 9), ProgrammeWeek.Kind.RACE, List.of(race));
		CurrentPerson.runAs(this.coach, () -> this.programmes.write(group, week, 0, this.coach));
		LocalDate.of(2026, 3, 1).datesUntil(LocalDate.of(2026, 3, 4)).forEach((day) -> enter(day, Severity.MILD));
	}

	@Test
	void letsARaceBeRunAfterTheReturn() {
		well(LocalDate.of(2026, 3, 15));
		assertThat(race()).isEqualTo(Version.EASY);
		assertThat(say(RACE, true, "Eight easy days since, and a flat course.")).isEmpty();
		assertThat(race()).isEqualTo(Version.AS_PROGRAMMED);
		assertThat(say(RACE, false, "Thought better of it.")).isEmpty();
		assertThat(race()).isEqualTo(Version.EASY);
		assertThat(CurrentPerson.callAs(this.athlete, () -> this.words.of(this.athlete, RACE))).singleElement()
			.satisfies((word) -> {
				assertThat(word.agreed()).isFalse();
				assertThat(word.coach()).isEqualTo("Cay");
				assertThat(word.reason()).isEqualTo("Thought better of it.");
			});
	}

	@Test
	void isNotGivenWhileTheAthleteIsIll() {
		assertThat(say(RACE, true, "Sure.")).extracting(Problem::field).containsExactly("raceOn");
		assertThat(say(RACE, false, "No.")).isEmpty();
	}

	@Test
	void isEndedByANewIllness() {
		well(LocalDate.of(2026, 3, 12));
		assertThat(say(RACE, true, "All is well.")).isEmpty();
		this.clock.set(LocalDate.of(2026, 3, 13));
		enterSymptom(LocalDate.of(2026, 3, 13), Symptom.FEVERISH, Severity.MODERATE);
		assertThat(race()).isEqualTo(Version.REST);
		this.clock.set(RACE);
		assertThat(race()).isNotEqualTo(Version.AS_PROGRAMMED);
	}

	@Test
	void saysWhatIsMissing() {
		well(LocalDate.of(2026, 3, 12));
		assertThat(say(RACE, true, " ")).extracting(Problem::field).containsExactly("raceReason");
		assertThat(say(RACE, true, "x".repeat(2001))).extracting(Problem::field).containsExactly("raceReason");
		assertThat(say(RACE.plusDays(1), true, "Why not.")).extracting(Problem::field).containsExactly("raceOn");
		assertThat(say(null, true, "Why not.")).extracting(Problem::field).containsExactly("raceOn");
	}

	/** A race that has been run is no race to agree to. */
	@Test
	void knowsNoRaceOfThePast() {
		well(RACE.plusDays(1));
		assertThat(say(RACE, true, "It went well.")).extracting(Problem::field).containsExactly("raceOn");
		assertThat(CurrentPerson.callAs(this.coach, () -> this.words.races(this.athlete))).isEmpty();
	}

	@Test
	void isACoachsAlone() {
		for (PersonId other : List.of(this.athlete, this.deputy)) {
			assertThatExceptionOfType(AccessDeniedException.class).isThrownBy(() -> CurrentPerson.runAs(other,
					() -> this.words.say(this.athlete, RACE, true, "Please.", submission(other))));
		}
	}

	private List<Problem> say(@Nullable LocalDate race, boolean agreed, String reason) {
		this.clock.advance(Duration.ofMinutes(1));
		return CurrentPerson.callAs(this.coach,
				() -> this.words.say(this.athlete, race, agreed, reason, submission(this.coach)));
	}

	private Version race() {
		return CurrentPerson.callAs(this.coach, () -> this.plans.of(this.athlete, RACE).on(RACE)).get(0).version();
	}

	private void well(LocalDate until) {
		LocalDate.of(2026, 3, 4).datesUntil(until.plusDays(1)).forEach((day) -> {
			this.clock.set(day);
			save(NewMorning.measured(day, Method.STRAP, Posture.LYING, 50.0, 60.0));
			CurrentPerson.runAs(this.athlete, () -> this.sessions.save(this.athlete,
					NewSession.run(day, 20, 2.0, Intensity.EASY), submission(this.athlete)));
		});
	}

	private void enter(LocalDate day, Severity severity) {
		this.clock.set(day);
		enterSymptom(day, Symptom.RUNNY_NOSE, severity);
	}

	private void enterSymptom(LocalDate day, Symptom symptom, Severity severity) {
		save(NewMorning.feeling(day, new ReportedSymptom(symptom, severity, null)));
	}

	private void save(NewMorning morning) {
		CurrentPerson.runAs(this.athlete,
				() -> assertThat(this.mornings.save(this.athlete, morning, submission(this.athlete)))
					.isInstanceOf(Saved.Stored.class));
	}

	private static Submission submission(PersonId actor) {
		return Submission.page(actor, Role.COACH, UUID.randomUUID());
	}

}
