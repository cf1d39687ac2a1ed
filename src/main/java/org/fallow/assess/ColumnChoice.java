package org.fallow.assess;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.ImportField;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

/**
 * What the command line says about the columns of the file of mornings.
 *
 * @param columns name of the column for each field whose name is not recognised; empty
 * for a field whose column is not to be used
 * @param method how the heart rate was taken where a row does not say
 * @param posture posture where a row does not say
 */
record ColumnChoice(Map<ImportField, String> columns, Method method, Posture posture) {

	private static final Set<ImportField> OF_PEOPLE = EnumSet.of(ImportField.GROUP, ImportField.BIRTH_DATE);

	private static final Set<ImportField> MEASUREMENTS = EnumSet.of(ImportField.RHR, ImportField.RMSSD);

	ColumnChoice {
		columns = new LinkedHashMap<>(columns);
	}

	/** The file with its columns: those chosen, and of the rest those recognised. */
	MorningFile of(CsvFile file) {
		EnumMap<ImportField, Integer> all = new EnumMap<>(ImportField.class);
		this.columns.forEach((field, name) -> {
			if (!name.isEmpty()) {
				all.put(field, index(file, name));
			}
		});
		Set<Integer> chosen = Set.copyOf(all.values());
		ColumnMapping.guess(file.headers()).columns().forEach((field, index) -> {
			if (!OF_PEOPLE.contains(field) && !this.columns.containsKey(field) && !chosen.contains(index)) {
				all.put(field, index);
			}
		});
		ColumnMapping mapping = new ColumnMapping(all, this.method, this.posture);
		check(file, mapping);
		return new MorningFile(file.headers(), mapping);
	}

	private static int index(CsvFile file, String name) {
		List<String> headers = file.headers();
		for (int i = 0; i < headers.size(); i++) {
			if (headers.get(i).equalsIgnoreCase(name.strip())) {
				return i;
			}
		}
		throw BadInput.line(file.path(), 1, "assess.columns.none", name, String.join(", ", headers));
	}

	private static void check(CsvFile file, ColumnMapping mapping) {
		for (ImportField field : ImportField.REQUIRED.stream().sorted().toList()) {
			if (!mapping.columns().containsKey(field)) {
				throw BadInput.line(file.path(), 1, "assess.columns.choose", Message.of("mapping.missing." + field),
						word(field));
			}
		}
		for (Problem problem : mapping.problems(file.headers().size())) {
			throw new BadInput(new BadInput.Place(file.path(), 1, null, null), problem.message());
		}
		if (MEASUREMENTS.stream().noneMatch(mapping.columns()::containsKey)) {
			throw BadInput.line(file.path(), 1, "assess.columns.choose", Message.of("assess.columns.measurement"),
					word(ImportField.RHR));
		}
	}

	/** What is not read of a file, so that no misspelt column is lost in silence. */
	static List<Message> notes(MorningFile file) {
		List<Message> notes = new ArrayList<>();
		List<String> unread = new ArrayList<>(file.headers());
		file.mapping().columns().values().forEach((index) -> unread.remove(file.headers().get(index)));
		if (!unread.isEmpty()) {
			notes.add(Message.of("assess.columns.not-taken", String.join(", ", unread)));
		}
		if (!file.mapping().columns().containsKey(ImportField.SYMPTOMS)) {
			notes.add(Message.of("assess.columns.no-symptoms"));
		}
		return notes;
	}

	static String word(ImportField field) {
		return field.name().toLowerCase(Locale.ROOT).replace('_', '-');
	}

}
