package org.fallow.training;

import java.util.Locale;

import org.fallow.rules.Intensity;
import org.fallow.training.core.PartsText;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.ResourceBundleMessageSource;

import static org.assertj.core.api.Assertions.assertThat;

class PartsWordsTest {

	private final PartsWords words = new PartsWords(messages());

	@AfterEach
	void forgetTheReader() {
		LocaleContextHolder.resetLocaleContext();
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			textBlock = """
					15 min easy; 6 x 1200 m in 4:40 vo2max, 90 s between; 10 min easy | 15 min locker; 6 x 1200 m in 4:40 VO2max, 90 s dazwischen; 10 min locker
					45 min race pace                                                  | 45 min Wettkampftempo
					40 min quick                                                      | 40 min quick
					""")
	void saysALineInTheReadersWords(String line, String german) {
		LocaleContextHolder.setLocale(Locale.ENGLISH);
		assertThat(this.words.said(line)).isEqualTo(line);
		LocaleContextHolder.setLocale(Locale.GERMAN);
		assertThat(this.words.said(line)).isEqualTo(german);
	}

	/** Whatever a page shows may be typed again. */
	@ParameterizedTest
	@EnumSource(value = Intensity.class, mode = Mode.EXCLUDE, names = "REST")
	void isReadAgain(Intensity intensity) {
		String line = "6 x 1500 m in 5:30 " + PartsText.word(intensity) + ", 3 min between; 10 min easy";
		LocaleContextHolder.setLocale(Locale.GERMAN);
		assertThat(PartsText.read(String.valueOf(this.words.said(line)))).isEqualTo(PartsText.read(line));
		assertThat(this.words.words()).hasSize(Intensity.values().length - 1).doesNotHaveDuplicates();
	}

	private static ResourceBundleMessageSource messages() {
		ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
		messages.setBasename("messages");
		messages.setDefaultEncoding("UTF-8");
		messages.setFallbackToSystemLocale(false);
		return messages;
	}

}
