package org.fallow.team;

import java.time.ZoneOffset;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseTest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

@DatabaseTest
class SquadTests {

	@Autowired
	private People people;

	@Autowired
	private Squad squad;

	private Team own;

	private Team other;

	private PersonId coach;

	@BeforeEach
	void makeTwoTeams() {
		Club club = this.people.foundClub("Club " + UUID.randomUUID());
		this.own = this.people.addTeam(club.id(), "Own", ZoneOffset.UTC);
		this.other = this.people.addTeam(club.id(), "Other", ZoneOffset.UTC);
		this.coach = this.people.addCoach(this.own.id(), "Cay");
	}

	@Test
	void showsACoachOwnTeamsOnly() {
		Athlete mine = this.people.addAthlete(this.own.id(), NewAthlete.named("Ann"));
		Athlete theirs = this.people.addAthlete(this.other.id(), NewAthlete.named("Bea"));
		assertThat(this.squad.athletesOf(this.coach)).containsExactly(mine);
		assertThat(this.squad.mayCoach(this.coach, mine.id())).isTrue();
		assertThat(this.squad.mayCoach(this.coach, theirs.id())).isFalse();
		assertThat(this.squad.mayCoach(mine.id(), mine.id())).isFalse();
		assertThat(this.squad.mayCoachTeam(this.coach, this.other.id())).isFalse();
		assertThat(this.squad.teamsOf(this.coach)).extracting(Team::name).containsExactly("Own");
	}

	@Test
	void findsAnAthleteOfAFileAgain() {
		NewAthlete athlete = new NewAthlete("Dee", "P7", null, null, "Spring half");
		Athlete added = this.people.addAthlete(this.own.id(), athlete);
		assertThat(this.people.find(this.own.id(), "P7")).contains(added);
		assertThat(this.people.find(this.own.id(), "dee")).contains(added);
		assertThat(this.people.find(this.other.id(), "P7")).isEmpty();
		assertThat(this.squad.groupsOf(this.own.id())).extracting(Group::name).containsExactly("Spring half");
	}

	@Test
	void answersThatAStrangerIsNoAthlete() {
		assertThatExceptionOfType(NoSuchAthlete.class).isThrownBy(() -> this.squad.athlete(this.coach));
	}

}
