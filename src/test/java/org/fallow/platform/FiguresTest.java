package org.fallow.platform;

import java.util.Locale;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.ResourceBundleMessageSource;

import static org.assertj.core.api.Assertions.assertThat;

class FiguresTest {

	private final Figures figures = new Figures(messages());

	@AfterEach
	void forgetTheReader() {
		LocaleContextHolder.resetLocaleContext();
	}

	@ParameterizedTest
	@CsvSource({ "52.5, '52,5'", "4.0, '4,0'", "-3.5, '-3,5'", "4.10, '4,10'", "1.4826, '1,4826'", "3, 3",
			"2026-11-25, 2026-11-25", "12.11.2026, 12.11.2026", "'52,5', '52,5'", "fifty, fifty", "'', ''" })
	void writesDecimalsTheReadersWay(String text, String german) {
		LocaleContextHolder.setLocale(Locale.GERMAN);
		assertThat(this.figures.said(text)).isEqualTo(german);
		LocaleContextHolder.setLocale(Locale.ENGLISH);
		assertThat(this.figures.said(text)).isEqualTo(text);
	}

	private static ResourceBundleMessageSource messages() {
		ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
		messages.setBasename("messages");
		messages.setDefaultEncoding("UTF-8");
		messages.setFallbackToSystemLocale(false);
		return messages;
	}

}
