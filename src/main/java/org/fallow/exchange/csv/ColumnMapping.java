package org.fallow.exchange.csv;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Which column of a file is which, and what holds where the file does not say.
 *
 * @param columns index of the column, counting from 0, of each field the file has
 * @param method how the heart rate was taken where a row does not say; absent if unknown
 * @param posture posture where a row does not say; absent if unknown
 */
public record ColumnMapping(Map<ImportField, Integer> columns, @Nullable Method method, @Nullable Posture posture) {

	/** Copies the columns, in the order of the fields. */
	public ColumnMapping {
		EnumMap<ImportField, Integer> sorted = new EnumMap<>(ImportField.class);
		sorted.putAll(columns);
		columns = Collections.unmodifiableMap(sorted);
	}

	/**
	 * Guesses by the columns' names.
	 * @param headers names of the columns
	 * @return for each field the column whose name fits best, no column twice
	 */
	public static ColumnMapping guess(List<String> headers) {
		EnumMap<ImportField, Integer> columns = new EnumMap<>(ImportField.class);
		for (ImportField field : ImportField.values()) {
			int best = -1;
			for (int i = 0; i < headers.size(); i++) {
				int fit = field.fit(headers.get(i));
				if (fit >= 0 && (best < 0 || fit < field.fit(headers.get(best))) && !columns.containsValue(i)) {
					best = i;
				}
			}
			if (best >= 0) {
				columns.put(field, best);
			}
		}
		return new ColumnMapping(columns, null, null);
	}

	/**
	 * The same columns with other defaults.
	 * @param otherMethod how the heart rate was taken where a row does not say
	 * @param otherPosture posture where a row does not say
	 * @return a copy
	 */
	public ColumnMapping withDefaults(@Nullable Method otherMethod, @Nullable Posture otherPosture) {
		return new ColumnMapping(this.columns, otherMethod, otherPosture);
	}

	/**
	 * What keeps a file from being read in this way.
	 * @param columnCount how many columns the file has
	 * @return problems; empty if it can be read
	 */
	public List<Problem> problems(int columnCount) {
		if (this.columns.values().stream().anyMatch((index) -> index < 0 || index >= columnCount)) {
			return List.of(Problem.of("columns", "mapping.no-such-column"));
		}
		if (this.columns.values().stream().distinct().count() < this.columns.size()) {
			return List.of(Problem.of("columns", "mapping.column-twice"));
		}
		return ImportField.REQUIRED.stream()
			.filter((field) -> !this.columns.containsKey(field))
			.sorted()
			.map((field) -> new Problem(field.name(), Message.of("mapping.missing." + field)))
			.toList();
	}

	/**
	 * What a row holds for a field.
	 * @param row the row
	 * @param field the field
	 * @return its text without spaces around it; empty if there is none
	 */
	public String text(List<String> row, ImportField field) {
		Integer index = this.columns.get(field);
		return (index == null || index >= row.size()) ? "" : row.get(index).strip();
	}

	/**
	 * This mapping in one line, for the job's row.
	 * @return text that {@link #parse} reads
	 */
	public String asText() {
		String text = this.columns.entrySet()
			.stream()
			.map((entry) -> entry.getKey() + "=" + entry.getValue())
			.collect(Collectors.joining(" "));
		return text + " method=" + Objects.toString(this.method, "") + " posture=" + Objects.toString(this.posture, "");
	}

	/**
	 * Reads a mapping written by {@link #asText}.
	 * @param text the line
	 * @return the mapping
	 */
	public static ColumnMapping parse(String text) {
		EnumMap<ImportField, Integer> columns = new EnumMap<>(ImportField.class);
		Method method = null;
		Posture posture = null;
		for (String part : text.split(" ")) {
			String[] pair = part.split("=", 2);
			switch (pair[0]) {
				case "method" -> method = pair[1].isEmpty() ? null : Method.valueOf(pair[1]);
				case "posture" -> posture = pair[1].isEmpty() ? null : Posture.valueOf(pair[1]);
				default -> columns.put(ImportField.valueOf(pair[0]), Integer.valueOf(pair[1]));
			}
		}
		return new ColumnMapping(columns, method, posture);
	}

}
