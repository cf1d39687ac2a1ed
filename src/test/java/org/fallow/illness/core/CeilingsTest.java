package org.fallow.illness.core;

import org.fallow.rules.Clearance;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/** Coaches' ceilings: lifted by name, the strictest of those left wins. */
class CeilingsTest {

	private static final Spoken CLINICIAN = new Spoken(Spoken.By.CLINICIAN, "a clinician");

	private static final Spoken GUARDIAN = new Spoken(Spoken.By.GUARDIAN, "a guardian");

	private static Story two() {
		return Story.ofAKnownAthlete()
			.adult()
			.well(0, 12)
			.stricter(0, 10, Clearance.EASY_ONLY, "easy", null)
			.stricter(1, 9, Clearance.REST, "rest", null);
	}

	@Test
	void holdsToItsLastDay() {
		Story story = two();
		assertThat(story.clearance(9)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(10)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.clearance(11)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void isLiftedAloneFromItsRecordingOn() {
		Story story = two().lifted(4, "rest", null);
		assertThat(story.clearance(3)).isEqualTo(Clearance.REST);
		assertThat(story.clearance(4)).isEqualTo(Clearance.EASY_ONLY);
		assertThat(story.on(4).clinic().ceilings()).extracting(ClinicEvidence.Ceiling::key).containsExactly("easy");
		assertThat(story.lifted(5, "easy", null).clearance(5)).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void keepsWhatIsNotNamedAndTheCliniciansCeiling() {
		Story story = two().cleared(0, null, Clearance.REST).lifted(4, "rest", null).lifted(4, "easy", null);
		assertThat(story.clearance(4)).isEqualTo(Clearance.REST);
		assertThat(two().lifted(4, "unknown", null).clearance(4)).isEqualTo(Clearance.REST);
	}

	@Test
	void isNotLiftedBeforeItWasSet() {
		Story story = Story.ofAKnownAthlete().adult().well(0, 3).lifted(0, "later", null);
		assertThat(story.stricter(1, 3, Clearance.REST, "later", null).clearance(2)).isEqualTo(Clearance.REST);
	}

	@Test
	void thatNamesAWordIsLiftedByThatSortOfWordOnly() {
		for (Spoken said : new Spoken[] { CLINICIAN, GUARDIAN }) {
			Spoken other = (said == CLINICIAN) ? GUARDIAN : CLINICIAN;
			assertThat(named(said).lifted(2, "named", null).clearance(2)).isEqualTo(Clearance.EASY_ONLY);
			assertThat(named(said).lifted(2, "named", other).clearance(2)).isEqualTo(Clearance.EASY_ONLY);
			assertThat(named(said).lifted(2, "named", said).clearance(2)).isEqualTo(Clearance.FULL_TRAINING);
		}
	}

	private static Story named(Spoken said) {
		return Story.ofAKnownAthlete().adult().well(0, 3).stricter(0, 9, Clearance.EASY_ONLY, "named", said);
	}

	@Test
	void tellsEachWithItsLastDay() {
		assertThat(two().reasons(2)).containsExactly("reason.coach-ceiling", "reason.coach-ceiling");
		assertThat(two().on(2).reasons().get(0).arguments()).containsExactly("REST", Story.day(9));
	}

}
