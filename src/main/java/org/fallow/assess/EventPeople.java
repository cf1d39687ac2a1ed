package org.fallow.assess;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.assess.BadInput.Place;
import org.fallow.entry.Fact;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.CsvRows;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The events of one person after the other, in the order in which the people stand in the
 * file of mornings; people without events are not in it.
 */
final class EventPeople implements AutoCloseable {

	private final Path path;

	private final EventColumns columns;

	private final RuleBook book;

	private final CsvRows rows;

	private @Nullable CsvRecord ahead;

	EventPeople(CsvFile file, RuleBook book) {
		this.book = book;
		this.path = file.path();
		this.columns = EventColumns.of(file);
		this.rows = file.rows();
		this.ahead = this.rows.next();
	}

	/**
	 * The events of a person, if they come next.
	 * @param person as the file of mornings writes it
	 * @param order how many facts of the person stand before them
	 * @return the events in the order of the file; empty if somebody else's come next
	 */
	List<Fact> of(String person, int order) {
		List<Fact> facts = new ArrayList<>();
		CsvRecord row = this.ahead;
		while (row != null && person.equals(this.columns.person(row))) {
			facts.add(new EventRow(this.path, this.columns, row, this.book).fact(order + facts.size()));
			row = this.rows.next();
		}
		this.ahead = row;
		return facts;
	}

	/**
	 * Checks that nobody's events are left: an event that were passed over could be a
	 * hold.
	 * @throws BadInput if somebody's mornings did not come
	 */
	void checkNobodyIsLeft() {
		CsvRecord row = this.ahead;
		if (row != null) {
			String person = this.columns.person(row);
			String code = person.isEmpty() ? "importRow.no-person" : "assess.order.events";
			throw new BadInput(new Place(this.path, row.getStartingLineNumber(), this.columns.header("person"), person),
					Message.of(code));
		}
	}

	@Override
	public void close() {
		this.rows.close();
	}

}
