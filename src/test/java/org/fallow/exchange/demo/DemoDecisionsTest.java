package org.fallow.exchange.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;

import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.Timeline;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Every decision about the demo squad, compared byte for byte with
 * demo-data/expected/decisions.csv. After a change that is meant to change decisions run
 * it with {@code -Ddemo.expected.write=true}, look at the difference and commit it.
 */
class DemoDecisionsTest {

	private static final Path EXPECTED = Path.of("demo-data", "expected", "decisions.csv");

	private static final String HEADER = "person,date,clearance,stage,day_in_stage,path,mark,flag,reasons,next_gate\n";

	@Test
	void decidesAboutEveryAthleteAndDayAsExpected() throws IOException {
		String decisions = decisions(DemoFiles.unmoved(), 0);
		if (Boolean.getBoolean("demo.expected.write")) {
			Files.createDirectories(Objects.requireNonNull(EXPECTED.getParent()));
			Files.writeString(EXPECTED, decisions);
		}
		assertThat(decisions.split("\n")).containsExactly(Files.readString(EXPECTED).split("\n"));
		assertThat(decisions).isEqualTo(Files.readString(EXPECTED));
	}

	@Test
	void decidesTheSameWhenEveryDayMovesByWeeks() throws IOException {
		DemoFiles moved = DemoFiles.endingOn(LocalDate.of(2027, 3, 27));
		assertThat(moved.last()).isEqualTo(DemoFiles.LAST_WRITTEN.plusWeeks(moved.weeks()));
		assertThat(decisions(moved, moved.weeks())).isEqualTo(Files.readString(EXPECTED));
	}

	private static String decisions(DemoFiles files, long weeks) {
		StringBuilder text = new StringBuilder(HEADER);
		DemoTimelines.of(files)
			.forEach((person, timeline) -> assess(timeline, files.last())
				.forEach((day) -> text.append(person).append(',').append(line(day, weeks)).append('\n')));
		return text.toString();
	}

	static List<DayAssessment> assess(Timeline timeline, LocalDate to) {
		return Course.of(timeline, RuleBook.of(DefaultRules.ruleSet()), to);
	}

	private static String line(DayAssessment day, long weeks) {
		Episode episode = day.state().episode();
		List<String> cells = new ArrayList<>();
		cells.add(day.day().minusWeeks(weeks).toString());
		cells.add(day.clearance().name());
		cells.add((episode == null) ? "" : (episode.stage() == 0) ? "ILL" : String.valueOf(episode.stage()));
		cells.add((episode == null) ? "" : String.valueOf(day.dayInStage()));
		cells.add((episode == null) ? "" : episode.path().name());
		cells.add(day.mark().name().toLowerCase(Locale.ROOT));
		cells.add((day.rhr().flag() == null) ? "" : day.rhr().flag().name());
		cells.add(day.reasons().stream().map(Message::code).collect(Collectors.joining(" ")));
		LocalDate gate = (day.gate() == null) ? null : day.gate().earliest();
		cells.add((gate == null) ? "" : gate.minusWeeks(weeks).toString());
		return String.join(",", cells);
	}

}
