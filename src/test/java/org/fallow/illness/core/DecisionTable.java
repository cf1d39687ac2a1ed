package org.fallow.illness.core;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * A decision table with wildcards, read from a file that also says which values each
 * column has. How a cell is written is said at the head of the file.
 */
final class DecisionTable {

	private final Map<String, List<String>> values = new LinkedHashMap<>();

	private final Map<String, List<String>> sets = new LinkedHashMap<>();

	private final List<List<String>> rows = new ArrayList<>();

	private long[][] rowsOfValue = {};

	private DecisionTable(List<String> lines) {
		lines.stream().filter((line) -> line.startsWith("# value ")).forEach(this::readValues);
		lines.stream().filter((line) -> line.startsWith("# set ")).forEach(this::readSet);
		List<List<String>> table = lines.stream()
			.filter((line) -> !line.startsWith("#"))
			.map(DecisionTable::cells)
			.toList();
		this.rows.addAll(table.subList(1, table.size()));
		if (!columns().equals(table.get(0).subList(0, columns().size()))) {
			throw new IllegalArgumentException("columns and values differ: " + table.get(0));
		}
		this.rowsOfValue = IntStream.range(0, columns().size()).mapToObj(this::rowsByValue).toArray(long[][]::new);
	}

	static DecisionTable read(String resource) throws IOException {
		try (InputStream in = DecisionTable.class.getResourceAsStream(resource)) {
			String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
			return new DecisionTable(text.lines().toList());
		}
	}

	private void readValues(String line) {
		String[] parts = line.substring("# value ".length()).split(" = ");
		this.values.put(parts[0], list(parts[1]));
	}

	private void readSet(String line) {
		String[] parts = line.substring("# set ".length()).split(" = ");
		this.sets.put(parts[0], list(parts[1]));
	}

	private static List<String> list(String text) {
		return Arrays.stream(text.split("\\|")).map(String::strip).toList();
	}

	private static List<String> cells(String line) {
		return Arrays.stream(line.split(",")).map(String::strip).toList();
	}

	/** For each value of a column, the rows whose cell takes it, as a set of bits. */
	private long[] rowsByValue(int column) {
		String name = columns().get(column);
		List<String> all = values(name);
		long[] found = new long[all.size()];
		for (int row = 0; row < this.rows.size(); row++) {
			for (String taken : taken(name, this.rows.get(row).get(column))) {
				found[all.indexOf(taken)] |= 1L << row;
			}
		}
		return found;
	}

	private List<String> taken(String column, String cell) {
		List<String> all = values(column);
		if (cell.equals("*")) {
			return all;
		}
		boolean but = cell.startsWith("!");
		List<String> named = list(but ? cell.substring(1) : cell).stream()
			.flatMap((value) -> this.sets.getOrDefault(column + " " + value, List.of(value)).stream())
			.toList();
		if (!all.containsAll(named)) {
			throw new IllegalArgumentException("no such value of " + column + ": " + cell);
		}
		return all.stream().filter((value) -> named.contains(value) != but).toList();
	}

	List<String> columns() {
		return List.copyOf(this.values.keySet());
	}

	List<String> values(String column) {
		return Objects.requireNonNull(this.values.get(column), column);
	}

	String outcome(int row) {
		return this.rows.get(row).get(columns().size());
	}

	int size() {
		return this.rows.size();
	}

	/** Shows every combination of values, and the rows that hold for it. */
	void forEach(Visit visit) {
		String[] chosen = new String[columns().size()];
		List<List<String>> all = columns().stream().map(this::values).toList();
		each(all, chosen, 0, -1L >>> (64 - this.rows.size()), visit);
	}

	private void each(List<List<String>> all, String[] chosen, int column, long holding, Visit visit) {
		if (column == chosen.length) {
			visit.combination(chosen, holding);
			return;
		}
		List<String> choices = all.get(column);
		for (int i = 0; i < choices.size(); i++) {
			chosen[column] = choices.get(i);
			each(all, chosen, column + 1, holding & this.rowsOfValue[column][i], visit);
		}
	}

	/** Is shown one combination of values. */
	@FunctionalInterface
	interface Visit {

		/** The values by column, used again for the next one, and the rows that hold. */
		void combination(String[] chosen, long rows);

	}

}
