package org.fallow.platform;

import java.util.Locale;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.mock.web.MockHttpServletRequest;

import static org.assertj.core.api.Assertions.assertThat;

class LanguageTest {

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "de|GERMAN", "de-AT,de;q=0.9,en;q=0.8|GERMAN", "en-GB,de;q=0.9|ENGLISH",
					"de;q=0.3,en;q=0.7|ENGLISH", "fr|ENGLISH", "fr,de;q=0.2|GERMAN", "fr,en;q=0.9,de;q=0.8|ENGLISH",
					"de;q=0|ENGLISH", "*|ENGLISH", "''|ENGLISH", "|ENGLISH", "DE-de|GERMAN", "den|ENGLISH",
					"de;q=x|ENGLISH", "../../etc|ENGLISH" })
	void takesTheFirstWishThatIsSpokenHere(@Nullable String header, Language language) {
		MockHttpServletRequest request = new MockHttpServletRequest();
		request.addPreferredLocale(Locale.FRENCH);
		if (header != null) {
			request.removeHeader("Accept-Language");
			request.addHeader("Accept-Language", header);
		}
		assertThat(Language.wished(request)).isEqualTo(language);
		assertThat(Language.of(request)).isEqualTo(language);
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "DE", "de ", "de-DE", "fr", "german" })
	void knowsItsOwnTagsOnly(String tag) {
		assertThat(Language.tagged(tag)).isEmpty();
		assertThat(Language.tagged("de")).contains(Language.GERMAN);
	}

}
