package org.fallow.platform;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/**
 * Sentences of the message files in the language of whoever reads the present page. Pages
 * use it as {@code @sentences}.
 */
@Component("sentences")
public class Sentences {

	private final MessageSource messages;

	Sentences(MessageSource messages) {
		this.messages = messages;
	}

	/**
	 * One sentence.
	 * @param code its key
	 * @param arguments values of its placeholders; a day is written in the reader's short
	 * style
	 * @return the sentence; its key between question marks if no file has it
	 */
	public String said(String code, List<?> arguments) {
		return ofPage().said(code, arguments);
	}

	/**
	 * One sentence about days that may be of any year.
	 * @param code its key
	 * @param arguments values of its placeholders; a day is written with its year
	 * @return the sentence; its key between question marks if no file has it
	 */
	public String dated(String code, List<?> arguments) {
		Locale reader = LocaleContextHolder.getLocale();
		DateTimeFormatter full = DateTimeFormatter.ofPattern(this.messages.getMessage("date.full", null, reader),
				reader);
		return said(code,
				arguments.stream().map((one) -> (one instanceof LocalDate day) ? full.format(day) : one).toList());
	}

	/**
	 * For a page of many rows, which says the same again and again.
	 * @return sentences in the language of the present reader, to be used in this thread
	 */
	public PageSentences ofPage() {
		return new PageSentences(this.messages, LocaleContextHolder.getLocale());
	}

}
