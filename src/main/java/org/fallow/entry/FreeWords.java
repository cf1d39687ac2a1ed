package org.fallow.entry;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;

/**
 * What people's own words name: a listed symptom, or something that may be a red flag.
 * The lists of all languages are looked at, whatever language the page has. A word that
 * is found is only ever a reason to ask, so that one too many does no harm.
 */
public final class FreeWords {

	private static final List<String> LANGUAGES = List.of("en", "de");

	private static final String RED_FLAG = "RED_FLAG";

	private static final List<String> RED_FLAGS = new ArrayList<>();

	private static final Map<Symptom, List<String>> LISTED = new EnumMap<>(Symptom.class);

	static {
		LANGUAGES.forEach(FreeWords::read);
	}

	private FreeWords() {
	}

	/**
	 * Whether words speak of chest, heart, breath or fainting.
	 * @param words what somebody wrote
	 * @return true if the red flags have to be asked again; such words are never a
	 * complaint
	 */
	public static boolean speakOfARedFlag(String words) {
		return isAmong(RED_FLAGS, words);
	}

	/**
	 * The listed symptoms and complaints that words name.
	 * @param words what somebody wrote
	 * @return in the order of the list; empty if they name none
	 */
	public static List<Symptom> named(String words) {
		return LISTED.entrySet()
			.stream()
			.filter((listed) -> isAmong(listed.getValue(), words))
			.map(Map.Entry::getKey)
			.toList();
	}

	private static boolean isAmong(List<String> list, String words) {
		String folded = folded(words);
		String letters = folded.replaceAll("[^\\p{L} ]", "");
		return list.stream().anyMatch((word) -> folded.contains(word) || letters.contains(word));
	}

	/**
	 * Small letters without accents, umlauts in either spelling; of all else only
	 * pictures are left.
	 */
	static String folded(String words) {
		String small = Normalizer.normalize(words, Normalizer.Form.NFKC)
			.toLowerCase(Locale.ROOT)
			.replace("ß", "ss")
			.replaceAll("\\p{Cf}", "");
		return Normalizer.normalize(small, Normalizer.Form.NFD)
			.replaceAll("\\p{M}", "")
			.replaceAll("([aou])e", "$1")
			.replaceAll("[^\\p{L}\\p{So}]+", " ")
			.strip();
	}

	private static void read(String language) {
		Properties lists = new Properties();
		String name = "free-words_" + language + ".properties";
		try (InputStream in = Objects.requireNonNull(FreeWords.class.getResourceAsStream(name), name)) {
			lists.load(new InputStreamReader(in, StandardCharsets.UTF_8));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		lists.stringPropertyNames().forEach((key) -> words(key).addAll(split(lists.getProperty(key))));
	}

	private static List<String> words(String key) {
		return RED_FLAG.equals(key) ? RED_FLAGS
				: LISTED.computeIfAbsent(Symptom.valueOf(key), (symptom) -> new ArrayList<>());
	}

	private static List<String> split(String list) {
		return Arrays.stream(list.split(",")).map(FreeWords::folded).filter((word) -> !word.isEmpty()).toList();
	}

}
