package org.fallow.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.exchange.csv.Codes;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * What a clearance of a file says: its ceiling, then by spaces {@code no_illness}, red
 * flags examined as {@code code:severity}, or {@code athlete} for what the athlete told.
 * A physician's words say examined on the day recorded.
 *
 * @param ceiling the most it allows
 * @param word whose word it is, and what it says besides
 */
record ClearanceWords(Clearance ceiling, ClinicianWord word) {

	static @Nullable ClearanceWords of(String text, LocalDate examinedOn) {
		List<String> words = Arrays.asList(text.strip().split(" +"));
		Clearance ceiling = ceiling(words.get(0));
		if (ceiling == null) {
			return null;
		}
		List<String> more = words.subList(1, words.size());
		if (more.equals(List.of("athlete"))) {
			return new ClearanceWords(ceiling, ClinicianWord.toldByTheAthlete());
		}
		boolean noIllness = more.contains("no_illness");
		List<ReportedSymptom> examined = new ArrayList<>();
		for (String word : more) {
			ReportedSymptom named = examined(word);
			if (named == null && !word.equals("no_illness")) {
				return null;
			}
			if (named != null) {
				examined.add(named);
			}
		}
		return new ClearanceWords(ceiling, more.isEmpty() ? ClinicianWord.PLAIN
				: new ClinicianWord(ClinicianWord.By.PHYSICIAN, examinedOn, noIllness, examined));
	}

	private static @Nullable ReportedSymptom examined(String word) {
		String[] parts = word.split(":", 2);
		Optional<Symptom> symptom = Codes.symptom(parts[0]).filter(ClinicianWord.CAN_BE_EXAMINED::contains);
		Optional<Severity> severity = (parts.length == 1) ? Optional.empty() : Codes.oneOf(Severity.values(), parts[1]);
		return (symptom.isEmpty() || severity.isEmpty()) ? null : ReportedSymptom.of(symptom.get(), severity.get());
	}

	static @Nullable Clearance ceiling(String word) {
		return switch (word.toLowerCase(Locale.ROOT)) {
			case "rest" -> Clearance.REST;
			case "easy" -> Clearance.EASY_ONLY;
			case "full" -> Clearance.FULL_TRAINING;
			default -> null;
		};
	}

	/** The last day told; of what an athlete tells the last possible where none is. */
	@Nullable LocalDate until(LocalDate day, @Nullable LocalDate told, int days) {
		boolean open = told == null && this.word.by() == ClinicianWord.By.ATHLETE;
		return open ? day.plusDays(days - 1L) : told;
	}

}
