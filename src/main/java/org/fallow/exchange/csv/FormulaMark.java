package org.fallow.exchange.csv;

import java.util.regex.Pattern;

/**
 * An apostrophe before words that a spreadsheet would otherwise reckon as a formula: a
 * file may be opened by somebody else than who typed them (common practice, no source).
 * Words that already begin with apostrophes before such a sign get one more, so that
 * taking one away always yields what was typed. Worked example: {@code =1+1} is written
 * {@code '=1+1}, and {@code '=1+1} is written {@code ''=1+1}.
 */
final class FormulaMark {

	/** Plain and full-width signs, and what some programs pass over before them. */
	private static final Pattern FORMULA = Pattern.compile("^'*[=+\\-@\t\r\\uFF1D\\uFF0B\\uFF0D\\uFF20]");

	private static final String MARK = "'";

	private FormulaMark() {
	}

	static String with(String words) {
		return FORMULA.matcher(words).find() ? MARK + words : words;
	}

	static String without(String cell) {
		return (cell.startsWith(MARK) && FORMULA.matcher(cell).find()) ? cell.substring(1) : cell;
	}

}
