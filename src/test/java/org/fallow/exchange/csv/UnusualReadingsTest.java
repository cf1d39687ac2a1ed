package org.fallow.exchange.csv;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.illness.core.SharedData;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class UnusualReadingsTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	@Test
	void tellsOfAReadingThirtyFromTheMedianAndOfNoneAt29() {
		assertThat(notices("50", "50", "50", "50", "80")).singleElement().satisfies((notice) -> {
			assertThat(notice.line()).isEqualTo(6);
			assertThat(notice.notice()).isTrue();
			assertThat(notice.value()).isEqualTo("80.0");
		});
		assertThat(notices("50", "50", "50", "50", "20")).hasSize(1);
		assertThat(notices("50", "50", "50", "50", "79")).isEmpty();
		assertThat(notices("50", "50", "50", "90")).isEmpty();
	}

	@Test
	void tellsOfBothSuspectRowsOfTheOpenDataAndOfFewOthers() {
		Path data = SharedData.folder().resolve("covid_onset_daily.csv");
		CsvFile file = CsvFile.open(data);
		ColumnMapping guess = ColumnMapping.guess(file.headers());
		Map<ImportField, Integer> columns = new TreeMap<>(guess.columns());
		assertThat(columns.remove(ImportField.UNSURE)).isNotNull();
		Map<String, List<ReadRow>> byPerson = new TreeMap<>();
		List<RowProblem> problems = new ArrayList<>();
		new MorningFile(file.headers(), new ColumnMapping(columns, Method.WORN, Posture.LYING)).forEachRow(file, TODAY,
				(row) -> {
					problems.addAll(row.problems());
					if (row.problems().isEmpty()) {
						byPerson.computeIfAbsent(row.person(), (person) -> new ArrayList<>()).add(row);
					}
				});
		List<Long> told = byPerson.values()
			.stream()
			.flatMap((rows) -> UnusualReadings.of(rows).stream())
			.map(RowProblem::line)
			.sorted()
			.toList();
		assertThat(told).contains(468L, 2224L).hasSize(6);
		assertThat(problems.stream().collect(Collectors.groupingBy((p) -> p.reason().code(), Collectors.counting())))
			.containsEntry("entry.rmssd.range", 1L);
	}

	@Test
	void tellsOfTheRowsThatTheOpenDataItselfMarks() {
		CsvFile file = CsvFile.open(SharedData.folder().resolve("covid_onset_daily.csv"));
		List<ReadRow> good = new ArrayList<>();
		new MorningFile(file.headers(),
				new ColumnMapping(ColumnMapping.guess(file.headers()).columns(), Method.WORN, Posture.LYING))
			.forEachRow(file, TODAY, (row) -> {
				if (row.problems().isEmpty()) {
					good.add(row);
				}
			});
		assertThat(UnusualReadings.marked(good)).extracting(RowProblem::line).containsExactly(468L, 2224L);
	}

	private static List<RowProblem> notices(String... readings) {
		List<ReadRow> rows = new ArrayList<>();
		for (int i = 0; i < readings.length; i++) {
			ColumnMapping mapping = ColumnMapping.parse("PERSON=0 DAY=1 RHR=2 method=WORN posture=LYING");
			rows.add(RowReader.read(mapping, List.of("P", TODAY.minusDays(i).toString(), readings[i]), i + 2, TODAY));
		}
		return UnusualReadings.of(rows);
	}

}
