package org.fallow.rules;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;

import org.fallow.rules.RuleField.Mark;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * The table of every default in docs/defaults.md says what the rule set says.
 * {@code mvn test -Dtest=DefaultsDocTest -Ddocs.write=true} writes it anew.
 */
class DefaultsDocTest {

	private static final Path DOC = Path.of("docs/defaults.md");

	private static final String BEGIN = "<!-- defaults: begin -->\n";

	private static final String END = "<!-- defaults: end -->\n";

	private static final Map<String, String> SOURCES = Map.of("baseline.madScale",
			"definition: makes the MAD of normal values their SD", "hrv.days", "Plews 2012", "hrv.leastReadings",
			"Plews 2014", "opening.feverCelsius", "IOC consensus 2022 (Schwellnus)", "limits.moderateWorst",
			"IOC consensus 2022 (Schwellnus), table 3", "flags.restingBpm", "textbook: adults at rest have 60 to 100");

	private static final Map<Mark, String> HOW_SURE = Map.of(Mark.TRADE, "common practice, no source", Mark.OWN,
			"our own convention, untested", Mark.R, "read", Mark.R2, "read in a secondary report", Mark.M,
			"from memory");

	@Test
	void saysEveryDefaultWithItsSourceAndHowSureItIs() throws IOException {
		String doc = Files.readString(DOC);
		int begin = doc.indexOf(BEGIN) + BEGIN.length();
		int end = doc.indexOf(END);
		if (Boolean.getBoolean("docs.write")) {
			doc = doc.substring(0, begin) + table() + doc.substring(end);
			Files.writeString(DOC, doc);
			end = doc.indexOf(END);
		}
		assertThat(doc.substring(begin, end)).isEqualTo(table());
	}

	private static String table() throws IOException {
		JsonNode tree = JsonMapper.builder().build().readTree(RuleJson.canonical(DefaultRules.ruleSet()));
		Properties words = new Properties();
		try (Reader reader = Files.newBufferedReader(Path.of("src/main/resources/messages.properties"))) {
			words.load(reader);
		}
		List<RuleField> fields = new ArrayList<>(RuleFields.general());
		DefaultRules.ruleSet().paths().forEach((path) -> fields.addAll(PathFields.of(path)));
		StringBuilder table = new StringBuilder(
				"| number | default | safe bounds | source | how sure |\n|---|---|---|---|---|\n");
		for (RuleField field : fields) {
			String label = words.getProperty("rules.field." + field.label());
			assertThat(label).as(field.label()).isNotNull();
			table.append("| `" + field.pointer() + "` " + label.replace("{0}", lastPart(field.pointer())) + " | "
					+ tree.at(field.pointer()).asString() + " | " + plain(field.least()) + " to " + plain(field.most())
					+ " | " + source(field) + " | " + HOW_SURE.get(field.mark()) + " |\n");
		}
		return table.toString();
	}

	private static String source(RuleField field) {
		if (field.mark() == Mark.OWN || field.mark() == Mark.TRADE) {
			return "";
		}
		String source = SOURCES.get(field.label());
		assertThat(source).as("a source for %s", field.label()).isNotNull();
		return source;
	}

	private static String lastPart(String pointer) {
		String last = pointer.substring(pointer.lastIndexOf('/') + 1);
		return last.matches("\\d+") ? String.valueOf(Integer.parseInt(last) + 1) : last;
	}

	private static String plain(double value) {
		return (value == Math.rint(value)) ? String.valueOf((long) value) : String.valueOf(value);
	}

}
