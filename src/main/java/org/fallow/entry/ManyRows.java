package org.fallow.entry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.support.SqlArrayValue;

/**
 * Stores many rows of one table in few statements: each statement takes the columns as
 * arrays, and what is the same in all rows once.
 */
public final class ManyRows {

	/** Rows of one statement: what it needs in memory is bounded by that. */
	public static final int AT_ONCE = 1000;

	private final List<Column> columns;

	private final String sql;

	/**
	 * How rows of a table are stored.
	 * @param table its name, with an alias where the end needs one
	 * @param columns in the order of the rows' values
	 * @param end what follows the statement, such as what to do about rows that are
	 * there; may be empty
	 */
	public ManyRows(String table, List<Column> columns, String end) {
		this.columns = List.copyOf(columns);
		List<Column> varying = this.columns.stream().filter((column) -> !column.same()).toList();
		this.sql = "insert into " + table + " (" + joined(this.columns.stream().map(Column::name).toList())
				+ ") select " + joined(this.columns.stream().map(Column::selected).toList()) + " from unnest("
				+ joined(varying.stream().map((column) -> "?::" + column.type().element + "[]").toList()) + ") as r ("
				+ joined(varying.stream().map(Column::name).toList()) + ") " + end;
	}

	private static String joined(List<String> parts) {
		return String.join(", ", parts);
	}

	/**
	 * Stores rows.
	 * @param template where
	 * @param rows as {@link Columns#of} makes them
	 */
	public void store(JdbcTemplate template, List<@Nullable Object[]> rows) {
		for (int from = 0; from < rows.size(); from += AT_ONCE) {
			template.update(this.sql, values(rows.subList(from, Math.min(rows.size(), from + AT_ONCE))));
		}
	}

	private @Nullable Object[] values(List<@Nullable Object[]> rows) {
		List<@Nullable Object> same = new ArrayList<>();
		List<@Nullable Object> arrays = new ArrayList<>();
		for (int i = 0; i < this.columns.size(); i++) {
			Column column = this.columns.get(i);
			if (column.same()) {
				same.add(rows.get(0)[i]);
			}
			else {
				arrays.add(new SqlArrayValue(column.type().element, array(column.type(), rows, i)));
			}
		}
		same.addAll(arrays);
		return same.toArray();
	}

	private static Object[] array(Type type, List<@Nullable Object[]> rows, int column) {
		Object[] array = type.array(rows.size());
		for (int i = 0; i < array.length; i++) {
			Object value = rows.get(i)[column];
			array[i] = (value == null || !(array instanceof String[])) ? value
					: (value instanceof List<?> list) ? literal(list) : value.toString();
		}
		return array;
	}

	/** Numbers and names, which need no quotes. */
	private static String literal(List<?> list) {
		return "{" + String.join(",", list.stream().map(Objects::toString).toList()) + "}";
	}

	/** The types that columns have. */
	public enum Type {

		/** Text. */
		TEXT("text"),

		/** A 32-bit whole number. */
		INTEGER("int4"),

		/** A number, stored by a column as precisely as it keeps it. */
		NUMBER("float8"),

		/** True or false. */
		TRUTH("bool"),

		/** A civil day. */
		DAY("date"),

		/** An instant. */
		INSTANT("timestamptz"),

		/** A UUID. */
		ID("uuid"),

		/** A list of whole numbers. */
		INTEGERS("text"),

		/** A list of names of enums. */
		NAMES("text");

		private final String element;

		Type(String element) {
			this.element = element;
		}

		private Object[] array(int length) {
			return switch (this) {
				case INTEGER -> new Integer[length];
				case NUMBER -> new Double[length];
				case TRUTH -> new Boolean[length];
				default -> new String[length];
			};
		}

		private String cast() {
			return (this == INTEGERS) ? "::int4[]" : (this == NAMES) ? "::text[]" : "";
		}

	}

	/**
	 * A column.
	 *
	 * @param name its name
	 * @param type its type
	 * @param same whether its value is the same in all rows stored at once
	 */
	public record Column(String name, Type type, boolean same) {

		/**
		 * Columns whose values differ from row to row.
		 * @param type their type
		 * @param names their names, separated by spaces
		 * @return in that order
		 */
		public static List<Column> of(Type type, String names) {
			return Arrays.stream(names.split(" ")).map((name) -> new Column(name, type, false)).toList();
		}

		/**
		 * A column whose value is the same in all rows.
		 * @param type its type
		 * @param name its name
		 * @return the column
		 */
		public static List<Column> same(Type type, String name) {
			return List.of(new Column(name, type, true));
		}

		private String selected() {
			return this.same ? "?::" + this.type.element : "r." + this.name + this.type.cast();
		}

	}

}
