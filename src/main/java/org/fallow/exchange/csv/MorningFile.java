package org.fallow.exchange.csv;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Consumer;

import org.fallow.wording.Message;

/**
 * A CSV file of mornings: the names of its columns, and which of them is which.
 *
 * @param headers names of the columns in the order of the file
 * @param mapping which is which
 */
public record MorningFile(List<String> headers, ColumnMapping mapping) {

	/** Copies the names. */
	public MorningFile {
		headers = List.copyOf(headers);
	}

	/**
	 * Reads all rows of a file in its order, good and bad.
	 * @param file the file
	 * @param today the latest day a row may speak of
	 * @param reader takes each row
	 */
	public void forEachRow(CsvFile file, LocalDate today, Consumer<ReadRow> reader) {
		file.forEachRow((record) -> reader.accept(read(record.getStartingLineNumber(), record.getFields(), today)));
	}

	/**
	 * Reads one row.
	 * @param line line of the file the row begins on, counting from 1
	 * @param cells what stands in its columns
	 * @param today the latest day the row may speak of
	 * @return what it says, or all that is wrong with it
	 */
	public ReadRow read(long line, List<String> cells, LocalDate today) {
		ReadRow row = RowReader.read(this.mapping, cells, line, today);
		if (cells.size() == this.headers.size()) {
			return row;
		}
		RowProblem width = RowProblem.refused(line, null, null,
				Message.of("importRow.width", cells.size(), this.headers.size()));
		return new ReadRow(line, row.person(), row.group(), row.birthDate(), null, List.of(width));
	}

}
