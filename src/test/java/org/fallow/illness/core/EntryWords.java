package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.jspecify.annotations.Nullable;

/**
 * Reads a morning's entry from the words of docs/stories.md: the reading, then what else
 * is told, with commas between.
 */
final class EntryWords {

	private static final String READING = "as usual|no reading|[0-9]+(?:\\.[0-9]+)?";

	private static final String SEVERITY = "(mild|moderate|severe)";

	private @Nullable Double rhr;

	private Method method = Method.STRAP;

	private Posture posture = Posture.LYING;

	private @Nullable Double temperature;

	private final List<ReportedSymptom> symptoms = new ArrayList<>();

	private boolean fever;

	private FeverMedicine medicine = FeverMedicine.NONE;

	private boolean eating = true;

	private Feels feels = Feels.WELL;

	private final List<ContextTag> tags = new ArrayList<>();

	private @Nullable Meanwhile meanwhile;

	private EntryWords() {
	}

	static boolean isEntry(String told) {
		return told.split(", ")[0].matches(READING);
	}

	static MorningEntry entry(String told, int usual, LocalDate day, Recorded recorded) {
		EntryWords entry = new EntryWords();
		String[] parts = told.split(", ");
		entry.rhr = switch (parts[0]) {
			case "as usual" -> Double.valueOf(usual);
			case "no reading" -> null;
			default -> Double.valueOf(parts[0]);
		};
		for (int i = 1; i < parts.length; i++) {
			entry.read(parts[i]);
		}
		return new MorningEntry(day, recorded, entry.method, entry.posture, entry.rhr, null, false, entry.temperature,
				entry.symptoms, entry.fever, entry.medicine, entry.eating, entry.feels, null, entry.tags, null,
				entry.meanwhile);
	}

	private void read(String part) {
		switch (part) {
			case "standing" -> this.posture = Posture.STANDING;
			case "by finger" -> this.method = Method.COUNT_60;
			case "fever" -> this.fever = true;
			case "medicine for the illness" -> this.medicine = FeverMedicine.ILLNESS;
			case "medicine for something else" -> this.medicine = FeverMedicine.OTHER;
			case "not eating" -> this.eating = false;
			case "feels unwell" -> this.feels = Feels.UNWELL;
			case "of the cycle" -> this.tags.add(ContextTag.CYCLE_PHASE);
			case "at altitude" -> this.tags.add(ContextTag.ALTITUDE);
			case "in heat" -> this.tags.add(ContextTag.HEAT);
			case "not ill meanwhile" -> this.meanwhile = Meanwhile.NO;
			default -> matched(new Telling.Words(part));
		}
	}

	private void matched(Telling.Words words) {
		if (words.are("([0-9.]+) °C")) {
			this.temperature = Double.valueOf(words.group(1));
		}
		else if (words.are("ill meanwhile since day (\\d+)")) {
			this.meanwhile = Meanwhile.ill(words.day(1));
		}
		else if (words.are("“(.+)” " + SEVERITY + "( of no illness)?")) {
			this.symptoms.add(ReportedSymptom.inOwnWords(Severity.valueOf(Telling.code(words.group(2))), words.group(1),
					words.has(3)));
		}
		else if (words.are("(.+) " + SEVERITY)) {
			this.symptoms.add(words.symptom());
		}
		else {
			throw new IllegalArgumentException("nothing that an entry can tell");
		}
	}

}
