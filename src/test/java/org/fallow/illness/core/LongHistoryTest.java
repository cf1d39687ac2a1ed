package org.fallow.illness.core;

import java.util.List;

import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/** Three hundred years of history are lived day by day like any other. */
class LongHistoryTest {

	private static final int THEN = (int) (Story.DAY_0.minusYears(300).toEpochDay() - Story.DAY_0.toEpochDay());

	@Test
	void livesThroughThreeHundredYears() {
		Story story = Story.ofAKnownAthlete().well(THEN, THEN + 300).well(0).rhr(1, 62);
		List<DayAssessment> days = story.lived(1);
		assertThat(days).hasSize(1 - THEN + 1);
		assertThat(days.get(300).clearance()).isEqualTo(Clearance.FULL_TRAINING);
		assertThat(days.get(301).clearance()).isEqualTo(Clearance.NOT_ASSESSED);
		assertThat(days.get(days.size() - 1).clearance()).isEqualTo(Clearance.REST);
		assertThat(days.get(days.size() - 1).rhr().baseline()).isEqualTo(50);
	}

	@Test
	void refersForThreeHundredYearsWithoutAClearance() {
		Story story = Story.ofANewcomer().sick(THEN, Symptom.CHEST_PAIN, Severity.MILD);
		assertThat(story.lived(0)).allMatch((day) -> day.clearance() == Clearance.REFER);
	}

}
