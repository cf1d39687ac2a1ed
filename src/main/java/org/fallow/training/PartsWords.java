package org.fallow.training;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.fallow.rules.Intensity;
import org.fallow.training.core.Part;
import org.fallow.training.core.PartsText;
import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/**
 * A session's parts in one line, in the words of whoever reads the present page; every
 * such line is read again by {@link PartsText}. Pages use it as {@code @parts}.
 */
@Component("parts")
public class PartsWords {

	private final MessageSource messages;

	PartsWords(MessageSource messages) {
		this.messages = messages;
	}

	/**
	 * A line in the reader's words.
	 * @param line as {@link PartsText} has it, or as somebody typed it
	 * @return the same parts; a line that cannot be read as it is
	 */
	public @Nullable String said(@Nullable String line) {
		PartsText.Reading reading = (line == null) ? null : PartsText.read(line);
		if (reading == null || reading.problem() != null) {
			return line;
		}
		return reading.parts().stream().map(this::part).collect(Collectors.joining("; "));
	}

	/**
	 * How hard a part can be, in the words that a line has for it.
	 * @return the words, the easiest first
	 */
	public List<String> words() {
		return Arrays.stream(Intensity.values())
			.filter((intensity) -> intensity != Intensity.REST)
			.map(this::word)
			.toList();
	}

	private String part(Part part) {
		String amount = PartsText.time(part.seconds());
		if (part.metres() != null) {
			amount = say("parts.distance", String.valueOf(part.metres()), amount);
		}
		if (part.repeats() > 1) {
			amount = say("parts.repeats", String.valueOf(part.repeats()), amount);
		}
		String text = say("parts.hard", amount, word(part.intensity()));
		return (part.recoverySeconds() > 0) ? say("parts.between", text, PartsText.time(part.recoverySeconds())) : text;
	}

	private String word(Intensity intensity) {
		return say("parts.word." + intensity);
	}

	private String say(String code, Object... arguments) {
		Locale reader = LocaleContextHolder.getLocale();
		return this.messages.getMessage(code, arguments, reader);
	}

}
