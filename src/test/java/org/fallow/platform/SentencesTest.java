package org.fallow.platform;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.context.support.StaticMessageSource;

import static org.assertj.core.api.Assertions.assertThat;

class SentencesTest {

	/** A Monday. */
	private static final LocalDate DAY = LocalDate.of(2026, 3, 9);

	private final StaticMessageSource messages = new StaticMessageSource();

	private final Sentences sentences = new Sentences(this.messages);

	@AfterEach
	void forgetTheReader() {
		LocaleContextHolder.resetLocaleContext();
	}

	@Test
	void saysDaysNumbersAndNamesTheReadersWay() {
		this.messages.addMessage("date.short", Locale.GERMAN, "EEEE d.");
		this.messages.addMessage("name", Locale.GERMAN, "Ruhe");
		this.messages.addMessage("all", Locale.GERMAN, "{0}: {1,number,0.#}, {2}");
		LocaleContextHolder.setLocale(Locale.GERMAN);
		List<Object> arguments = List.of(DAY, 4.25, new DefaultMessageSourceResolvable("name"));
		assertThat(this.sentences.said("all", arguments)).isEqualTo("Montag 9.: 4,2, Ruhe");
		assertThat(this.sentences.ofPage().said("all", arguments)).isEqualTo("Montag 9.: 4,2, Ruhe");
	}

	@Test
	void tellsWhichSentenceIsMissing() {
		LocaleContextHolder.setLocale(Locale.ENGLISH);
		assertThat(this.sentences.said("none.such", List.of())).isEqualTo("??none.such_en??");
	}

	/** On one page. */
	@Test
	void makesEachSentenceOnce() {
		LocaleContextHolder.setLocale(Locale.ENGLISH);
		this.messages.addMessage("days", Locale.ENGLISH, "{0} days");
		PageSentences page = this.sentences.ofPage();
		String said = page.said("days", 3);
		assertThat(page.said("days", List.of(3))).isEqualTo("3 days").isSameAs(said);
		assertThat(page.said("days", 4)).isEqualTo("4 days");
	}

}
