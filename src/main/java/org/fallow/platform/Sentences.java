package org.fallow.platform;

import java.util.List;

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
	 * For a page of many rows, which says the same again and again.
	 * @return sentences in the language of the present reader, to be used in this thread
	 */
	public PageSentences ofPage() {
		return new PageSentences(this.messages, LocaleContextHolder.getLocale());
	}

}
