package org.fallow.baseline;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;

import org.assertj.core.data.Offset;
import org.fallow.illness.core.SharedData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class SmoothingTest {

	/**
	 * NIST/SEMATECH e-Handbook 6.3.2.4 (R): weight 0.3, start 50; all twenty published
	 * points, of which 1, 2 and 20 are 50.60, 49.52 and 51.99.
	 */
	@Test
	void followsThePublishedLine() throws IOException {
		List<String> rows = Files.readAllLines(SharedData.folder().resolve("nist_charts.csv"))
			.stream()
			.filter((line) -> line.startsWith("ewma,"))
			.toList();
		List<Double> line = new ArrayList<>();
		double point = 50;
		for (String row : rows) {
			point = Smoothing.next(point, Double.parseDouble(row.split(",")[2]), 0.3);
			line.add(point);
			assertThat(point).as(row).isCloseTo(Double.parseDouble(row.split(",")[3]), Offset.offset(0.0051));
		}
		assertThat(line).hasSize(20);
		assertThat(line.get(0)).isCloseTo(50.60, Offset.offset(0.005));
		assertThat(line.get(1)).isCloseTo(49.52, Offset.offset(0.005));
		assertThat(line.get(19)).isCloseTo(51.99, Offset.offset(0.005));
	}

	@Test
	void isTheValueItselfWithAllTheWeight() {
		assertThat(Smoothing.next(50, 60, 1)).isEqualTo(60);
	}

	@ParameterizedTest
	@ValueSource(doubles = { 0, -0.1, 1.01, Double.NaN })
	void refusesAWeightThatIsNone(double weight) {
		assertThatIllegalArgumentException().isThrownBy(() -> Smoothing.next(50, 60, weight));
	}

	@ParameterizedTest
	@ValueSource(doubles = { Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY })
	void refusesWhatIsNoNumber(double bad) {
		assertThatIllegalArgumentException().isThrownBy(() -> Smoothing.next(bad, 60, 0.3));
		assertThatIllegalArgumentException().isThrownBy(() -> Smoothing.next(50, bad, 0.3));
	}

}
