package org.fallow.measure;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;

import org.fallow.baseline.Statistics;
import org.fallow.measure.HealthyShares.Alarm;
import org.fallow.measure.Windows.Decided;
import org.fallow.rules.Clearance;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * The numbers to hold on a small made-up sample, in every build; docs/measured.md has the
 * whole.
 */
class MeasureTest {

	private static final int PEOPLE = 40;

	private static final long SEED = 7;

	@Test
	void holdsTheNumbersOnASmallSample() {
		for (Noise noise : List.of(Noise.TWO_BPM, Noise.THREE_BPM)) {
			Measurement measured = Measurement.madeUp(noise, PEOPLE, SEED);
			assertThat(measured.full()).as(noise.name()).isGreaterThanOrEqualTo(MeasuredReport.FULL);
			assertThat(measured.returns().openAtOnce()).isGreaterThanOrEqualTo(MeasuredReport.OPEN);
			assertThat(measured.returns().meanWait()).isLessThan(MeasuredReport.WAIT_DAYS);
			assertThat(measured.returns().backWithinFourteenDays()).isLessThan(MeasuredReport.BACK);
			assertThat(measured.returns().medianToStageThree()).isBetween(15L, MeasuredReport.STAGE_THREE_DAYS);
		}
	}

	@Test
	void holdsWhatTheLineIsTakenForOnASmallSample() {
		Beside two = Beside.madeUp(Noise.TWO_BPM, PEOPLE, 1, SEED);
		Beside three = Beside.madeUp(Noise.THREE_BPM, PEOPLE, 1, SEED);
		assertThat(two.second().steps.value()).isGreaterThanOrEqualTo(BesideReport.FOUND_AT_TWO);
		assertThat(three.second().steps.value()).isGreaterThanOrEqualTo(BesideReport.FOUND_AT_THREE)
			.isGreaterThan(three.first().steps.value());
		assertThat(three.asked().value()).isGreaterThanOrEqualTo(BesideReport.ASKED_AT_THREE);
		assertThat(three.second().quietAlone.value()).isLessThanOrEqualTo(BesideReport.STILL_UP)
			.isLessThan(three.first().quietAlone.value());
		assertThat(three.second().perMonth(three.mornings())).isLessThanOrEqualTo(BesideReport.ALARMS_AT_THREE + 0.1);
	}

	@Test
	void countsEveryMorningOnce() {
		HealthyShares shares = Measurement.madeUp(Noise.TEN_PERCENT, PEOPLE, SEED).healthy();
		double sum = 0;
		for (Clearance clearance : Clearance.values()) {
			sum += shares.share(clearance);
		}
		assertThat(sum).isEqualTo(1.0, within(1e-9));
		assertThat(shares.people()).isEqualTo(PEOPLE);
		assertThat(shares.share(Clearance.REFER)).isZero();
		assertThat(shares.share(Alarm.ANY_RHR)).isGreaterThanOrEqualTo(shares.share(Alarm.HIGH));
		assertThat(shares.inBand()).isBetween(0.7, 0.95);
	}

	@Test
	void findsMoreAlarmsInIllnessThanInHealth() {
		List<Decided> people = Measurement.feverish(Noise.TWO_BPM, PEOPLE, SEED).stream().map(Decided::of).toList();
		Windows ill = Windows.aroundOnset(people, 0, 7, 3, Alarm.ABOVE_THE_LINE);
		Windows healthy = Windows.healthy(people, 7, 3, Alarm.ABOVE_THE_LINE);
		assertThat(ill.windows()).isEqualTo(PEOPLE);
		assertThat(ill.lower()).isGreaterThan(healthy.upper());
	}

	@Test
	void missesAtMostOneMorningInTen() {
		Readings readings = Readings.madeUp("A", Noise.TWO_BPM, 100, new Random(SEED));
		assertThat(readings.mornings()).hasSize(90);
		for (int block = 0; block < 10; block++) {
			LocalDate from = Readings.FIRST.plusDays(10L * block);
			assertThat(readings.between(from, from.plusDays(10))).hasSize(9);
		}
	}

	@Test
	void scattersAsItSays() {
		Random chance = new Random(SEED);
		double squares = 0;
		int n = 0;
		for (int i = 0; i < 200; i++) {
			double[] bpm = Readings.madeUp("A", Noise.THREE_BPM, 200, chance)
				.mornings()
				.values()
				.stream()
				.mapToDouble(Readings.Reading::rhr)
				.toArray();
			double sd = Statistics.sd(bpm);
			squares += sd * sd;
			n++;
		}
		assertThat(Math.sqrt(squares / n)).isEqualTo(3.0, within(0.1));
	}

}
