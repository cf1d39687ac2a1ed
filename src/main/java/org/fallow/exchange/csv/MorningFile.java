package org.fallow.exchange.csv;

import java.io.StringWriter;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import org.fallow.wording.Message;

/**
 * A CSV file of mornings: the file, and which of its columns is which.
 *
 * @param file the file
 * @param mapping its columns
 */
public record MorningFile(CsvFile file, ColumnMapping mapping) {

	/**
	 * Reads all rows in the order of the file, good and bad.
	 * @param today the latest day a row may speak of
	 * @param reader takes each row, with the text to stage it as
	 */
	public void forEachRow(LocalDate today, Consumer<StagedRow> reader) {
		int expected = this.file.headers().size();
		this.file.forEachRow((record) -> {
			ReadRow row = RowReader.read(this.mapping, record, record.getStartingLineNumber(), today);
			reader.accept(new StagedRow(checkWidth(row, record, expected), staged(record)));
		});
	}

	/**
	 * Reads a row back from the text it was staged as.
	 * @param line line of the file it came from
	 * @param text what {@link StagedRow#text} was
	 * @param mapping for the defaults
	 * @param today the latest day a row may speak of
	 * @return the row, as it was read from the file
	 */
	public static ReadRow unstage(long line, String text, ColumnMapping mapping, LocalDate today) {
		CsvRecord record = CsvReader.builder().ofSingleCsvRecord(text);
		ColumnMapping identity = ColumnMapping.identity().withDefaults(mapping.method(), mapping.posture());
		return RowReader.read(identity, record, line, today);
	}

	private String staged(CsvRecord record) {
		StringWriter text = new StringWriter();
		List<String> cells = Arrays.stream(ImportField.values())
			.map((field) -> this.mapping.text(record, field))
			.toList();
		CsvWriter.builder().bufferSize(0).build(text).writeRecord(cells);
		return text.toString().stripTrailing();
	}

	private static ReadRow checkWidth(ReadRow row, CsvRecord record, int expected) {
		if (record.getFieldCount() == expected) {
			return row;
		}
		RowProblem width = RowProblem.refused(row.line(), null, null,
				Message.of("importRow.width", record.getFieldCount(), expected));
		return new ReadRow(row.line(), row.person(), row.group(), row.birthDate(), null, List.of(width));
	}

	/**
	 * A row with the text it can be kept as until it is stored.
	 *
	 * @param row what it says
	 * @param text one CSV record with a column for each field
	 */
	public record StagedRow(ReadRow row, String text) {
	}

}
