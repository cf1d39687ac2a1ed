package org.fallow.training;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.NobodyOperates;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Team;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.access.AccessDeniedException;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

@DatabaseTest
@NobodyOperates
class ProgrammesTests {

	private static final LocalDate MONDAY = LocalDate.of(2026, 3, 16);

	@Autowired
	private People people;

	@Autowired
	private Posts posts;

	@Autowired
	private Programmes programmes;

	private UUID group;

	private PersonId coach;

	private PersonId deputy;

	private PersonId athlete;

	private PersonId stranger;

	@BeforeEach
	void makeAGroup() {
		UUID club = this.people.foundClub("Club " + UUID.randomUUID()).id();
		Team team = this.people.addTeam(club, "Team", ZoneOffset.UTC);
		this.group = this.people.findOrAddGroup(team.id(), "Track").id();
		this.coach = this.people.addCoach(team.id(), "Cay");
		this.deputy = this.people.addPerson("Del", ZoneOffset.UTC);
		this.posts.give(this.deputy, new NewPost(Post.DEPUTY, club, team.id(), false, List.of(this.group),
				LocalDate.of(2099, 1, 1).atStartOfDay().toInstant(ZoneOffset.UTC)));
		this.athlete = this.people.addAthlete(team.id(), new NewAthlete("Ann", null, null, null, "Track")).id();
		this.stranger = this.people.addCoach(this.people.addTeam(club, "Other", ZoneOffset.UTC).id(), "Sam");
	}

	@Test
	void keepsAWeekAsItWasWritten() {
		ProgrammeWeek week = week(40);
		CurrentPerson.runAs(this.coach,
				() -> assertThat(this.programmes.write(this.group, week, 0, this.coach)).isTrue());
		StoredWeek stored = CurrentPerson.callAs(this.athlete,
				() -> this.programmes.week(this.group, MONDAY.plusDays(3)));
		assertThat(stored.week()).isEqualTo(week);
		assertThat(stored.revision()).isOne();
		assertThat(CurrentPerson.callAs(this.athlete,
				() -> this.programmes.weeks(this.group, MONDAY.plusDays(6), MONDAY.plusDays(8))))
			.containsOnlyKeys(MONDAY);
	}

	@Test
	void isEmptyWhereNobodyWrote() {
		CurrentPerson.runAs(this.coach, () -> {
			StoredWeek week = this.programmes.week(this.group, MONDAY);
			assertThat(week.week().sessions()).isEmpty();
			assertThat(week.revision()).isZero();
			assertThat(this.programmes.goBack(this.group, MONDAY, 0, this.coach)).isFalse();
		});
	}

	@Test
	void tellsTheSecondOfTwoWhoEditOneWeek() {
		CurrentPerson.runAs(this.coach, () -> {
			assertThat(this.programmes.write(this.group, week(40), 0, this.coach)).isTrue();
			assertThat(this.programmes.write(this.group, week(50), 0, this.coach)).isFalse();
			assertThat(this.programmes.week(this.group, MONDAY).week()).isEqualTo(week(40));
		});
	}

	@Test
	void goesBackStepByStep() {
		CurrentPerson.runAs(this.coach, () -> {
			this.programmes.write(this.group, week(40), 0, this.coach);
			this.programmes.write(this.group, week(50), 1, this.coach);
			this.programmes.write(this.group, week(60), 2, this.coach);
			assertThat(this.programmes.goBack(this.group, MONDAY, 2, this.coach)).isFalse();
			assertThat(this.programmes.goBack(this.group, MONDAY, 3, this.coach)).isTrue();
			assertThat(minutes()).isEqualTo(50);
			assertThat(this.programmes.goBack(this.group, MONDAY, 4, this.coach)).isTrue();
			assertThat(minutes()).isEqualTo(40);
			this.programmes.write(this.group, week(70), 5, this.coach);
			assertThat(this.programmes.goBack(this.group, MONDAY, 6, this.coach)).isTrue();
			assertThat(minutes()).isEqualTo(40);
			assertThat(this.programmes.goBack(this.group, MONDAY, 7, this.coach)).isTrue();
			assertThat(minutes()).isZero();
			assertThat(this.programmes.goBack(this.group, MONDAY, 8, this.coach)).isFalse();
		});
	}

	@Test
	void isWrittenByCoachesInChargeOnly() {
		for (PersonId other : List.of(this.athlete, this.deputy, this.stranger)) {
			assertThatExceptionOfType(AccessDeniedException.class).isThrownBy(
					() -> CurrentPerson.runAs(other, () -> this.programmes.write(this.group, week(40), 0, other)));
		}
		assertThatExceptionOfType(AccessDeniedException.class)
			.isThrownBy(() -> CurrentPerson.runAs(this.stranger, () -> this.programmes.week(this.group, MONDAY)));
		CurrentPerson.runAs(this.deputy, () -> assertThat(minutes()).isZero());
	}

	private int minutes() {
		return this.programmes.week(this.group, MONDAY).week().minutes();
	}

	private static ProgrammeWeek week(int minutes) {
		PlannedSession easy = new PlannedSession("a", MONDAY.plusDays(1), PlannedSession.Kind.EASY_RUN,
				PlannedSession.Terrain.FLAT, null, "", "",
				List.of(Part.of(Part.Role.BLOCK, (minutes - 30) * 60, Intensity.EASY)));
		PlannedSession hard = new PlannedSession("b", MONDAY.plusDays(3), PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "Track", "Repeats",
				List.of(Part.of(Part.Role.WARM_UP, 900, Intensity.EASY),
						new Part(Part.Role.BLOCK, 3, 400, 100, Intensity.VO2MAX, 60),
						Part.of(Part.Role.COOL_DOWN, 480, Intensity.EASY)));
		return new ProgrammeWeek(MONDAY, ProgrammeWeek.Kind.LOADING, List.of(easy, hard));
	}

}
