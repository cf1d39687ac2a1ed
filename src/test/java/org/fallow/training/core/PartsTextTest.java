package org.fallow.training.core;

import java.util.List;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.fallow.rules.Intensity;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

class PartsTextTest {

	@Test
	void readsASessionAsACoachJotsItDown() {
		assertThat(PartsText.read("15 min easy; 6 x 800 m in 3:10 VO2max, 90 s between; 10 min easy").parts())
			.containsExactly(Part.of(Part.Role.WARM_UP, 900, Intensity.EASY),
					new Part(Part.Role.BLOCK, 6, 800, 190, Intensity.VO2MAX, 90),
					Part.of(Part.Role.COOL_DOWN, 600, Intensity.EASY));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			45 min easy              | 1 |      | 2700 | EASY      | 0
			 1 h  EASY               | 1 |      | 3600 | EASY      | 0
			6x20s strides, 1 min between | 6 |  | 20   | STRIDES   | 60
			3 × 10 min threshold,2:30 between | 3 | | 600 | THRESHOLD | 150
			10 km in 52 min race pace | 1 | 10000 | 3120 | RACE_PACE | 0
			1.5 km in 6:00 steady    | 1 | 1500 | 360  | STEADY    | 0
			1,5 km in 6:00 Zügig     | 1 | 1500 | 360  | STEADY    | 0
			4 x 3 min Schwelle, 90 s dazwischen | 4 | | 180 | THRESHOLD | 90
			2 x 20 s Steigerungen, 1 min between | 2 | | 20 | STRIDES | 60""")
	void readsOnePart(String line, int repeats, Integer metres, int seconds, Intensity intensity, int between) {
		assertThat(PartsText.read(line).parts())
			.containsExactly(new Part(Part.Role.BLOCK, repeats, metres, seconds, intensity, between));
	}

	@ParameterizedTest
	@ValueSource(strings = { "easy", "45 easy", "45 min", "45 min quick", "0 min easy", "0 x 3 min easy",
			"101 x 1 min easy", "800 m threshold", "3:75 easy", "45 min rest", "1 min easy, 2 h between", "-5 min easy",
			"99999 h easy", "200000 m in 1 h easy" })
	void saysWhichPartItCannotRead(String line) {
		assertThat(PartsText.read("10 min easy; " + line).problem()).isEqualTo(Message.of("parts.unreadable", 2, line));
	}

	@Test
	void refusesNothingAndTooMuch() {
		assertThat(PartsText.read("  ").problem()).isEqualTo(Message.of("parts.none"));
		assertThat(PartsText.read("; ;").problem()).isNotNull();
		assertThat(PartsText.read("1 min easy;".repeat(41)).problem()).isEqualTo(Message.of("parts.long", 500, 40));
		assertThat(PartsText.read("1 min easy" + " ".repeat(20_000)).parts()).hasSize(1);
		assertThat(PartsText.read("1".repeat(20_000)).problem()).isNotNull();
	}

	@Property(tries = 1_000, seed = "20261126")
	void readsWhatItWrites(@ForAll("parts") List<Part> parts) {
		String line = PartsText.write(parts);
		PartsText.Reading reading = PartsText.read(line);
		assertThat(reading.problem()).as(line).isNull();
		assertThat(PartsText.write(reading.parts())).isEqualTo(line);
		assertThat(reading.parts()).usingElementComparatorIgnoringFields("role").isEqualTo(parts);
	}

	@Provide
	Arbitrary<List<Part>> parts() {
		Arbitrary<Integer> metres = Arbitraries.integers().between(1, 20_000).injectNull(0.5);
		Arbitrary<Intensity> intensities = Arbitraries.of(Intensity.class).filter((one) -> one != Intensity.REST);
		return Combinators
			.combine(Arbitraries.integers().between(1, 20), metres, Arbitraries.integers().between(1, 7_200),
					intensities, Arbitraries.integers().between(0, 600))
			.as((repeats, distance, seconds, intensity, between) -> new Part(Part.Role.BLOCK, repeats, distance,
					seconds, intensity, between))
			.list()
			.ofMinSize(1)
			.ofMaxSize(8);
	}

}
