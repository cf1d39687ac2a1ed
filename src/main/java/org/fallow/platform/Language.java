package org.fallow.platform;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpHeaders;

/**
 * The languages Fallow speaks. Each has a file of sentences of its own, apart from
 * English, whose file holds for whatever is none of these.
 */
public enum Language {

	/** The language of whoever asks for none of the others. */
	ENGLISH(Locale.ENGLISH),
	/** Sentences in {@code messages_de.properties}. */
	GERMAN(Locale.GERMAN);

	private static final String OF_READER = Language.class.getName();

	private final Locale locale;

	Language(Locale locale) {
		this.locale = locale;
	}

	/**
	 * By which dates, numbers and sentences are written.
	 * @return a locale without a country
	 */
	public Locale locale() {
		return this.locale;
	}

	/**
	 * How it is named where programs read it.
	 * @return a language tag of BCP 47, two letters
	 */
	public String tag() {
		return this.locale.toLanguageTag();
	}

	/**
	 * The language of a tag.
	 * @param tag exactly as {@link #tag} has it
	 * @return the language; empty for anything else
	 */
	public static Optional<Language> tagged(@Nullable String tag) {
		return Arrays.stream(values()).filter((language) -> language.tag().equals(tag)).findFirst();
	}

	/**
	 * What a browser wishes: the first of its languages that is spoken here. What the
	 * server itself speaks does not matter.
	 * @param request with or without a header Accept-Language
	 * @return English where none is spoken here or the header cannot be read
	 */
	public static Language wished(HttpServletRequest request) {
		String header = request.getHeader(HttpHeaders.ACCEPT_LANGUAGE);
		try {
			return (header == null || header.isBlank()) ? ENGLISH
					: Locale.LanguageRange.parse(header)
						.stream()
						.filter((range) -> range.getWeight() > 0)
						.flatMap((range) -> tagged(range.getRange().split("-", 2)[0]).stream())
						.findFirst()
						.orElse(ENGLISH);
		}
		catch (IllegalArgumentException ex) {
			return ENGLISH;
		}
	}

	/**
	 * The language a request is answered in, once it was found out.
	 * @param request the request
	 * @return the language {@link #keep} was told, else what the browser wishes
	 */
	public static Language of(HttpServletRequest request) {
		return (request.getAttribute(OF_READER) instanceof Language known) ? known : wished(request);
	}

	/**
	 * Keeps the language of a request with it.
	 * @param request the request
	 * @return this
	 */
	public Language keep(HttpServletRequest request) {
		request.setAttribute(OF_READER, this);
		return this;
	}

}
