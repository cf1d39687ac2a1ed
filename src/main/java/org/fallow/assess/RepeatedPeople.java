package org.fallow.assess;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Predicate;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.assess.BadInput.Place;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.CsvRows;
import org.fallow.exchange.csv.ImportField;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Finds a person whose rows are not in one piece, without remembering everybody: whom
 * {@link SeenPeople} takes for somebody met is looked for in the file up to that line,
 * ten thousand suspects in one reading.
 */
final class RepeatedPeople {

	private static final int MOST_SUSPECTS = 10_000;

	private final CsvFile file;

	private final MorningFile reader;

	private final Predicate<String> seen;

	private final Map<String, Long> suspects = new LinkedHashMap<>();

	/**
	 * Has met nobody yet.
	 * @param file the file
	 * @param reader its columns
	 * @param seen adds a person; true if that person was perhaps added before
	 */
	RepeatedPeople(CsvFile file, MorningFile reader, Predicate<String> seen) {
		this.file = file;
		this.reader = reader;
		this.seen = seen;
	}

	/**
	 * Meets a person whose rows begin.
	 * @param person as the file writes it
	 * @param line line of the first row
	 * @throws BadInput if enough suspects have come together and one of them has come
	 * before
	 */
	void meet(String person, long line) {
		if (!this.seen.test(person)) {
			return;
		}
		Long before = this.suspects.get(person);
		if (before != null) {
			confirm();
			throw comesAgain(person, line, before);
		}
		this.suspects.put(person, line);
		if (this.suspects.size() >= MOST_SUSPECTS) {
			confirm();
		}
	}

	/**
	 * Looks for the suspects so far in the file.
	 * @throws BadInput with the earliest line on which a person comes again
	 */
	void confirm() {
		if (this.suspects.isEmpty()) {
			return;
		}
		BadInput earliest = null;
		long earliestLine = Long.MAX_VALUE;
		long last = this.suspects.values().stream().mapToLong(Long::longValue).max().orElse(0);
		try (CsvRows rows = this.file.rows()) {
			for (CsvRecord row = rows.next(); row != null && row.getStartingLineNumber() < last; row = rows.next()) {
				String person = this.reader.mapping().text(row.getFields(), ImportField.PERSON);
				Long again = this.suspects.get(person);
				if (again != null && row.getStartingLineNumber() < again && again < earliestLine && isTaken(row)) {
					earliestLine = again;
					earliest = comesAgain(person, again, row.getStartingLineNumber());
				}
			}
		}
		this.suspects.clear();
		if (earliest != null) {
			throw earliest;
		}
	}

	private boolean isTaken(CsvRecord row) {
		return this.reader.read(row.getStartingLineNumber(), row.getFields(), LocalDate.MAX).problems().isEmpty();
	}

	private BadInput comesAgain(String person, long line, long before) {
		Integer index = this.reader.mapping().columns().get(ImportField.PERSON);
		@Nullable String column = (index == null) ? null : this.reader.headers().get(index);
		return new BadInput(new Place(this.file.path(), line, column, person),
				Message.of("assess.order.person", String.valueOf(before)));
	}

}
