package org.fallow.assess;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleHash;
import org.fallow.rules.RuleJson;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

/** What the command says to good input and to bad. */
class AssessCommandTest {

	private static final String HEADER = "person,date,rhr_bpm\n";

	@TempDir
	private Path folder;

	private Path out;

	@BeforeEach
	void namesTheTarget() {
		this.out = this.folder.resolve("assessments.csv");
	}

	@Test
	void needsOnlyPersonDateAndOneMeasurement() throws IOException {
		Ran ran = assess(HEADER + "A,2026-01-01,50\nA,2026-01-03,51\nB,2025-05-05,60\n");
		assertThat(ran.code()).as(ran.said()).isZero();
		List<String> rows = Files.readAllLines(this.out);
		assertThat(rows).hasSize(5);
		assertThat(rows.get(0)).startsWith("person,date,n,baseline,spread,dev,line,flag,above_line,");
		assertThat(rows.get(2)).startsWith("A,2026-01-02,").contains("NotAssessed", "no-entry");
		assertThat(rows.get(4)).startsWith("B,2025-05-05,").contains(",Full,");
	}

	@Test
	void losesNoMisspeltColumnInSilence() throws IOException {
		Ran ran = assess("person,date,rhr_bpm,symptms\nP,2026-01-01,50,fatigue:mild\n");
		assertThat(ran.code()).isZero();
		assertThat(ran.said()).contains("symptms", "nobody’s symptoms are seen");
		assertThat(assess("person,date,rhr_bpm,symptoms\nP,2026-01-01,50,fatigue:mild\n").said())
			.doesNotContain("Not taken", "nobody’s symptoms");
	}

	@Test
	void takesOneMeasurementOfVariabilityAlone() throws IOException {
		assertThat(assess("person,date,rmssd_ms\nA,2026-01-01,50.5\n").code()).isZero();
		assertThat(Files.readAllLines(this.out)).hasSize(2);
	}

	@Test
	void takesColumnsByTheNamesGiven() throws IOException {
		Ran ran = assess("who;when;pulse;rhr\nA;2026-01-01;50;text\n", "--column", "person=who", "--column", "day=When",
				"--column", "rhr=pulse");
		assertThat(ran.code()).as(ran.said()).isZero();
		assertThat(Files.readAllLines(this.out)).hasSize(2);
	}

	@Test
	void leavesAColumnOutWhereNothingStandsBehindTheSign() throws IOException {
		String file = "person,date,rhr_bpm,symptoms\nA,2026-01-01,50,3.0\n";
		assertThat(assess(file).code()).isZero();
		assertThat(Files.readAllLines(this.out).get(1)).contains(",Rest,");
		assertThat(assess(file, "--column", "symptoms=").code()).isZero();
		assertThat(Files.readAllLines(this.out).get(1)).contains(",Full,");
	}

	@Test
	void readsAByteOrderMarkAndEveryKindOfLineEnd() throws IOException {
		assess(HEADER + "A,2026-01-01,50\nA,2026-01-02,51\n");
		List<String> plain = Files.readAllLines(this.out);
		for (String file : List.of("\uFEFFperson,date,rhr_bpm\nA,2026-01-01,50\nA,2026-01-02,51",
				"person,date,rhr_bpm\r\nA,2026-01-01,50\r\n\r\nA,2026-01-02,51\r\n")) {
			assertThat(assess(file).code()).isZero();
			assertThat(Files.readAllLines(this.out)).isEqualTo(plain);
		}
	}

	@Test
	void writesTheSameBytesEachTime() throws IOException {
		assess(HEADER + "A,2026-01-01,50\nA,2026-02-02,51\n");
		byte[] once = Files.readAllBytes(this.out);
		assess(HEADER + "A,2026-01-01,50\nA,2026-02-02,51\n");
		assertThat(Files.readAllBytes(this.out)).isEqualTo(once);
	}

	@ParameterizedTest
	@ValueSource(strings = { "NaN", "Infinity", "-Infinity", "-50", "0", "fifty", "1e2", "50bpm", "999", "0x32" })
	void refusesAReadingThatIsNone(String reading) {
		Ran ran = assess(HEADER + "A,2026-01-01,50\nA,2026-01-02," + reading + "\n");
		isRefused(ran, "line 3", "rhr_bpm", reading);
	}

	@Test
	void passesOverARowWithoutAnythingInIt() throws IOException {
		Ran ran = assess(HEADER + "A,2026-01-01,50\nA,2026-01-02,\nA,2026-01-03,51\n");
		assertThat(ran.code()).isZero();
		assertThat(ran.said()).contains("1 rows say nothing");
		assertThat(Files.readAllLines(this.out).get(2)).contains("NotAssessed");
	}

	@Test
	void goesOnWithoutBadRowsOnlyWhenAsked() throws IOException {
		String file = HEADER + "A,2026-01-01,50\nA,2026-01-02,text\nA,2026-01-03,51\n";
		isRefused(assess(file), "line 3");
		Ran ran = assess(file, "--leave-out-bad-rows");
		assertThat(ran.code()).isZero();
		assertThat(ran.said()).contains("line 3", "rhr_bpm", "text");
		assertThat(Files.readAllLines(this.out).get(2)).contains("NotAssessed");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			A,2026-01-02,50/A,2026-01-01,50               | line 3 | date
			A,2026-01-01,50/A,2026-01-01,60               | line 3 | date
			A,2026-01-01,50/B,2026-01-01,50/A,2026-01-02,50 | line 4 | person
			A,2026-01-01,50/B,2026-01-01,50/A,2026-01-02,50/B,2026-01-02,x | line 4 | person
			A,1726-01-01,50/A,2026-01-01,50               | line 2 | date
			A,2026-01-01,50/A,2200-01-01,50               | line 3 | date
			A,+999999999-01-01,50                         | line 2 | date
			A,2026-02-29,50                               | line 2 | date
			A,01/02/2026,50                               | line 2 | date
			,2026-01-01,50                                | line 2 | person
			A,,50                                         | line 2 | date
			A,2026-01-01                                  | line 2 | columns
			A,2026-01-01,50,60                            | line 2 | columns
			""")
	void refusesRowsOutOfOrderOrOutOfShape(String rows, String line, String column) {
		isRefused(assess(HEADER + rows.replace("01/02/2026", "01.02.2026").replace('/', '\n') + "\n"), line, column);
	}

	@Test
	void tellsWhoComesAgainBeforeABadRowFurtherDown() {
		isRefused(assess(HEADER + "A,2026-01-01,50\nB,2026-01-01,50\nA,2026-01-02,50\nC,2026-01-02,x\n"), "line 4",
				"line 2");
	}

	@Test
	void takesASecondRowOfADayAsACorrectionIfItSaysWhen() throws IOException {
		String header = "person,date,recorded,rhr_bpm,symptoms\n";
		String file = header + "A,2026-01-01,,50,\nA,2026-01-01,2026-01-02,50,fatigue:moderate\nA,2026-01-02,,50,\n";
		assertThat(assess(file).code()).isZero();
		List<String> rows = Files.readAllLines(this.out);
		assertThat(rows.get(1)).contains(",Full,");
		assertThat(rows.get(2)).contains(",Rest,ill,");
		isRefused(assess(header + "A,2026-01-02,2026-01-01,50,\n"), "line 2", "recorded");
	}

	@Test
	void decidesAConstantSeries() throws IOException {
		StringBuilder rows = new StringBuilder("person,date,rhr_bpm,rmssd_ms\n");
		for (int day = 10; day <= 30; day++) {
			rows.append("A,2026-01-").append(day).append(",50,60\n");
		}
		assertThat(assess(rows + "A,2026-01-31,53,60\n").code()).isZero();
		List<String> written = Files.readAllLines(this.out);
		assertThat(written.get(22)).startsWith("A,2026-01-31,21,50.000000,1.000000,3.000000,4,Within,0,")
			.contains(",Normal,Full,")
			.doesNotContain("NaN");
	}

	@Test
	void livesThroughACenturyOfSilence() throws IOException {
		assertThat(assess(HEADER + "A,2000-01-01,50\nA,2099-12-31,51\n").code()).isZero();
		try (Stream<String> rows = Files.lines(this.out)) {
			assertThat(rows.filter((row) -> row.contains("NotAssessed"))).hasSize(36523);
		}
	}

	@Test
	void refusesFilesThatHoldNothing() {
		isRefused(assess(""), "mornings.csv");
		isRefused(assess(HEADER), "mornings.csv");
		isRefused(assess("person,date\nA,2026-01-01\n"), "line 1", "--column rhr=");
		isRefused(assess("date,rhr_bpm\n2026-01-01,50\n"), "line 1", "--column person=");
		isRefused(assess("person,rhr_bpm\nA,50\n"), "line 1", "--column day=");
		isRefused(assess(HEADER + "A,2026-01-01,50\n", "--column", "rhr=pulse"), "pulse", "rhr_bpm");
		isRefused(assess(HEADER + "A,2026-01-01,50\n", "--column", "rhr=date"), "line 1");
		isRefused(assess("person,date,rhr_bpm,RHR_bpm\nA,2026-01-01,50,50\n"), "RHR_bpm");
		isRefused(assess(HEADER + "A,2026-01-01,\"50\n"), "mornings.csv");
		isRefused(assess("person,date,rhr_bpm\nA,2026-01-01,5\0\n"), "mornings.csv");
	}

	@Test
	void refusesAFileThatIsNotThere() {
		isRefused(run("--in", this.folder.resolve("none.csv").toString(), "--out", this.out.toString()), "none.csv");
		isRefused(run("--in", this.folder.toString(), "--out", this.out.toString()), this.folder.toString());
	}

	@Test
	void refusesATargetThatCannotBeWritten() throws IOException {
		Path in = write("mornings.csv", HEADER + "A,2026-01-01,50\n");
		Ran ran = run("--in", in.toString(), "--out", this.folder.resolve("none/out.csv").toString());
		isRefused(ran, "out.csv");
		Path directory = Files.createDirectory(this.folder.resolve("directory"));
		isRefused(run("--in", in.toString(), "--out", directory.toString()), "directory");
		assertThat(directory).isEmptyDirectory();
	}

	@Test
	void refusesToWriteOverWhatItReads() throws IOException {
		Path in = write("mornings.csv", HEADER + "A,2026-01-01,50\n");
		Path link = Files.createSymbolicLink(this.folder.resolve("link.csv"), in);
		for (Path target : List.of(in, link, this.folder.resolve("./mornings.csv"))) {
			Ran ran = run("--in", in.toString(), "--out", target.toString());
			assertThat(ran.code()).isEqualTo(AssessCommand.BAD_USAGE);
			assertThat(ran.said()).contains("--out");
		}
		assertThat(Files.readString(in)).isEqualTo(HEADER + "A,2026-01-01,50\n");
	}

	@Test
	void leavesWhatWasThereWhenItStops() throws IOException {
		Files.writeString(this.out, "before");
		isRefused(assess(HEADER + "A,2026-01-01,50\nB,2026-01-01,x\n"), "line 3");
		assertThat(Files.readString(this.out)).isEqualTo("before");
		assess(HEADER + "A,2026-01-01,50\n");
		assertThat(Files.readString(this.out)).startsWith("person,");
		try (Stream<Path> files = Files.list(this.folder)) {
			assertThat(files.map((file) -> file.getFileName().toString())).containsExactlyInAnyOrder("mornings.csv",
					"assessments.csv");
		}
	}

	@Test
	void saysHowItIsUsed() {
		Ran help = run("--help");
		assertThat(help.code()).isZero();
		assertThat(help.printed()).contains("--in", "--leave-out-bad-rows", "Exit codes", "not medical advice")
			.doesNotContain("assess.option");
		assertThat(run("--version").printed()).contains("Fallow", "rule set");
		for (String[] wrong : new String[][] { {}, { "--in", "a.csv" }, { "--in", "a", "--out", "b", "--unknown" },
				{ "--in", "a", "--out", "b", "--method", "guess" },
				{ "--in", "a", "--out", "b", "--column", "pulse=x" } }) {
			Ran ran = run(wrong);
			assertThat(ran.code()).as(Arrays.toString(wrong)).isEqualTo(AssessCommand.BAD_USAGE);
			assertThat(ran.said()).contains("assess --help");
		}
	}

	@Test
	void takesTheRulesItPrintsForItsOwn() throws IOException {
		String file = HEADER + mornings(8) + "A,2026-01-09,69\n";
		assess(file);
		List<String> own = Files.readAllLines(this.out);
		Ran printed = run("--print-rules");
		assertThat(printed.code()).isZero();
		Ran ran = assess(file, "--rules", write("rules.json", printed.printed()).toString());
		assertThat(ran.said()).contains(RuleHash.of(DefaultRules.ruleSet()));
		assertThat(Files.readAllLines(this.out)).isEqualTo(own);
	}

	@Test
	void saysWhichRuleIsUnsafeAndWhy() throws IOException {
		String json = RuleJson.canonical(DefaultRules.ruleSet()).replace("\"veryHigh\":\"20\"", "\"veryHigh\":\"60\"");
		Ran ran = assess(HEADER + "A,2026-01-01,50\n", "--rules", write("rules.json", json).toString());
		isRefused(ran, "/flags/veryHigh", "60", "20");
		assertThat(ran.said()).doesNotContain("rules.bound");
	}

	@Test
	void decidesByARuleSetOfItsOwn() throws IOException {
		String file = HEADER + mornings(8) + "A,2026-01-09,69\n";
		assess(file);
		assertThat(Files.readAllLines(this.out).get(9)).contains(",19.000000,", ",High,");
		String stricter = RuleJson.canonical(DefaultRules.ruleSet())
			.replace("\"veryHigh\":\"20\"", "\"veryHigh\":\"18\"");
		Ran ran = assess(file, "--rules", write("rules.json", stricter).toString());
		assertThat(ran.code()).as(ran.said()).isZero();
		assertThat(Files.readAllLines(this.out).get(9)).contains(",19.000000,", ",VeryHigh,");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			"veryHigh":"20" | "veryHigh":"20","veryHigher":"20"
			"veryHigh":"20" | "veryHigh":"60"
			"veryHigh":"20" | "veryHigh":"NaN"
			"veryHigh":"20" | "veryHigh":"text"
			,"veryHigh":"20" |
			"gates":        | "gate":
			{               | [
			""")
	void refusesRulesThatAreUnknownOrUnsafe(String part, String instead) throws IOException {
		String json = RuleJson.canonical(DefaultRules.ruleSet());
		String changed = json.replaceFirst(Pattern.quote(part), (instead == null) ? "" : instead);
		assertThat(changed.equals(json)).isFalse();
		Path rules = write("rules.json", changed);
		isRefused(assess(HEADER + "A,2026-01-01,50\n", "--rules", rules.toString()), "rules.json");
	}

	private static String mornings(int days) {
		StringBuilder rows = new StringBuilder();
		for (int day = 1; day <= days; day++) {
			rows.append("A,2026-01-0").append(day).append(",50\n");
		}
		return rows.toString();
	}

	private void isRefused(Ran ran, String... words) {
		assertThat(ran.code()).as(ran.said()).isEqualTo(AssessCommand.BAD_INPUT);
		assertThat(ran.said()).contains(words).contains("Nothing was written");
		assertThat(ran.said().lines()).hasSize(2);
		try (Stream<Path> files = Files.list(this.folder)) {
			assertThat(files.map((file) -> file.getFileName().toString())).noneMatch((name) -> name.startsWith("."));
		}
		catch (IOException ex) {
			throw new AssertionError(ex);
		}
	}

	private Ran assess(String mornings, String... more) {
		List<String> args = new ArrayList<>(
				List.of("--in", write("mornings.csv", mornings).toString(), "--out", this.out.toString()));
		args.addAll(List.of(more));
		return run(args.toArray(String[]::new));
	}

	private Ran run(String... args) {
		return Ran.assess(args);
	}

	private Path write(String name, String text) {
		try {
			return Files.writeString(this.folder.resolve(name), text);
		}
		catch (IOException ex) {
			throw new AssertionError(ex);
		}
	}

}
