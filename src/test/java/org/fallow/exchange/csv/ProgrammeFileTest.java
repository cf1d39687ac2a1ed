package org.fallow.exchange.csv;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;

import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

class ProgrammeFileTest {

	private static final String HEADER = "week,day,session,terrain,time,place,name,parts\n";

	private static final String ROW = "loading,2026-03-17,key session,track,18:30,\"Track, north\",Repeats,"
			+ "\"15 min easy; 6 x 800 m in 3:10 vo2max, 90 s between; 10 min easy\"\n";

	@Test
	void readsWeeks() {
		ProgrammeFile.Result result = ProgrammeFile
			.read("\uFEFF" + HEADER + "unloading,2026-03-29,long run,hill,,,,75 min easy\n" + ROW);
		assertThat(result.problems()).isEmpty();
		assertThat(result.weeks()).extracting(ProgrammeWeek::monday)
			.containsExactly(LocalDate.of(2026, 3, 16), LocalDate.of(2026, 3, 23));
		assertThat(result.weeks().get(0).sessions().get(0).place()).isEqualTo("Track, north");
		assertThat(result.weeks().get(0).minutes()).isEqualTo(15 + 19 + 8 + 10);
		assertThat(result.weeks().get(1).kind()).isEqualTo(ProgrammeWeek.Kind.UNLOADING);
	}

	@Test
	void readsWhatItWrites() {
		List<ProgrammeWeek> weeks = ProgrammeFile.read(HEADER + ROW).weeks();
		String written = ProgrammeFile.write(weeks);
		assertThat(ProgrammeFile.write(ProgrammeFile.read(written).weeks())).isEqualTo(written);
		assertThat(written).startsWith("week,day,session,terrain,time,place,name,parts\r\n");
	}

	@Test
	void readsTheDemoProgrammes() throws IOException {
		String all = Files.readString(Path.of("demo-data", "programmes.csv"));
		String own = all.lines()
			.filter((line) -> !line.startsWith("Spring"))
			.map((line) -> line.substring(line.indexOf(',') + 1))
			.reduce("", (text, line) -> text + line + "\n");
		ProgrammeFile.Result result = ProgrammeFile.read(own);
		assertThat(result.problems()).isEmpty();
		assertThat(result.weeks()).hasSize(30).allMatch((week) -> week.sessions().size() == 4);
		assertThat(result.weeks().get(28).sessions()).extracting(PlannedSession::kind)
			.contains(PlannedSession.Kind.RACE);
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			loading,2026-03-17,easy run,flat,,,,45 min quick   | parts.unreadable
			loading,2026-03-17,easy run,flat,,,,               | parts.none
			loading,17.3.2026,easy run,flat,,,,45 min easy     | programmeFile.day
			loading,1926-03-17,easy run,flat,,,,45 min easy    | programmeFile.day
			busy,2026-03-17,easy run,flat,,,,45 min easy       | programmeFile.word
			loading,2026-03-17,jog,flat,,,,45 min easy         | programmeFile.word
			loading,2026-03-17,easy run,sand,,,,45 min easy    | programmeFile.word
			loading,2026-03-17,easy run,flat,6pm,,,45 min easy | programmeFile.time
			loading,2026-03-17,easy run,flat,,,,30 x 50 min easy | programme.minutes
			loading,2026-03-17,easy run,flat,,,,30 s easy      | programme.minutes""")
	void saysWhichLineIsWrongAndTakesNothing(String row, String code) {
		ProgrammeFile.Result result = ProgrammeFile.read(HEADER + ROW + row + "\n");
		assertThat(result.weeks()).isEmpty();
		assertThat(result.problems().get(0).field()).isEqualTo("line 3");
		assertThat(result.problems().get(0).message().code()).isEqualTo(code);
	}

	/** What spreadsheets take for a formula; common practice, no source. */
	@ParameterizedTest
	@ValueSource(strings = { "=HYPERLINK(\"http://evil.example\")", "+1", "-1+cmd|' /C calc'!A0", "@SUM(A1)",
			"'=already quoted", "''+twice", "\uFF1D1+1" })
	void writesNoFormulaAndReadsTheWordsBack(String words) {
		String cell = '"' + words.replace("\"", "\"\"") + '"';
		List<ProgrammeWeek> weeks = ProgrammeFile
			.read(HEADER + "loading,2026-03-17,easy run,flat,," + marked(cell) + "," + marked(cell) + ",45 min easy\n")
			.weeks();
		assertThat(weeks.get(0).sessions().get(0).name()).isEqualTo(words);
		String written = ProgrammeFile.write(weeks);
		assertThat(written).doesNotContainPattern("(^|,|\n)\"?[=+@\\-\uFF1D]");
		PlannedSession back = ProgrammeFile.read(written).weeks().get(0).sessions().get(0);
		assertThat(back.name()).isEqualTo(words);
		assertThat(back.place()).isEqualTo(words);
	}

	/** A file of somebody's own has no marks; one of Fallow's has one before each. */
	private static String marked(String cell) {
		return "\"'" + cell.substring(1);
	}

	@ParameterizedTest
	@ValueSource(strings = { "=1", "+1 lap", "-", "it's", "'", "@ the track" })
	void readsWordsWithoutAMarkAsTheyStand(String words) {
		ProgrammeFile.Result result = ProgrammeFile
			.read(HEADER + "loading,2026-03-17,easy run,flat,,," + words + ",45 min easy\n");
		assertThat(result.weeks().get(0).sessions().get(0).name()).isEqualTo(words);
	}

	@ParameterizedTest
	@ValueSource(strings = { "two\nlines", "two\r\nlines", "nul\0here", "bell\u0007", "para\u2029graph", "nel\u0085x" })
	void refusesNamesThatAreNotOneLine(String words) {
		for (String both : List.of("\"" + words + "\",Name", "Place,\"" + words + "\"")) {
			ProgrammeFile.Result result = ProgrammeFile
				.read(HEADER + "loading,2026-03-17,easy run,flat,," + both + ",45 min easy\n");
			assertThat(result.weeks()).isEmpty();
			assertThat(result.problems()).containsExactly(Problem.of("line 2", "programme.one-line"));
		}
	}

	@Test
	void refusesWhatIsNoProgramme() {
		assertThat(ProgrammeFile.read("").problems()).containsExactly(Problem.of("file", "programmeFile.empty", 5000));
		assertThat(ProgrammeFile.read(HEADER).problems())
			.containsExactly(Problem.of("file", "programmeFile.empty", 5000));
		assertThat(ProgrammeFile.read("day,parts\n2026-03-17,45 min easy\n").problems())
			.contains(Problem.of("file", "programmeFile.column", "week"));
		assertThat(ProgrammeFile.read(HEADER + "test,2026-03-17,\"easy").problems()).isNotEmpty();
		assertThat(ProgrammeFile.read(HEADER + "loading,2026-03-17\n").problems()).isNotEmpty();
		assertThat(ProgrammeFile.read(HEADER + ROW.repeat(5001)).problems())
			.contains(Problem.of("file", "programmeFile.rows", 5000));
	}

	@Test
	void refusesTwoKindsOfOneWeek() {
		ProgrammeFile.Result result = ProgrammeFile
			.read(HEADER + ROW + "race,2026-03-22,race,flat,,,,20 min race pace\n");
		assertThat(result.problems())
			.containsExactly(new Problem("line 3", Message.of("programmeFile.two-kinds", LocalDate.of(2026, 3, 16))));
	}

}
