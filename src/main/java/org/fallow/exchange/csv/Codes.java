package org.fallow.exchange.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

import org.fallow.entry.FreeWords;
import org.fallow.entry.Method;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;

/**
 * The words files use. Upper and lower case, spaces, dashes and underscores make no
 * difference.
 */
public final class Codes {

	private static final Map<String, Method> METHODS = Map.of("COUNT30", Method.COUNT_30, "COUNT60", Method.COUNT_60);

	private static final Map<String, Symptom> SYMPTOMS = Map.of("SMELL", Symptom.SMELL_LOSS, "BREATHLESS",
			Symptom.BREATHLESSNESS, "FEVER", Symptom.FEVERISH, "DIARRHEA", Symptom.DIARRHOEA);

	/** Before words that are said to belong to no illness. */
	private static final String COMPLAINT = "complaint=";

	private Codes() {
	}

	/**
	 * How the heart rate was taken.
	 * @param text the word, {@code count30} for example
	 * @return the method; empty for an unknown word
	 */
	public static Optional<Method> method(String text) {
		Method short30Or60 = METHODS.get(folded(text));
		return (short30Or60 != null) ? Optional.of(short30Or60) : oneOf(Method.values(), text);
	}

	/**
	 * The value a word names.
	 * @param <E> kind of value
	 * @param values all there are
	 * @param text the word
	 * @return the value; empty for an unknown word
	 */
	public static <E extends Enum<E>> Optional<E> oneOf(E[] values, String text) {
		String wanted = folded(text);
		for (E value : values) {
			if (value.name().equals(wanted)) {
				return Optional.of(value);
			}
		}
		return Optional.empty();
	}

	/**
	 * Reads {@code code:severity} parts. Nothing is ever lost: what is no known code, or
	 * has no known severity behind its colon, is kept as free text, which counts as below
	 * the neck; a missing severity is moderate; of a symptom named twice the worse
	 * counts. Words after {@code complaint=} are said to belong to no illness.
	 * @param text parts separated by semicolons or bars; empty for none
	 * @return symptoms in the order of the list
	 */
	static List<ReportedSymptom> symptoms(String text) {
		EnumMap<Symptom, Severity> worst = new EnumMap<>(Symptom.class);
		List<String> words = new ArrayList<>();
		List<String> complaints = new ArrayList<>();
		for (String part : parts(text)) {
			String[] pair = part.split(":", 2);
			if (isComplaint(pair)) {
				complaints.add(pair[0].substring(COMPLAINT.length()).strip());
				worst.merge(Symptom.OTHER_COMPLAINT, severity(pair).orElse(Severity.MODERATE), Codes::worse);
				continue;
			}
			Optional<Symptom> symptom = symptom(pair[0]);
			Optional<Severity> severity = severity(pair);
			if (symptom.isEmpty() || severity.isEmpty()) {
				words.add((severity.isPresent() && pair.length == 2) ? pair[0].strip() : part);
			}
			worst.merge(severity.isEmpty() ? Symptom.OTHER : symptom.orElse(Symptom.OTHER),
					severity.orElse(Severity.MODERATE), Codes::worse);
		}
		return worst.entrySet()
			.stream()
			.map((entry) -> reported(entry.getKey(), entry.getValue(),
					(entry.getKey() == Symptom.OTHER) ? words : complaints))
			.toList();
	}

	private static Optional<Severity> severity(String[] pair) {
		return (pair.length == 1) ? Optional.of(Severity.MODERATE) : oneOf(Severity.values(), pair[1]);
	}

	private static Severity worse(Severity one, Severity other) {
		return (one.compareTo(other) >= 0) ? one : other;
	}

	/**
	 * Words said to belong to no illness. A file cannot be asked again: words that name a
	 * listed symptom or speak of a red flag stay free text, and so does what has no
	 * severity that can be read.
	 */
	private static boolean isComplaint(String[] pair) {
		if (!pair[0].toLowerCase(Locale.ROOT).startsWith(COMPLAINT) || severity(pair).isEmpty()) {
			return false;
		}
		String words = pair[0].substring(COMPLAINT.length());
		return !words.isBlank() && !FreeWords.speakOfARedFlag(words)
				&& FreeWords.named(words).stream().allMatch(Symptom::isComplaint);
	}

	private static ReportedSymptom reported(Symptom symptom, Severity severity, List<String> words) {
		return symptom.isInOwnWords() ? new ReportedSymptom(symptom, severity, String.join("; ", words))
				: ReportedSymptom.of(symptom, severity);
	}

	/**
	 * The listed symptom a code names.
	 * @param text the code
	 * @return the symptom; empty for anything else, which is free text
	 */
	public static Optional<Symptom> symptom(String text) {
		Symptom other = SYMPTOMS.get(folded(text));
		return ((other != null) ? Optional.of(other) : oneOf(Symptom.values(), text))
			.filter((symptom) -> !symptom.isInOwnWords());
	}

	static List<String> parts(String text) {
		return Arrays.stream(text.split("[;|]")).map(String::strip).filter((part) -> !part.isEmpty()).toList();
	}

	private static String folded(String text) {
		return text.strip().toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
	}

}
