package org.fallow.training.core;

import java.util.Collections;
import java.util.List;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class SessionLoadTest {

	private static final List<Double> WEEK = List.of(300.0, 0.0, 450.0, 200.0, 0.0, 600.0, 150.0);

	/** Foster 2001, JSCR 15:109 (R): effort 5 for 60 minutes. */
	@Test
	void multipliesEffortAndMinutes() {
		assertThat(new SessionLoad(5, 60).load()).isEqualTo(300);
		assertThat(new SessionLoad(0, 1440).load()).isZero();
		assertThat(new SessionLoad(10, 0).load()).isZero();
	}

	/** Foster 2001, recomputed by us (D): mean over SD (n - 1). */
	@Test
	void givesTheMonotonyOfAWeek() {
		WeekLoad week = new WeekLoad(WEEK);
		assertThat(week.monotony()).isCloseTo(1.082232, Offset.offset(1e-6));
		assertThat(week.total()).isEqualTo(1700);
	}

	@Test
	void hasNoMonotonyWhereAllDaysAreAlike() {
		assertThat(new WeekLoad(Collections.nCopies(7, 100.0)).monotony()).isNull();
		assertThat(new WeekLoad(Collections.nCopies(7, 0.0)).monotony()).isNull();
	}

	@ParameterizedTest
	@ValueSource(doubles = { -0.1, 10.1, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesAnEffortOffTheScale(double rpe) {
		assertThatIllegalArgumentException().isThrownBy(() -> new SessionLoad(rpe, 60));
	}

	@ParameterizedTest
	@ValueSource(doubles = { -1, 1440.5, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesMinutesThatAreNone(double minutes) {
		assertThatIllegalArgumentException().isThrownBy(() -> new SessionLoad(5, minutes));
	}

	@ParameterizedTest
	@ValueSource(doubles = { -1, Double.NaN, Double.POSITIVE_INFINITY })
	void refusesALoadThatIsNone(double load) {
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new WeekLoad(List.of(1.0, 1.0, 1.0, load, 1.0, 1.0, 1.0)));
	}

	@Test
	void refusesAWeekOfAnotherLength() {
		assertThatIllegalArgumentException().isThrownBy(() -> new WeekLoad(WEEK.subList(0, 6)));
		assertThatIllegalArgumentException().isThrownBy(() -> new WeekLoad(Collections.nCopies(8, 1.0)));
	}

}
