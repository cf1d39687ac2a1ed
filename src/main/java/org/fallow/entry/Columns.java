package org.fallow.entry;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.support.SqlArrayValue;

/**
 * Turns values into columns and back: enums are their names, instants timestamps with
 * time zone, a missing value null.
 */
public final class Columns {

	private Columns() {
	}

	/**
	 * A row's values as the database takes them.
	 * @param values in the order of the columns
	 * @return the row
	 */
	public static @Nullable Object[] of(@Nullable Object... values) {
		return Arrays.stream(values).map(Columns::column).toArray();
	}

	private static @Nullable Object column(@Nullable Object value) {
		if (value instanceof Enum<?> named) {
			return named.name();
		}
		return (value instanceof Instant instant) ? instant.atOffset(ZoneOffset.UTC) : value;
	}

	/**
	 * A list as an array column.
	 * @param type element type, as PostgreSQL calls it
	 * @param values the elements; enums become their names
	 * @return the array
	 */
	public static SqlArrayValue array(String type, List<?> values) {
		return new SqlArrayValue(type,
				values.stream().map((v) -> (v instanceof Enum<?> named) ? named.name() : v).toArray());
	}

	public static LocalDate day(ResultSet row, String column) throws SQLException {
		return row.getObject(column, LocalDate.class);
	}

	public static @Nullable LocalDate dayOrNull(ResultSet row, String column) throws SQLException {
		return row.getObject(column, LocalDate.class);
	}

	public static @Nullable Double number(ResultSet row, String column) throws SQLException {
		BigDecimal number = row.getBigDecimal(column);
		return (number == null) ? null : number.doubleValue();
	}

	public static @Nullable Integer integer(ResultSet row, String column) throws SQLException {
		return row.getObject(column, Integer.class);
	}

	public static @Nullable Boolean truth(ResultSet row, String column) throws SQLException {
		return row.getObject(column, Boolean.class);
	}

	/**
	 * An enum column that may be null.
	 * @param <E> the enum
	 * @param row the row
	 * @param column name of the column
	 * @param type the enum
	 * @return the value, or null
	 * @throws SQLException from the driver
	 */
	public static <E extends Enum<E>> @Nullable E nullable(ResultSet row, String column, Class<E> type)
			throws SQLException {
		String name = row.getString(column);
		return (name == null) ? null : Enum.valueOf(type, name);
	}

	/**
	 * An array of enum names.
	 * @param <E> the enum
	 * @param row the row
	 * @param column name of the column
	 * @param type the enum
	 * @return the values in order
	 * @throws SQLException from the driver
	 */
	public static <E extends Enum<E>> List<E> list(ResultSet row, String column, Class<E> type) throws SQLException {
		return Arrays.stream((String[]) row.getArray(column).getArray()).map((n) -> Enum.valueOf(type, n)).toList();
	}

	/**
	 * When a fact became known.
	 * @param row a row of a fact
	 * @return instant and civil day
	 * @throws SQLException from the driver
	 */
	public static Recorded recorded(ResultSet row) throws SQLException {
		return new Recorded(row.getObject("recorded_at", OffsetDateTime.class).toInstant(), day(row, "recorded_on"));
	}

}
