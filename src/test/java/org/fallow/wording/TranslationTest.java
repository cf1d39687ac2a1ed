package org.fallow.wording;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Date;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The German sentences beside the English ones. Whether they say the same only a reader
 * can tell; that none is missing, left as it was or short of an argument stands here.
 */
class TranslationTest {

	private static final Path RESOURCES = Path.of("src/main/resources");

	private static final Map<String, String> ENGLISH = sentences("messages.properties");

	private static final Map<String, String> GERMAN = sentences("messages_de.properties");

	private static final LocalDateTime MORNING = LocalDateTime.of(2026, 3, 9, 7, 5);

	private static final Pattern ARGUMENT = Pattern.compile("\\{(\\d)(?:,(\\w+))?");

	/** Words that both languages write alike, and names. */
	private static final Set<String> ALIKE = Set.of("account.language.de", "account.language.en", "account.passkeys",
			"board.col.hrv", "board.col.name", "browser.CHROME", "browser.EDGE", "browser.FIREFOX", "browser.OPERA",
			"browser.SAFARI", "browser.SAMSUNG", "calendar.kind.TEST", "calendar.name", "import.team",
			"importField.PERSON", "importField.RMSSD", "kind.COVID", "layout.name", "layout.title", "morning.rmssd",
			"nav.import", "people.name", "people.staff", "people.team", "programme.name", "role.COACH",
			"rules.by-fallow", "sessionKind.TEST", "set-up.name", "set-up.teamName", "system.ANDROID",
			"system.CHROME_OS", "system.LINUX", "system.WINDOWS", "athlete.col.rmssd", "chart.col.rmssd");

	/** Arguments, signs, units and numbers: nothing in them is a word. */
	private static final Pattern NO_WORDS = Pattern
		.compile("(?:\\{\\d(?:,number,[^}]*)?\\}|[\\s,:!·–×x%°]|\\bmin\\b|\\bms\\b|\\bm\\b|\\bs\\b|\\bin\\b|°C|ln|%n"
				+ "|\\\\u0020)*");

	@Test
	void hasTheSameKeysInTheSameOrder() {
		assertThat(GERMAN.keySet()).containsExactlyElementsOf(ENGLISH.keySet());
	}

	@Test
	void keepsTheSameSections() throws IOException {
		assertThat(comments("messages_de.properties")).isEqualTo(comments("messages.properties"));
	}

	@Test
	void leavesNothingUntranslated() {
		List<String> same = ENGLISH.keySet()
			.stream()
			.filter((key) -> ENGLISH.get(key).equals(GERMAN.get(key)))
			.filter((key) -> !NO_WORDS.matcher(ENGLISH.get(key)).matches())
			.toList();
		assertThat(same).containsExactlyInAnyOrderElementsOf(ALIKE);
	}

	@Test
	void fillsTheSameArguments() {
		assertThat(ENGLISH.keySet())
			.filteredOn(
					(key) -> !arguments(GERMAN.getOrDefault(key, "")).equals(arguments(ENGLISH.getOrDefault(key, ""))))
			.isEmpty();
	}

	@Test
	void canAllBeSaid() {
		ENGLISH.forEach((key, sentence) -> assertCanBeSaid(sentence, Locale.ENGLISH));
		GERMAN.forEach((key, sentence) -> assertCanBeSaid(sentence, Locale.GERMAN));
	}

	@Test
	void leavesNoneBlankThatIsNot() {
		assertThat(GERMAN.keySet()).filteredOn((key) -> GERMAN.getOrDefault(key, "").isBlank())
			.containsExactly("assess.usage.headerHeading");
		assertThat(ENGLISH.keySet()).filteredOn((key) -> ENGLISH.getOrDefault(key, "").isBlank())
			.containsExactly("assess.usage.headerHeading");
	}

	@Test
	void writesApostrophesThatAPatternDoesNotSwallow() {
		assertThat(GERMAN.values()).noneMatch((sentence) -> sentence.contains("'"));
	}

	/** House style: du, and quotation marks as Germans set them. */
	@Test
	void keepsTheGermanHouseStyle() {
		assertThat(GERMAN.values()).noneMatch(
				(sentence) -> Pattern.compile("\\b(?:Ihnen|Ihre?[mnrs]?)\\b|[“”][^„“”]*”").matcher(sentence).find());
		assertThat(GERMAN.values()).noneMatch((sentence) -> sentence.contains("\"") || sentence.contains("”"));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "date.short|Mo, 9. Mär", "date.long|Montag, 9. März 2026", "date.full|9. Mär 2026",
					"date.weekday|Montag, 9. Mär", "date.tick|9. Mär", "date.time|9. Mär, 07:05",
					"date.time.year|9. Mär 2026, 07:05" })
	void writesDatesTheGermanWay(String key, String written) {
		assertThat(DateTimeFormatter.ofPattern(GERMAN.getOrDefault(key, ""), Locale.GERMAN).format(MORNING))
			.isEqualTo(written);
	}

	/** A sentence may end with a date; an abbreviation's point would then stand twice. */
	@Test
	void endsNoDateWithAPoint() {
		assertThat(GERMAN.keySet()).filteredOn((key) -> key.startsWith("date.") && !key.equals("date.said"))
			.hasSize(7)
			.noneMatch((key) -> DateTimeFormatter.ofPattern(GERMAN.getOrDefault(key, ""), Locale.GERMAN)
				.format(MORNING)
				.endsWith("."));
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "number.tenths|52.04|52,0", "number.hundredths|4.1|4,10", "number.exact|1.4826|1,4826",
					"number.one|36.8|36,8", "number.signed|-3.5|−3,5", "number.count|12790|12.790" })
	void writesNumbersTheGermanWay(String key, double number, String written) {
		assertThat(new MessageFormat(GERMAN.getOrDefault(key, ""), Locale.GERMAN).format(new Object[] { number }))
			.isEqualTo(written);
	}

	private static void assertCanBeSaid(String sentence, Locale locale) {
		for (int number : new int[] { 1, 2, 40 }) {
			assertThat(said(sentence, locale, number)).as(sentence)
				.doesNotContain("{", "}")
				.satisfies((said) -> assertThat(words(sentence)).allMatch(said::contains));
		}
	}

	private static String said(String pattern, Locale locale, int number) {
		Object[] values = new Object[10];
		arguments(pattern).forEach((index, type) -> values[index] = type.isEmpty() ? "word" + index
				: type.equals("date") ? Date.from(Instant.EPOCH) : Integer.valueOf(number));
		return new MessageFormat(pattern, locale).format(values);
	}

	/** What stands for the arguments that are said as they come. */
	private static List<String> words(String pattern) {
		return arguments(pattern).entrySet()
			.stream()
			.filter((argument) -> argument.getValue().isEmpty())
			.map((argument) -> "word" + argument.getKey())
			.toList();
	}

	/** What each argument is formatted as; empty where as it comes. */
	private static Map<Integer, String> arguments(String pattern) {
		Map<Integer, Set<String>> types = new TreeMap<>();
		Matcher argument = ARGUMENT.matcher(pattern);
		while (argument.find()) {
			types.computeIfAbsent(Integer.valueOf(argument.group(1)), (index) -> new TreeSet<>())
				.add((argument.group(2) == null) ? "" : argument.group(2));
		}
		Map<Integer, String> arguments = new TreeMap<>();
		types.forEach((index, names) -> arguments.put(index, String.join("", names)));
		return arguments;
	}

	private static List<String> comments(String file) throws IOException {
		return Files.readAllLines(RESOURCES.resolve(file)).stream().filter((line) -> line.startsWith("#")).toList();
	}

	/** In the order of the file, which Properties would lose. */
	private static Map<String, String> sentences(String file) {
		Map<String, String> sentences = new LinkedHashMap<>();
		try {
			for (String line : Files.readAllLines(RESOURCES.resolve(file))) {
				int sign = line.indexOf('=');
				if (!line.startsWith("#") && sign > 0) {
					assertThat(sentences.put(line.substring(0, sign), line.substring(sign + 1))).as(line).isNull();
				}
			}
			return sentences;
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

}
