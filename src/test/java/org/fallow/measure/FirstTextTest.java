package org.fallow.measure;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;

import org.fallow.entry.Method;
import org.fallow.measure.FirstText.Morning;
import org.fallow.measure.Readings.Reading;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The first text's alarm worked out by hand, over a baseline of 50 bpm with a spread of
 * 1: tolerance 3, slack 3, limit 8.
 */
class FirstTextTest {

	private static final int BEFORE = 20;

	@Test
	void soundsOnTheSecondMorningAboveTheTolerance() {
		assertThat(alarms(54, 54)).containsExactly(false, true);
		assertThat(alarms(53, 53)).containsExactly(false, false);
		assertThat(alarms(54, 50, 54)).containsExactly(false, false, true);
		assertThat(alarms(54, 50, 50, 54)).containsExactly(false, false, false, false);
	}

	@Test
	void soundsOnOneMorningAboveTwiceTheTolerance() {
		assertThat(alarms(56)).containsExactly(false);
		assertThat(alarms(57)).containsExactly(true);
	}

	@Test
	void soundsOnARiseThatSumsUpUntilTwoMorningsWithinTheBand() {
		// sums 3, 1, 4, 2, 5, 3, 6, 4, 7, 5, 8: the signal comes with the eleventh
		assertThat(alarms(56, 51, 56, 51, 56, 51, 56, 51, 56, 51, 56).get(10)).isTrue();
		// sums 4 and 8; then the signal stands one morning within the band, and ends with
		// the second
		assertThat(alarms(57, 57, 50, 50)).containsExactly(true, true, true, false);
	}

	@Test
	void callsALoneHigherMorningQuietByTheMedian() {
		assertThat(mornings(50, 50, 56).get(2).quiet()).isTrue();
		assertThat(mornings(56, 56, 56).get(2).quiet()).isFalse();
		assertThat(mornings(50, 50, 44).get(2).quiet()).isFalse();
	}

	private static List<Boolean> alarms(int... bpm) {
		return mornings(bpm).stream().map(Morning::alarm).toList();
	}

	private static List<Morning> mornings(int... bpm) {
		TreeMap<LocalDate, Reading> readings = new TreeMap<>();
		for (int i = 0; i < BEFORE; i++) {
			readings.put(Readings.FIRST.plusDays(i), new Reading(50.0, null, false));
		}
		for (int i = 0; i < bpm.length; i++) {
			readings.put(Readings.FIRST.plusDays(BEFORE + i), new Reading((double) bpm[i], null, false));
		}
		List<Morning> all = FirstText.of(Diary.healthy(new Readings("A", Method.STRAP, readings)));
		return all.subList(all.size() - bpm.length, all.size());
	}

}
