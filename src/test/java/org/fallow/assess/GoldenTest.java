package org.fallow.assess;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The ten worked examples of shared/data/golden, written by an independent reference from
 * the decision text alone. All columns are compared but the reasons, whose codes are our
 * own; of these, whether there are any on a day that is less than full.
 */
class GoldenTest {

	@TempDir
	private Path folder;

	static List<GoldenCase> cases() {
		return GoldenCase.all();
	}

	@Test
	void findsTenCases() {
		assertThat(GoldenCase.all()).hasSizeGreaterThanOrEqualTo(10);
	}

	@ParameterizedTest
	@MethodSource("cases")
	void agreesWithTheReferenceOnEveryDay(GoldenCase golden) throws Exception {
		List<List<String>> rows = new ArrayList<>();
		new Assessing(golden.mornings(), golden.events(), new ColumnChoice(Map.of(), Method.OTHER, Posture.LYING),
				RuleBook.of(DefaultRules.ruleSet()), true, (note) -> {
				}, null)
			.into(rows::add);
		assertThat(rows.stream().map(GoldenTest::withoutReasons).toList())
			.isEqualTo(read(golden.expected()).stream().map(GoldenTest::withoutReasons).toList());
	}

	@ParameterizedTest
	@MethodSource("cases")
	void theCommandItselfAgreesInEveryColumn(GoldenCase golden) throws Exception {
		Path out = this.folder.resolve("assessments.csv");
		Ran ran = Ran.assess("--in", golden.mornings().toString(), "--out", out.toString(), "--events",
				golden.events().toString());
		assertThat(ran.code()).as(ran.said()).isZero();
		List<NamedCsvRecord> expected = read(golden.expected());
		List<NamedCsvRecord> written = read(out);
		assertThat(written).hasSameSizeAs(expected);
		for (int i = 0; i < expected.size(); i++) {
			assertThat(written.get(i).getHeader()).isEqualTo(expected.get(i).getHeader());
			assertThat(withoutReasons(written.get(i))).as("%s, line %d", golden, i + 2)
				.isEqualTo(withoutReasons(expected.get(i)));
			assertThat(written.get(i).getField("reasons").isEmpty()).as("%s, line %d", golden, i + 2)
				.isEqualTo(written.get(i).getField("clearance").equals("Full"));
		}
	}

	private static List<NamedCsvRecord> read(Path file) throws Exception {
		try (CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(file)) {
			return csv.stream().toList();
		}
	}

	private static Map<String, String> withoutReasons(List<String> row) {
		Map<String, String> named = new LinkedHashMap<>();
		for (int i = 0; i < row.size(); i++) {
			named.put(DayRow.COLUMNS.get(i), row.get(i));
		}
		named.remove("reasons");
		return named;
	}

	private static Map<String, String> withoutReasons(NamedCsvRecord row) {
		return withoutReasons(row.getFields());
	}

}
