package org.fallow.account;

import java.time.Duration;
import java.time.Instant;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class TriesTest {

	private static final Instant NOW = Instant.parse("2026-03-01T07:00:00Z");

	@Test
	void doublesTheWaitFromTheFifthFailureToAQuarterOfAnHour() {
		Tries tries = new Tries(0, NOW, NOW);
		long[] waits = { 0, 0, 0, 0, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900, 900 };
		for (long wait : waits) {
			tries = tries.failedAt(NOW, 5);
			assertThat(tries.waitAt(NOW)).isEqualTo(Duration.ofSeconds(wait));
		}
	}

	@Test
	void waitsToTheMoment() {
		Tries tries = new Tries(4, NOW, NOW).failedAt(NOW, 5);
		assertThat(tries.waitAt(NOW.plusMillis(1999))).isEqualTo(Duration.ofMillis(1));
		assertThat(tries.waitAt(NOW.plusSeconds(2))).isZero();
	}

	@Test
	void forgivesOneFailureForEachQuarterOfAnHour() {
		Tries tries = new Tries(8, NOW, NOW);
		assertThat(tries.failedAt(NOW.plus(Duration.ofMinutes(44)), 5).failures()).isEqualTo(7);
		assertThat(tries.failedAt(NOW.plus(Duration.ofMinutes(45)), 5).failures()).isEqualTo(6);
		assertThat(tries.failedAt(NOW.plus(Duration.ofDays(2)), 5).failures()).isEqualTo(1);
	}

	@Test
	void standsAClockThatIsBehind() {
		Tries tries = new Tries(8, NOW, NOW).failedAt(NOW.minus(Duration.ofHours(1)), 5);
		assertThat(tries.failures()).isEqualTo(9);
	}

	@Test
	void takesATryBackThatSucceeded() {
		Tries tries = new Tries(19, NOW, NOW).failedAt(NOW, 20);
		assertThat(tries.waitAt(NOW)).isPositive();
		assertThat(tries.withoutOne(20).waitAt(NOW)).isZero();
		assertThat(tries.withoutOne(20).failures()).isEqualTo(19);
	}

	@Test
	void countsAnIPv6NetworkAsOne() {
		assertThat(SignInDelay.Key.network("2001:db8:0:1::5")).isEqualTo(SignInDelay.Key.network("2001:db8:0:1:9::"))
			.isNotEqualTo(SignInDelay.Key.network("2001:db8:0:2::5"));
		assertThat(SignInDelay.Key.network("192.0.2.1")).isNotEqualTo(SignInDelay.Key.network("192.0.2.2"));
	}

}
