package org.fallow.assess;

import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;

import org.fallow.entry.Fact;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.exchange.csv.UnreadableFile;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.State;
import org.fallow.illness.core.Timeline;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * From a file of mornings, and perhaps one of events, to the assessment of every day of
 * every person. One person is in memory at a time, and of that person's answers a year.
 *
 * @param mornings file of mornings
 * @param events file of events; absent if there are none
 * @param columns which column is which
 * @param rules rule sets by the day they take effect
 * @param forecast whether to say the earliest day of the next gate, which takes long
 * @param notes takes what the reader should know about the columns
 * @param leftOut takes rows that cannot be read; absent where the first of them stops all
 */
record Assessing(Path mornings, @Nullable Path events, ColumnChoice columns, RuleBook rules, boolean forecast,
		Consumer<Message> notes, @Nullable Consumer<BadInput> leftOut) {

	private static final int DAYS_AT_ONCE = 366;

	/**
	 * What was done.
	 *
	 * @param people people in the file
	 * @param days days assessed
	 * @param silentRows rows passed over because they say nothing
	 */
	record Done(long people, long days, long silentRows) {
	}

	/**
	 * Assesses all.
	 * @param rows takes one row a person and day
	 * @return what was done
	 * @throws BadInput if the input is not what it has to be
	 */
	Done into(Consumer<List<String>> rows) {
		try {
			CsvFile file = opened(this.mornings, CsvFile::open);
			MorningFile reader = this.columns.of(file);
			ColumnChoice.notes(reader).forEach(this.notes);
			return (this.events == null) ? withoutEvents(file, reader, rows)
					: withEvents(file, reader, opened(this.events, CsvFile::openWithOrWithoutRows), rows);
		}
		catch (UncheckedIOException ex) {
			throw BadInput.file(this.mornings, "assess.file.unreadable");
		}
	}

	private Done withoutEvents(CsvFile file, MorningFile reader, Consumer<List<String>> rows) {
		try (MorningPeople people = new MorningPeople(file, reader, this.leftOut)) {
			return all(people, null, rows);
		}
	}

	private Done withEvents(CsvFile file, MorningFile reader, CsvFile eventFile, Consumer<List<String>> rows) {
		try (MorningPeople people = new MorningPeople(file, reader, this.leftOut);
				EventPeople eventPeople = new EventPeople(eventFile, this.rules)) {
			Done done = all(people, eventPeople, rows);
			eventPeople.checkNobodyIsLeft();
			return done;
		}
	}

	private Done all(MorningPeople people, @Nullable EventPeople eventPeople, Consumer<List<String>> rows) {
		long count = 0;
		long days = 0;
		for (PersonFacts person = people.next(); person != null; person = people.next()) {
			List<Fact> facts = new ArrayList<>(person.facts());
			if (eventPeople != null) {
				facts.addAll(eventPeople.of(person.person(), facts.size()));
			}
			String name = person.person();
			days += live(new Timeline(facts), (day) -> rows.accept(DayRow.of(name, day)));
			count++;
		}
		return new Done(count, days, people.silentRows());
	}

	/** Every day from the first on which something became known to the last. */
	private long live(Timeline timeline, Consumer<DayAssessment> days) {
		LocalDate first = timeline.firstDay();
		LocalDate last = timeline.facts().get(timeline.facts().size() - 1).recorded().on();
		State state = State.before(first);
		for (LocalDate from = first; !from.isAfter(last); from = from.plusDays(DAYS_AT_ONCE)) {
			LocalDate end = from.plusDays(DAYS_AT_ONCE - 1L);
			List<DayAssessment> year = days(state, timeline, end.isBefore(last) ? end : last);
			year.forEach(days);
			state = year.get(year.size() - 1).state();
		}
		return last.toEpochDay() - first.toEpochDay() + 1;
	}

	private List<DayAssessment> days(State state, Timeline timeline, LocalDate to) {
		return this.forecast ? Course.from(state, timeline, this.rules, to)
				: Course.withoutForecast(state, timeline, this.rules, to);
	}

	private static CsvFile opened(Path path, Function<Path, CsvFile> opening) {
		if (!Files.isRegularFile(path) || !Files.isReadable(path)) {
			throw BadInput.file(path, "assess.file.unreadable");
		}
		try {
			return opening.apply(path);
		}
		catch (UnreadableFile ex) {
			throw new BadInput(new BadInput.Place(path, 0, null, null), ex.problem());
		}
	}

}
