package org.fallow.assess;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.exchange.csv.CsvFile;
import org.jspecify.annotations.Nullable;

/**
 * Where the columns of a file of events stand; its names are fixed, their order is not.
 *
 * @param headers names of the columns as the file writes them
 * @param byName index of each column by its name in lower case
 */
record EventColumns(List<String> headers, Map<String, Integer> byName) {

	private static final List<String> NEEDED = List.of("person", "day", "kind");

	EventColumns {
		headers = List.copyOf(headers);
		byName = Map.copyOf(byName);
	}

	static EventColumns of(CsvFile file) {
		Map<String, Integer> byName = new TreeMap<>();
		for (int i = 0; i < file.headers().size(); i++) {
			byName.put(file.headers().get(i).toLowerCase(Locale.ROOT), i);
		}
		for (String name : NEEDED) {
			if (!byName.containsKey(name)) {
				throw BadInput.line(file.path(), 1, "assess.events.column", name, String.join(", ", NEEDED));
			}
		}
		return new EventColumns(file.headers(), byName);
	}

	String person(CsvRecord row) {
		return text(row, "person");
	}

	String text(CsvRecord row, String name) {
		Integer index = this.byName.get(name);
		return (index == null || index >= row.getFieldCount()) ? "" : row.getField(index).strip();
	}

	@Nullable String header(String name) {
		Integer index = this.byName.get(name);
		return (index == null) ? null : this.headers.get(index);
	}

}
