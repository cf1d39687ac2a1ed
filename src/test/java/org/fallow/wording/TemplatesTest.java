package org.fallow.wording;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.CriterionState;
import org.fallow.illness.core.Mark;
import org.fallow.illness.core.ReportKind;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

class TemplatesTest {

	private static final Path RESOURCES = Path.of("src/main/resources");

	private static final Path TEMPLATES = RESOURCES.resolve("templates");

	private static final Pattern KEY = Pattern
		.compile("#\\{([a-zA-Z][\\w.\\-]*)[}(]|#messages\\.msg\\('([\\w.\\-]+)'\\)");

	private static final Pattern KEY_PREFIX = Pattern.compile("#\\{\\$\\{'((?!criterion\\.)[\\w.\\-]+\\.)' \\+");

	private static final Pattern TAG = Pattern.compile("<!?/?[a-zA-Z](?:\"[^\"]*\"|'[^']*'|[^'\">])*>");

	private static final Pattern WORDS_IN_ATTRIBUTE = Pattern
		.compile("\\s(?:alt|title|placeholder|aria-label|data-label)=\"[^\"]*\\p{L}");

	private static final Pattern AGAINST_THE_POLICY = Pattern
		.compile("\\s(?:style|th:style|on\\w+|hx-on[\\w:\\-]*)=|<style|<script(?![^>]*(?:th:src=|application/json))");

	static Stream<Path> templates() throws IOException {
		try (Stream<Path> files = Files.walk(TEMPLATES)) {
			return files.filter((file) -> file.toString().endsWith(".html")).sorted().toList().stream();
		}
	}

	static Stream<Arguments> namedCodes() {
		return Stream.of(arguments("clearance", Clearance.values()), arguments("symptom", Symptom.values()),
				arguments("severity", Severity.values()), arguments("method", Method.values()),
				arguments("posture", Posture.values()), arguments("feels", Feels.values()),
				arguments("feverMedicine", FeverMedicine.values()), arguments("tag", ContextTag.values()),
				arguments("kind", ReportKind.values()), arguments("intensity", Intensity.values()),
				arguments("after", AfterSession.values()), arguments("activity", Activity.values()),
				arguments("criterionState", CriterionState.values()), arguments("rhrFlag", RhrFlag.values()),
				arguments("hrvState", HrvFlag.values()), arguments("path", PathName.values()),
				arguments("protocol", Protocol.values()), arguments("mark", Mark.values()));
	}

	@ParameterizedTest
	@MethodSource("templates")
	void namesOnlyKeysThatExist(Path template) throws IOException {
		Set<String> known = messages().stringPropertyNames();
		assertThat(keysIn(Files.readString(template))).isSubsetOf(known);
	}

	/** The names of criteria come with the gates and are checked beside them. */
	@ParameterizedTest
	@MethodSource("templates")
	void buildsKeysOnlyFromPrefixesThatExist(Path template) throws IOException {
		Set<String> known = messages().stringPropertyNames();
		Matcher prefix = KEY_PREFIX.matcher(Files.readString(template));
		while (prefix.find()) {
			assertThat(known).as(prefix.group(1)).anyMatch((key) -> key.startsWith(prefix.group(1)));
		}
	}

	@ParameterizedTest
	@MethodSource("templates")
	void holdsNoTextOfItsOwn(Path template) throws IOException {
		String html = Files.readString(template);
		assertThat(TAG.matcher(html).replaceAll("")).isBlank();
		assertThat(html).doesNotContainPattern(WORDS_IN_ATTRIBUTE);
	}

	@ParameterizedTest
	@MethodSource("templates")
	void keepsToTheContentSecurityPolicy(Path template) throws IOException {
		assertThat(Files.readString(template)).doesNotContainPattern(AGAINST_THE_POLICY);
	}

	/**
	 * Rows of {@code Markup}, which escapes, and the data of charts, which has no tags.
	 */
	@Test
	void letsNothingThroughUnescapedButRowsAndChartData() throws IOException {
		Map<String, String> through = new TreeMap<>();
		for (Path template : templates().toList()) {
			Pattern.compile("th:utext=\"([^\"]*)\"|\\[\\(")
				.matcher(Files.readString(template))
				.results()
				.forEach((found) -> through.put(template.getFileName().toString(), String.valueOf(found.group(1))));
		}
		assertThat(through).containsOnly(Map.entry("squad.html", "${tableRows}"),
				Map.entry("roll.html", "${written.rows}"), Map.entry("charts.html", "${chartJson}"));
	}

	@ParameterizedTest
	@MethodSource("namedCodes")
	void namesEveryCode(String prefix, Enum<?>[] codes) throws IOException {
		Set<String> known = messages().stringPropertyNames();
		assertThat(Stream.of(codes).map((code) -> prefix + "." + code.name())).allMatch(known::contains);
	}

	@Test
	void writesApostrophesThatAPatternDoesNotSwallow() throws IOException {
		assertThat(messages().values()).noneMatch((sentence) -> sentence.toString().contains("'"));
	}

	@Test
	void saysNothingOfReadiness() throws IOException {
		assertThat(messages().values())
			.noneMatch((sentence) -> sentence.toString().toLowerCase().contains("readiness"));
	}

	@Test
	void writesEveryKeyOnce() throws IOException {
		List<String> keys = new ArrayList<>();
		for (String line : Files.readAllLines(RESOURCES.resolve("messages.properties"))) {
			if (!line.isBlank() && !line.startsWith("#")) {
				keys.add(line.substring(0, line.indexOf('=')));
			}
		}
		assertThat(keys).doesNotHaveDuplicates();
	}

	private static Set<String> keysIn(String html) {
		Set<String> keys = new TreeSet<>();
		Matcher key = KEY.matcher(html);
		while (key.find()) {
			keys.add((key.group(1) != null) ? key.group(1) : key.group(2));
		}
		return keys;
	}

	private static Properties messages() throws IOException {
		Properties messages = new Properties();
		try (Reader reader = Files.newBufferedReader(RESOURCES.resolve("messages.properties"))) {
			messages.load(reader);
		}
		return messages;
	}

}
