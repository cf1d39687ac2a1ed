package org.fallow.rules;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** One stored text of each format, as that format's Fallow wrote it. */
class RuleFormatsTest {

	private static final RuleSet OURS = DefaultRules.ruleSet();

	/** Byte for byte: only then does a stored hash still verify. */
	@ParameterizedTest
	@CsvSource({ "first-text, 4b13fdd46d8d9f1b66dd6293d2758e6489ca9ad86cea4b2c92e0a00a513c96cf",
			"second-format, 41abd6e18827f030da3432dc7ff905608ee27affad7c77c06dcaca46898b12d2" })
	void keepsTheHashOfATextOfAnEarlierFormat(String file, String hash) throws IOException {
		assertThat(RuleHash.ofText(text(file))).isEqualTo(hash);
		assertThat(RuleJson.parse(text(file))).isEqualTo(OURS);
	}

	@Test
	void writesTheThirdFormat() {
		String text = RuleJson.canonical(OURS);
		assertThat(text).contains("\"format\":3").contains("\"slips\":{").contains("\"wheezeDays\":14");
		assertThat(RuleJson.parse(text)).isEqualTo(OURS);
		assertThat(RuleJson.canonical(RuleJson.parse(text))).isEqualTo(text);
	}

	/** What a team had changed under the second format stays; the rest is the default. */
	@Test
	void readsWhatTheSecondFormatHasAndTheDefaultOfTheRest() throws IOException {
		RuleSet rules = RuleJson.parse(text("second-format").replace("\"chestDays\":7,", "\"chestDays\":5,"));
		assertThat(rules.limits().chestDays()).isEqualTo(5);
		assertThat(rules.limits().wheezeDays()).isEqualTo(14);
		assertThat(rules.slips()).isEqualTo(OURS.slips());
		assertThat(RuleBounds.check(rules)).isEmpty();
	}

	/** A number that the format has is never guessed. */
	@ParameterizedTest
	@ValueSource(strings = { "\"redFlagMinutes\":30,", "\"wheezeDays\":14", "\"illDays\":10," })
	void refusesATextThatLacksANumberOfItsFormat(String number) {
		String text = RuleJson.canonical(OURS);
		assertThat(text).contains(number);
		String without = text.replaceFirst("," + number.replaceAll(",$", "") + "(?=[,}])", "")
			.replaceFirst("(?<=\\{)" + number, "");
		assertThat(without).isNotEqualTo(text);
		assertThatIllegalArgumentException().isThrownBy(() -> RuleJson.parse(without))
			.withMessageContaining("is missing");
	}

	@ParameterizedTest
	@ValueSource(strings = { "0", "1", "\"3\"", "2.5", "null" })
	void refusesAFormatThatThereNeverWas(String format) {
		String text = RuleJson.canonical(OURS).replace("\"format\":3", "\"format\":" + format);
		assertThatIllegalArgumentException().isThrownBy(() -> RuleJson.parse(text)).withMessageContaining("of format");
	}

	private String text(String file) throws IOException {
		try (InputStream in = Objects.requireNonNull(getClass().getResourceAsStream(file + ".json"))) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		}
	}

}
