package org.fallow.assess;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.assess.BadInput.Place;
import org.fallow.entry.Fact;
import org.fallow.entry.NewMorning;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.CsvRows;
import org.fallow.exchange.csv.ImportField;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.exchange.csv.ReadRow;
import org.fallow.exchange.csv.RowProblem;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The people of a file of mornings, one after the other. Only one person's mornings are
 * in memory at a time.
 */
final class MorningPeople implements AutoCloseable {

	/** The last day a file may speak of: the command asks no clock. */
	static final LocalDate LATEST = LocalDate.of(2099, 12, 31);

	private static final String NOTHING = "importRow.nothing";

	private final CsvFile file;

	private final MorningFile reader;

	private final CsvRows rows;

	private final RepeatedPeople repeated;

	private final @Nullable Consumer<BadInput> leftOut;

	private @Nullable ReadRow ahead;

	private long silentRows;

	/**
	 * Begins at the first row.
	 * @param file the file
	 * @param reader its columns
	 * @param leftOut takes rows that cannot be read; absent where the first of them stops
	 * the command
	 */
	MorningPeople(CsvFile file, MorningFile reader, @Nullable Consumer<BadInput> leftOut) {
		this.file = file;
		this.reader = reader;
		this.leftOut = leftOut;
		this.repeated = new RepeatedPeople(file, reader, new SeenPeople()::add);
		this.rows = file.rows();
	}

	/** The next person; null after the last. */
	@Nullable PersonFacts next() {
		ReadRow first = (this.ahead != null) ? this.ahead : read();
		if (first == null) {
			this.repeated.confirm();
			return null;
		}
		this.repeated.meet(first.person(), first.line());
		List<Fact> facts = new ArrayList<>();
		boolean asksEating = this.reader.mapping().columns().containsKey(ImportField.EATING_NORMALLY);
		ReadRow before = null;
		ReadRow row = first;
		while (row != null && row.person().equals(first.person())) {
			checkOrder(before, row);
			facts.add(MorningRow.fact(row.goodMorning(), asksEating, facts.size()));
			before = row;
			row = read();
		}
		this.ahead = row;
		return new PersonFacts(first.person(), first.line(), facts);
	}

	/** Rows passed over because they say nothing about their morning. */
	long silentRows() {
		return this.silentRows;
	}

	private @Nullable ReadRow read() {
		for (CsvRecord record = this.rows.next(); record != null; record = this.rows.next()) {
			ReadRow row = this.reader.read(record.getStartingLineNumber(), record.getFields(), LocalDate.MAX);
			if (row.problems().isEmpty()) {
				checkDays(row);
				return row;
			}
			passOver(row);
		}
		return null;
	}

	private void passOver(ReadRow row) {
		RowProblem first = row.problems().get(0);
		if (row.problems().size() == 1 && first.reason().code().equals(NOTHING)) {
			this.silentRows++;
			return;
		}
		String column = (first.field() == null) ? null : header(first.field());
		BadInput bad = new BadInput(new Place(path(), row.line(), column, first.value()), first.reason());
		if (this.leftOut == null) {
			throw earliest(bad);
		}
		this.leftOut.accept(bad);
	}

	private void checkDays(ReadRow row) {
		NewMorning morning = row.goodMorning();
		LocalDate on = MorningRow.recordedOn(morning);
		if (morning.day().isAfter(LATEST)) {
			throw at(row, ImportField.DAY, morning.day(), Message.of("assess.day.late", LATEST));
		}
		if (on.isAfter(LATEST)) {
			throw at(row, ImportField.RECORDED, on, Message.of("assess.day.late", LATEST));
		}
		if (on.isBefore(morning.day())) {
			throw at(row, ImportField.RECORDED, on, Message.of("assess.recorded.early", morning.day()));
		}
	}

	/** A second row of a day is a correction if it says when it was made. */
	private void checkOrder(@Nullable ReadRow before, ReadRow row) {
		if (before == null) {
			return;
		}
		LocalDate day = row.goodMorning().day();
		LocalDate last = before.goodMorning().day();
		if (day.isBefore(last)) {
			throw at(row, ImportField.DAY, day, Message.of("assess.order.day", last, String.valueOf(before.line())));
		}
		boolean corrects = row.goodMorning().recordedOn() != null
				&& !MorningRow.recordedOn(row.goodMorning()).isBefore(MorningRow.recordedOn(before.goodMorning()));
		if (day.equals(last) && !corrects) {
			throw at(row, ImportField.DAY, day, Message.of("assess.order.twice", String.valueOf(before.line())));
		}
	}

	private BadInput at(ReadRow row, ImportField field, LocalDate value, Message problem) {
		return earliest(new BadInput(new Place(path(), row.line(), header(field), value.toString()), problem));
	}

	/** Somebody who came again further up in the file is told first. */
	private BadInput earliest(BadInput bad) {
		this.repeated.confirm();
		return bad;
	}

	private @Nullable String header(ImportField field) {
		Integer index = this.reader.mapping().columns().get(field);
		return (index == null) ? null : this.reader.headers().get(index);
	}

	private Path path() {
		return this.file.path();
	}

	@Override
	public void close() {
		this.rows.close();
	}

}
