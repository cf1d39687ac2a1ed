package org.fallow.rules;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** Rule sets stored under the first rule text, and under one that is yet to come. */
class FirstTextTest {

	private String first;

	@BeforeEach
	void read() throws IOException {
		try (InputStream in = Objects.requireNonNull(getClass().getResourceAsStream("first-text.json"))) {
			this.first = new String(in.readAllBytes(), StandardCharsets.UTF_8);
		}
	}

	@Test
	void readsTheDefaultOfTheFirstTextAsOurs() {
		assertThat(RuleJson.isOfTheFirstText(this.first)).isTrue();
		assertThat(RuleJson.parse(this.first)).isEqualTo(DefaultRules.ruleSet());
		assertThat(RuleJson.isOfTheFirstText(RuleJson.canonical(DefaultRules.ruleSet()))).isFalse();
		assertThat(RuleJson.isOfTheFirstText("nothing of the sort")).isFalse();
	}

	@Test
	void keepsWhatATeamHadChanged() {
		RuleSet rules = RuleJson.parse(this.first.replace("\"lowApartDays\":3", "\"lowApartDays\":5"));
		assertThat(rules.flags().lowApartDays()).isEqualTo(5);
		assertThat(RuleBounds.check(rules)).isEmpty();
	}

	/** A team whose High began at 7: a line of up to 8 would never be reached. */
	@Test
	void keepsTheLineBelowATeamsHigh() {
		RuleSet rules = RuleJson.parse(this.first.replace("\"highFloor\":\"10\"", "\"highFloor\":\"7\""));
		assertThat(rules.line().ceiling()).isEqualTo(6);
		assertThat(RuleBounds.check(rules)).isEmpty();
	}

	@Test
	void refusesTheTextOfANewerFallow() {
		String newer = RuleJson.canonical(DefaultRules.ruleSet()).replace("\"format\":3", "\"format\":4");
		assertThatIllegalArgumentException().isThrownBy(() -> RuleJson.parse(newer))
			.withMessageContaining("format 4")
			.withMessageContaining("newer Fallow");
	}

}
