package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;

import org.fallow.baseline.HrvFlag;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.Mark;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The stories demo-data/README.md promises for whatever weekday the demo is started on.
 */
class DemoStoriesTest {

	private static final Map<String, Map<LocalDate, DayAssessment>> DAYS = days();

	static Stream<LocalDate> lastDays() {
		return DemoFiles.SEASON_END.datesUntil(DemoFiles.LAST_WRITTEN.plusDays(1));
	}

	@ParameterizedTest
	@MethodSource("lastDays")
	void showsEveryStoryOfNow(LocalDate today) {
		assertThat(episode("TR01", today).path()).isEqualTo(PathName.SHORT);
		assertThat(episode("TR02", today).stage()).isEqualTo(1);
		assertThat(episode("TR03", today).stage()).isEqualTo(2);
		assertThat(episode("TR04", today).stage()).isEqualTo(3);
		assertThat(day("TR07", today).clearance()).isEqualTo(Clearance.REFER);
		assertThat(day("TR15", today).rhr().above()).isNotNull();
		assertThat(day("TR16", today).hrv().flag()).isEqualTo(HrvFlag.SUPPRESSED);
		assertThat(Stream.of("TR17", "TR19").map((code) -> day(code, today).clearance())).contains(Clearance.EASY_ONLY);
	}

	@ParameterizedTest
	@MethodSource("lastDays")
	void hasEverybodysEntryButTheQuietOnes(LocalDate today) {
		assertThat(DAYS.keySet()).hasSize(24)
			.allSatisfy((code) -> assertThat(day(code, today).mark() == Mark.NONE).isEqualTo(code.equals("TR11")));
	}

	@Test
	void opensClosesAndRelapsesAsTold() {
		assertThat(episode("TR05", LocalDate.of(2026, 4, 24)).path()).isEqualTo(PathName.LONG);
		assertThat(day("TR05", LocalDate.of(2026, 6, 1)).state().episode()).isNull();
		assertThat(day("TR06", LocalDate.of(2026, 3, 23)).clearance()).isEqualTo(Clearance.REFER);
		assertThat(day("TR06", LocalDate.of(2026, 3, 25)).clearance()).isEqualTo(Clearance.EASY_ONLY);
		assertThat(day("TR06", LocalDate.of(2026, 4, 15)).state().episode()).isNull();
		assertThat(day("TR13", LocalDate.of(2026, 5, 12)).rhr().reading()).isNull();
	}

	private static DayAssessment day(String code, LocalDate day) {
		DayAssessment found = DAYS.getOrDefault(code, Map.of()).get(day);
		assertThat(found).as(code + " " + day).isNotNull();
		return Objects.requireNonNull(found);
	}

	private static Episode episode(String code, LocalDate day) {
		return Objects.requireNonNull(day(code, day).state().episode(), code + " has no episode on " + day);
	}

	private static Map<String, Map<LocalDate, DayAssessment>> days() {
		Map<String, Map<LocalDate, DayAssessment>> all = new TreeMap<>();
		DemoTimelines.of(DemoFiles.unmoved()).forEach((code, timeline) -> {
			Map<LocalDate, DayAssessment> days = new TreeMap<>();
			DemoDecisionsTest.assess(timeline, DemoFiles.LAST_WRITTEN).forEach((day) -> days.put(day.day(), day));
			all.put(code, days);
		});
		return all;
	}

}
