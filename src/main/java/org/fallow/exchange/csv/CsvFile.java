package org.fallow.exchange.csv;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.wording.Message;

/**
 * A CSV file as in RFC 4180: UTF-8, with or without byte order mark, separated by commas
 * or semicolons, names of the columns in the first line. It is read from the disk record
 * by record and never held in memory.
 *
 * @param path where it is
 * @param separator comma or semicolon, whichever stands more often in the first line
 * @param headers names of the columns
 * @param samples the first rows
 */
public record CsvFile(Path path, char separator, List<String> headers, List<List<String>> samples) {

	private static final int SAMPLES = 5;

	private static final int MOST_COLUMNS = 200;

	private static final int LONGEST_HEADER = 200;

	private static final char BYTE_ORDER_MARK = '\uFEFF';

	/** Copies the lists. */
	public CsvFile {
		headers = List.copyOf(headers);
		samples = List.copyOf(samples);
	}

	/**
	 * Looks at a file: its text is checked to the end, its first rows are kept.
	 * @param path where it is
	 * @return the file
	 * @throws UnreadableFile if it is empty, no text, no UTF-8, has no header, names a
	 * column twice or has no rows
	 */
	public static CsvFile open(Path path) {
		CsvFile file = openWithOrWithoutRows(path);
		if (file.samples().isEmpty()) {
			throw new UnreadableFile(Message.of("importFile.no-rows"));
		}
		return file;
	}

	/**
	 * The same for a file that may have names of columns and nothing else.
	 * @param path where it is
	 * @return the file
	 * @throws UnreadableFile if it is empty, no text, no UTF-8, has no header or names a
	 * column twice
	 */
	public static CsvFile openWithOrWithoutRows(Path path) {
		try {
			String first = checkText(path);
			char separator = (count(first, ';') > count(first, ',')) ? ';' : ',';
			List<List<String>> rows = firstRows(path, separator);
			List<String> headers = headers(rows.get(0));
			return new CsvFile(path, separator, headers, rows.subList(1, rows.size()));
		}
		catch (CharacterCodingException ex) {
			throw new UnreadableFile(Message.of("importFile.no-utf8"));
		}
		catch (CsvParseException ex) {
			throw new UnreadableFile(Message.of("importFile.broken"));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/**
	 * Goes through all rows but the header, in the order of the file; blank lines are
	 * passed over.
	 * @param reader takes each row
	 * @throws UnreadableFile if the file breaks off inside a quoted field, for example
	 */
	public void forEachRow(Consumer<CsvRecord> reader) {
		try (CsvRows rows = rows()) {
			for (CsvRecord row = rows.next(); row != null; row = rows.next()) {
				reader.accept(row);
			}
		}
	}

	/**
	 * The rows one by one, for who reads two files side by side.
	 * @return all rows but the header, to be closed after use
	 */
	public CsvRows rows() {
		try {
			return CsvRows.afterHeader(csv(this.path, this.separator));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static CsvReader<CsvRecord> csv(Path path, char separator) throws IOException {
		return CsvReader.builder()
			.fieldSeparator(separator)
			.detectBomHeader(true)
			.allowUnclosedQuote(false)
			.allowExtraFields(true)
			.allowMissingFields(true)
			.ofCsvRecord(path, StandardCharsets.UTF_8);
	}

	private static String checkText(Path path) throws IOException {
		try (InputStream in = Files.newInputStream(path);
				Reader text = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8.newDecoder()))) {
			StringBuilder first = new StringBuilder();
			boolean inFirst = true;
			char[] buffer = new char[1 << 14];
			for (int read = text.read(buffer); read >= 0; read = text.read(buffer)) {
				for (int i = 0; i < read; i++) {
					if (buffer[i] == '\0') {
						throw new UnreadableFile(Message.of("importFile.binary"));
					}
					inFirst = inFirst && (first.isEmpty() || (buffer[i] != '\n' && buffer[i] != '\r'));
					if (inFirst && first.length() < MOST_COLUMNS * LONGEST_HEADER) {
						first.append(buffer[i]);
					}
				}
			}
			return notBlank(first.toString());
		}
	}

	private static String notBlank(String first) {
		if (first.isBlank() || first.equals(String.valueOf(BYTE_ORDER_MARK))) {
			throw new UnreadableFile(Message.of("importFile.empty"));
		}
		return first;
	}

	private static List<List<String>> firstRows(Path path, char separator) throws IOException {
		List<List<String>> rows = new ArrayList<>();
		try (CsvReader<CsvRecord> csv = csv(path, separator)) {
			for (CsvRecord row : csv) {
				rows.add(row.getFields());
				if (rows.size() > SAMPLES) {
					break;
				}
			}
		}
		if (rows.isEmpty()) {
			throw new UnreadableFile(Message.of("importFile.empty"));
		}
		return rows;
	}

	private static List<String> headers(List<String> row) {
		List<String> headers = row.stream().map(String::strip).toList();
		if (headers.size() > MOST_COLUMNS || headers.stream().anyMatch((name) -> name.length() > LONGEST_HEADER)) {
			throw new UnreadableFile(Message.of("importFile.no-header"));
		}
		Set<String> seen = new HashSet<>();
		for (String name : headers) {
			if (!name.isEmpty() && !seen.add(name.toLowerCase(Locale.ROOT))) {
				throw new UnreadableFile(Message.of("importFile.column-twice", name));
			}
		}
		return headers;
	}

	private static long count(String text, char wanted) {
		return text.chars().filter((c) -> c == wanted).count();
	}

}
