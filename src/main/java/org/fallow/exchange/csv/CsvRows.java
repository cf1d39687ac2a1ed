package org.fallow.exchange.csv;

import java.io.IOException;
import java.io.UncheckedIOException;

import de.siegmar.fastcsv.reader.CloseableIterator;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a file, taken one by one; blank lines are passed over. Only the row in hand
 * is in memory.
 */
public final class CsvRows implements AutoCloseable {

	private final CloseableIterator<CsvRecord> records;

	private CsvRows(CloseableIterator<CsvRecord> records) {
		this.records = records;
	}

	static CsvRows afterHeader(CsvReader<CsvRecord> csv) {
		CsvRows rows = new CsvRows(csv.iterator());
		rows.next();
		return rows;
	}

	/**
	 * The next row.
	 * @return it; null after the last
	 * @throws UnreadableFile if the file breaks off inside a quoted field, for example
	 */
	public @Nullable CsvRecord next() {
		try {
			return this.records.hasNext() ? this.records.next() : null;
		}
		catch (CsvParseException ex) {
			throw new UnreadableFile(Message.of("importFile.broken"));
		}
	}

	@Override
	public void close() {
		try {
			this.records.close();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
