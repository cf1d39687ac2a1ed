package org.fallow.baseline;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;

import org.assertj.core.data.Offset;
import org.fallow.illness.core.SharedData;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class SustainedRiseTest {

	/**
	 * NIST/SEMATECH e-Handbook 6.3.2.3: target 325, k 0.3175, h 4.1959; published sums at
	 * 13, 14 and 20, and the points beyond h.
	 */
	@Test
	void followsThePublishedCusum() throws IOException {
		List<Double> sums = new ArrayList<>();
		double sum = 0;
		for (String line : Files.readAllLines(SharedData.folder().resolve("nist_charts.csv"))) {
			if (line.startsWith("cusum,")) {
				sum = SustainedRise.next(sum, Double.parseDouble(line.split(",")[2]) - 325, 0.3175);
				sums.add(sum);
			}
		}
		Offset<Double> printed = Offset.offset(0.0051);
		assertThat(sums).hasSize(20);
		assertThat(sums.get(12)).isCloseTo(3.01, printed);
		assertThat(sums.get(13)).isCloseTo(4.94, printed);
		assertThat(sums.get(19)).isCloseTo(19.04, printed);
		for (int t = 1; t <= 20; t++) {
			assertThat(sums.get(t - 1) > 4.1959).as("signal at " + t).isEqualTo(t >= 14);
		}
	}

}
