package org.fallow.platform;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;

/**
 * Sentences of one page in one language: each is made once, however many rows have it. It
 * is not safe for use by several threads, and must not outlive its page.
 */
public final class PageSentences {

	private final MessageSource messages;

	private final Locale reader;

	private final Map<Key, String> said = new HashMap<>();

	private final Map<LocalDate, String> days = new HashMap<>();

	private @Nullable DateTimeFormatter shortDay;

	PageSentences(MessageSource messages, Locale reader) {
		this.messages = messages;
		this.reader = reader;
	}

	/**
	 * A sentence.
	 * @param code its key
	 * @param arguments values of its placeholders, none of them null; a {@link LocalDate}
	 * is written as {@link #day} does
	 * @return the sentence; its key between question marks if no file has it
	 */
	public String said(String code, Object... arguments) {
		return said(code, List.of(arguments));
	}

	/**
	 * A sentence.
	 * @param code its key
	 * @param arguments values of its placeholders, in the same way
	 * @return the sentence, likewise
	 */
	public String said(String code, List<?> arguments) {
		return this.said.computeIfAbsent(new Key(code, arguments), this::make);
	}

	/**
	 * A day in the reader's short style.
	 * @param day the day
	 * @return weekday, day and month
	 */
	public String day(LocalDate day) {
		return this.days.computeIfAbsent(day, (one) -> shortDay().format(one));
	}

	private String make(Key key) {
		Object[] arguments = key.arguments()
			.stream()
			.map((one) -> (one instanceof LocalDate day) ? day(day) : one)
			.toArray();
		String missing = "??" + key.code() + "_" + this.reader + "??";
		String sentence = this.messages.getMessage(key.code(), arguments, missing, this.reader);
		return (sentence == null) ? missing : sentence;
	}

	private DateTimeFormatter shortDay() {
		DateTimeFormatter known = this.shortDay;
		if (known == null) {
			known = DateTimeFormatter.ofPattern(this.messages.getMessage("date.short", null, this.reader), this.reader);
			this.shortDay = known;
		}
		return known;
	}

	private record Key(String code, List<?> arguments) {
	}

}
