package org.fallow.exchange.imports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import java.util.function.BiConsumer;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.ImportField;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Repository;

/**
 * The rows of files, staged until they are taken in. Every call needs a transaction.
 */
@Repository
class ImportRows {

	private static final String COPY = "copy import_row (job_id, line, person, cells) from stdin (format csv)";

	private static final String NAME = "coalesce(btrim(cells[?], E' \\t'), '')";

	private static final int FETCH = 500;

	private static final int CHUNK = 1 << 16;

	private final JdbcTemplate jdbc;

	ImportRows(JdbcTemplate jdbc) {
		this.jdbc = jdbc;
	}

	/**
	 * Copies all rows of a file; answers how many. People are named by the column that
	 * looks like theirs.
	 */
	long stage(UUID job, CsvFile file) {
		Integer column = ColumnMapping.guess(file.headers()).columns().get(ImportField.PERSON);
		Long rows = this.jdbc.execute((ConnectionCallback<Long>) (connection) -> copy(connection, job, file, column));
		return (rows == null) ? 0 : rows;
	}

	private static Long copy(Connection connection, UUID job, CsvFile file, @Nullable Integer person)
			throws SQLException {
		CopyIn copy = connection.unwrap(PGConnection.class).getCopyAPI().copyIn(COPY);
		try {
			StringBuilder chunk = new StringBuilder();
			file.forEachRow((record) -> {
				append(chunk, job, record, person);
				if (chunk.length() > CHUNK) {
					send(copy, chunk);
				}
			});
			send(copy, chunk);
			return copy.endCopy();
		}
		finally {
			if (copy.isActive()) {
				copy.cancelCopy();
			}
		}
	}

	private static void send(CopyIn copy, StringBuilder chunk) {
		byte[] bytes = chunk.toString().getBytes(StandardCharsets.UTF_8);
		chunk.setLength(0);
		try {
			copy.writeToCopy(bytes, 0, bytes.length);
		}
		catch (SQLException ex) {
			throw new UncheckedIOException(new IOException(ex));
		}
	}

	/** One line of CSV whose last cell is an array literal. */
	private static void append(StringBuilder chunk, UUID job, CsvRecord record, @Nullable Integer person) {
		chunk.append(job).append(',').append(record.getStartingLineNumber()).append(',');
		if (person != null) {
			String name = (person < record.getFieldCount()) ? trimmed(record.getField(person)) : "";
			chunk.append('"').append(name.replace("\"", "\"\"")).append('"');
		}
		chunk.append(",\"{");
		String separator = "";
		for (String cell : record.getFields()) {
			chunk.append(separator).append("\"\"").append(inArray(cell)).append("\"\"");
			separator = ",";
		}
		chunk.append("}\"\n");
	}

	private static String inArray(String cell) {
		return (cell.indexOf('"') < 0 && cell.indexOf('\\') < 0) ? cell
				: cell.replace("\\", "\\\\").replace("\"", "\\\"").replace("\"", "\"\"");
	}

	/** As {@link #NAME} does it. */
	private static String trimmed(String cell) {
		int from = 0;
		int to = cell.length();
		while (from < to && isBlank(cell.charAt(from))) {
			from++;
		}
		while (from < to && isBlank(cell.charAt(to - 1))) {
			to--;
		}
		return cell.substring(from, to);
	}

	private static boolean isBlank(char c) {
		return c == ' ' || c == '\t';
	}

	/**
	 * Notes of each row whom it is about, where another column than the one guessed says
	 * so.
	 */
	void nameThePeople(UUID job, int column) {
		this.jdbc.update(
				"update import_row set person = " + NAME + " where job_id = ? and person is distinct from " + NAME,
				column + 1, job, column + 1);
	}

	/** The next people in the order of their names, after one or from the first on. */
	List<String> people(UUID job, @Nullable String after, int most) {
		String rest = " order by person limit " + most;
		if (after == null) {
			return this.jdbc.queryForList("select distinct person from import_row where job_id = ?" + rest,
					String.class, job);
		}
		return this.jdbc.queryForList("select distinct person from import_row where job_id = ? and person > ?" + rest,
				String.class, job, after);
	}

	/** Goes through a person's rows, in the order of the file. */
	void forEach(UUID job, String person, BiConsumer<Long, List<String>> reader) {
		this.jdbc.query((connection) -> {
			var statement = connection
				.prepareStatement("select line, cells from import_row where job_id = ? and person = ? order by line");
			statement.setFetchSize(FETCH);
			statement.setObject(1, job);
			statement.setString(2, person);
			return statement;
		}, (row) -> {
			reader.accept(row.getLong(1), ImportJobs.texts(row.getArray(2)));
		});
	}

	long count(UUID job) {
		Long count = this.jdbc.queryForObject("select count(*) from import_row where job_id = ?", Long.class, job);
		return (count == null) ? 0 : count;
	}

	/** The first rows of a file. */
	List<List<String>> samples(UUID job, int most) {
		return this.jdbc.query("select cells from import_row where job_id = ? order by line limit ?",
				(row, number) -> ImportJobs.texts(row.getArray(1)), job, most);
	}

	void forget(UUID job) {
		this.jdbc.update("delete from import_row where job_id = ?", job);
	}

}
