package org.fallow.platform;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Date;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.stereotype.Component;

/**
 * Decimals that come as text, as evidence and rule sets keep them, in the way the reader
 * writes them; as many places are shown as the text has. Pages use it as
 * {@code @figures}.
 */
@Component("figures")
public class Figures {

	private static final Pattern DECIMAL = Pattern.compile("-?\\d{1,9}\\.\\d{1,9}");

	private static final int HUNDREDTHS = 2;

	private final MessageSource messages;

	Figures(MessageSource messages) {
		this.messages = messages;
	}

	/**
	 * A text as the reader of the present page writes it.
	 * @param text anything
	 * @return a decimal with the reader's sign; anything else as it is
	 */
	public @Nullable String said(@Nullable String text) {
		Locale reader = LocaleContextHolder.getLocale();
		return (text == null || !isDecimal(text)) ? text : this.messages.getMessage(resolvable(text), reader);
	}

	/**
	 * An argument of a message, which will be said in the reader's way.
	 * @param argument anything
	 * @return for a decimal as text what the message files resolve; anything else as it
	 * is
	 */
	public static Object argument(Object argument) {
		return (argument instanceof String text && isDecimal(text)) ? resolvable(text) : argument;
	}

	/**
	 * The arguments of a sentence that no page formats, such as what is wrong with a
	 * field.
	 * @param arguments anything; days and decimals as text are written the reader's way
	 * @return the same number of them
	 */
	public static Object[] arguments(List<Object> arguments) {
		return arguments.stream()
			.map((one) -> (one instanceof LocalDate day) ? resolvable(day) : argument(one))
			.toArray();
	}

	/** Message patterns know instants only, and write them in the server's zone. */
	private static DefaultMessageSourceResolvable resolvable(LocalDate day) {
		Date start = Date.from(day.atStartOfDay(ZoneId.systemDefault()).toInstant());
		return new DefaultMessageSourceResolvable(new String[] { "date.said" }, new Object[] { start }, day.toString());
	}

	private static boolean isDecimal(String text) {
		return DECIMAL.matcher(text).matches();
	}

	private static DefaultMessageSourceResolvable resolvable(String text) {
		BigDecimal value = new BigDecimal(text);
		String places = (value.scale() == 1) ? "tenths" : (value.scale() == HUNDREDTHS) ? "hundredths" : "exact";
		return new DefaultMessageSourceResolvable(new String[] { "number." + places }, new Object[] { value }, text);
	}

}
