package org.fallow.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.fallow.measure.Windows.Decided;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Measures the default rules on open and made-up mornings and writes what comes out
 * between the marks of docs/measured.md. By hand:
 * {@code mvn test -Dgroups=measure -DexcludedGroups=}.
 */
@Tag("measure")
class MeasuredTests {

	private static final Path DOCUMENT = Path.of("docs", "measured.md");

	private static final String BEGIN = "<!-- measured: begin -->";

	private static final String END = "<!-- measured: end -->";

	private static final int PEOPLE = 1_000;

	private static final int FEVERISH = 300;

	private static final long SEED = 20_260_101;

	@Test
	void writesWhatWasMeasured() throws IOException {
		List<OpenData.Person> people = OpenData.people();
		List<Measurement> measured = new ArrayList<>();
		Map<Noise, List<Decided>> feverish = new LinkedHashMap<>();
		for (Noise noise : List.of(Noise.TWO_BPM, Noise.THREE_BPM, Noise.TEN_PERCENT)) {
			measured.add(Measurement.madeUp(noise, PEOPLE, SEED));
			feverish.put(noise, Measurement.feverish(noise, FEVERISH, SEED).stream().map(Decided::of).toList());
		}
		measured.add(Measurement.open(people));
		List<Decided> decided = people.stream().map(Decided::of).toList();
		List<Beside> beside = new ArrayList<>();
		for (Noise noise : feverish.keySet()) {
			beside.add(Beside.madeUp(noise, FEVERISH, 2, SEED));
		}
		beside.add(Beside.open(people, false, 10, SEED));
		beside.add(Beside.open(people, true, 10, SEED));
		String tables = MeasuredReport.of(measured, decided, feverish) + "\n" + BesideReport.of(beside);
		System.out.println(tables);
		String document = Files.readString(DOCUMENT);
		assertThat(document).contains(BEGIN, END);
		Files.writeString(DOCUMENT, document.substring(0, document.indexOf(BEGIN) + BEGIN.length()) + "\n\n" + tables
				+ "\n" + document.substring(document.indexOf(END)));
	}

}
