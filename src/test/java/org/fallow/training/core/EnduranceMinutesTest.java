package org.fallow.training.core;

import java.util.List;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class EnduranceMinutesTest {

	/** Common practice, no source: twenty minutes of each run come before endurance. */
	@Test
	void leavesOutTheRampOfEachRun() {
		assertThat(EnduranceMinutes.of(List.of(30)).minutes()).isEqualTo(10);
		assertThat(EnduranceMinutes.of(List.of(45, 45)).minutes()).isEqualTo(50);
		assertThat(EnduranceMinutes.of(List.of(90)).minutes()).isEqualTo(70);
	}

	@Test
	void givesNothingForShortRunsOrNone() {
		assertThat(EnduranceMinutes.of(List.of()).minutes()).isZero();
		assertThat(EnduranceMinutes.of(List.of(0, 20, 12)).minutes()).isZero();
		assertThat(EnduranceMinutes.of(List.of(12, 21)).minutes()).isEqualTo(1);
	}

	@Test
	void refusesNegativeMinutes() {
		assertThatIllegalArgumentException().isThrownBy(() -> EnduranceMinutes.of(List.of(30, -1)));
		assertThatIllegalArgumentException().isThrownBy(() -> new EnduranceMinutes(-1));
	}

}
