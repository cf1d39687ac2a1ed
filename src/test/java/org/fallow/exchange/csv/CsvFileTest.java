package org.fallow.exchange.csv;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

class CsvFileTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	@TempDir
	@SuppressWarnings("NullAway.Init")
	private Path folder;

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			''                                   | importFile.empty
			'\n\n'                               | importFile.empty
			person,date,rhr                      | importFile.no-rows
			'person,date,rhr\n'                  | importFile.no-rows
			'person,date,Date\nP,2026-11-25,50'  | importFile.column-twice
			'person,date\n"P,2026-11-25\n'       | importFile.broken
			""")
	void saysWhatIsWrongWithAFile(String text, String code) throws IOException {
		Path file = file(text.replace("\\n", "\n"), StandardCharsets.UTF_8);
		assertThatExceptionOfType(UnreadableFile.class).isThrownBy(() -> rows(file))
			.satisfies((ex) -> assertThat(ex.problem().code()).isEqualTo(code));
	}

	@Test
	void refusesABinaryFile() throws IOException {
		Path file = this.folder.resolve("picture");
		Files.write(file, new byte[] { 'p', ',', 'd', '\n', 0, 1, 2, 3 });
		assertProblem(file, "importFile.binary");
	}

	@Test
	void refusesOtherEncodings() throws IOException {
		assertProblem(file("person,date\nJos\u00e9,2026-11-25\n", StandardCharsets.ISO_8859_1), "importFile.no-utf8");
		assertProblem(file("person,date\nJo,2026-11-25\n", StandardCharsets.UTF_16LE), "importFile.binary");
	}

	@ParameterizedTest
	@CsvSource({ "true, ','", "true, ;", "false, ','", "false, ;" })
	void readsWithAndWithoutByteOrderMarkAndBySeparator(boolean mark, String separator) throws IOException {
		String text = "person,date,rhr_bpm\r\n\"O'Neill \"\"Jo\"\"\",2026-11-25,50\r\n".replace(",", separator);
		CsvFile file = CsvFile.open(file((mark ? "\uFEFF" : "") + text, StandardCharsets.UTF_8));
		assertThat(file.headers()).containsExactly("person", "date", "rhr_bpm");
		assertThat(file.separator()).isEqualTo(separator.charAt(0));
		assertThat(file.samples()).containsExactly(List.of("O'Neill \"Jo\"", "2026-11-25", "50"));
	}

	@Test
	void refusesADecimalCommaUnderEitherSeparator() throws IOException {
		Path commas = file("person,date,rhr_bpm,note\nP,2026-11-25,\"52,5\",x\n", StandardCharsets.UTF_8);
		Path semicolons = file("person;date;rhr_bpm;note\nP;2026-11-25;52,5;x\n", StandardCharsets.UTF_8);
		for (Path file : List.of(commas, semicolons)) {
			assertThat(rows(file)).singleElement()
				.satisfies((row) -> assertThat(row.problems()).extracting((p) -> p.reason().code())
					.containsExactly("importRow.decimal-comma"));
		}
	}

	@Test
	void listsRowsThatAreTooShortOrTooLong() throws IOException {
		List<ReadRow> rows = rows(file("person,date,rhr_bpm\nP,2026-11-25\n\nP,2026-11-24,50,7\nP,2026-11-23,50\n",
				StandardCharsets.UTF_8));
		assertThat(rows).extracting(ReadRow::line).containsExactly(2L, 4L, 5L);
		assertThat(rows.get(0).problems()).extracting((p) -> p.reason().code()).containsExactly("importRow.width");
		assertThat(rows.get(1).problems()).extracting((p) -> p.reason().code()).containsExactly("importRow.width");
		assertThat(rows.get(2).problems()).isEmpty();
	}

	@Test
	void readsThirtyMegabytesRowByRow() throws IOException {
		Path path = this.folder.resolve("large.csv");
		try (Writer out = Files.newBufferedWriter(path)) {
			out.write("person,date,rhr_bpm,note\n");
			String note = "x".repeat(60);
			for (int i = 0; i < 360_000; i++) {
				out.write("athlete-" + (i / 300) + ',' + TODAY.minusDays(i % 300) + ",50," + note + '\n');
			}
		}
		assertThat(Files.size(path)).isGreaterThan(30_000_000L);
		CsvFile file = CsvFile.open(path);
		ColumnMapping mapping = ColumnMapping.guess(file.headers()).withDefaults(Method.STRAP, Posture.LYING);
		AtomicLong good = new AtomicLong();
		new MorningFile(file.headers(), mapping).forEachRow(file, TODAY,
				(row) -> good.addAndGet(row.problems().isEmpty() ? 1 : 0));
		assertThat(good).hasValue(360_000);
	}

	@Test
	void guessesColumnsByName() {
		ColumnMapping guess = ColumnMapping
			.guess(List.of("Name", "Date", "Resting heart rate", "note", "suspect", "person"));
		assertThat(guess.columns()).containsEntry(ImportField.PERSON, 5)
			.containsEntry(ImportField.DAY, 1)
			.containsEntry(ImportField.RHR, 2)
			.containsEntry(ImportField.NOTE, 3)
			.containsEntry(ImportField.UNSURE, 4)
			.hasSize(5);
		assertThat(ColumnMapping.parse(guess.asText())).isEqualTo(guess);
		assertThat(ColumnMapping.parse(guess.withDefaults(Method.COUNT_60, Posture.SITTING).asText()))
			.isEqualTo(guess.withDefaults(Method.COUNT_60, Posture.SITTING));
	}

	@Test
	void tellsWhatAMappingLacks() {
		assertThat(ColumnMapping.guess(List.of("a", "b")).problems(2)).extracting(Problem::field)
			.containsExactly("PERSON", "DAY");
		assertThat(ColumnMapping.parse("PERSON=0 DAY=0").problems(2)).hasSize(1);
		assertThat(ColumnMapping.parse("PERSON=0 DAY=2").problems(2)).hasSize(1);
		assertThat(ColumnMapping.parse("PERSON=0 DAY=1").problems(2)).isEmpty();
	}

	private static List<ReadRow> rows(Path path) {
		CsvFile file = CsvFile.open(path);
		ColumnMapping mapping = ColumnMapping.guess(file.headers()).withDefaults(Method.STRAP, Posture.LYING);
		List<ReadRow> rows = new ArrayList<>();
		new MorningFile(file.headers(), mapping).forEachRow(file, TODAY, rows::add);
		return rows;
	}

	private static void assertProblem(Path file, String code) {
		assertThatExceptionOfType(UnreadableFile.class).isThrownBy(() -> CsvFile.open(file))
			.satisfies((ex) -> assertThat(ex.problem().code()).isEqualTo(code));
	}

	private Path file(String text, Charset charset) throws IOException {
		Path file = Files.createTempFile(this.folder, "mornings", ".csv");
		return Files.writeString(file, text, charset);
	}

}
