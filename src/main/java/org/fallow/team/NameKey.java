package org.fallow.team;

import java.text.Normalizer;
import java.text.Normalizer.Form;
import java.util.Locale;

/**
 * A person's name as names are compared: what looks the same is the same. Compatibility
 * forms (Unicode normalization form KC), white space of any kind and length, characters
 * nobody sees, upper and lower case, and the kinds of apostrophe and hyphen make no
 * difference. Pure: the same for the same text everywhere.
 *
 * @param text the name, normalized; empty for a name in which there is nothing to see
 * @param bare the same without accents
 */
public record NameKey(String text, String bare) {

	/** Letters that are no letter with an accent in Unicode, and what goes for them. */
	private static final String[][] STROKES = { { "\u00f8", "o" }, { "\u0142", "l" }, { "\u0111", "d" },
			{ "\u00f0", "d" }, { "\u0127", "h" }, { "\u0131", "i" }, { "\u0167", "t" }, { "\u00e6", "ae" },
			{ "\u0153", "oe" }, { "\u00fe", "th" } };

	/** Apostrophes and what is typed for one; the second row are hyphens and dashes. */
	private static final String APOSTROPHES = "\u2018\u2019\u201b\u02b9\u02bb\u02bc\u02bd\u00b4\u0060\u2032\uff07";

	private static final String HYPHENS = "\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe63\uff0d";

	/** Not of the category "format", and nothing is drawn for them all the same. */
	private static final String UNSEEN = "\u034f\u115f\u1160\u17b4\u17b5\u2800\u3164\uffa0";

	/**
	 * A name's key.
	 * @param name the name, as anybody wrote it
	 * @return its key
	 */
	public static NameKey of(String name) {
		String text = seen(Normalizer.normalize(seen(name), Form.NFKC));
		String folded = text.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
		String key = Normalizer.normalize(folded, Form.NFKC);
		return new NameKey(key, bare(key));
	}

	/**
	 * A name as it is kept: composed, one space where there was white space, and none
	 * around it. Characters nobody sees stay inside, where a script may need them.
	 * @param typed the name, as typed
	 * @return the same name; empty if there is nothing to see in it
	 */
	public static String cleaned(String typed) {
		if (seen(typed).isEmpty()) {
			return "";
		}
		StringBuilder text = new StringBuilder();
		typed.codePoints().forEach((c) -> {
			if (!isSpace(c)) {
				text.appendCodePoint(c);
			}
			else if (!text.isEmpty() && text.charAt(text.length() - 1) != ' ') {
				text.append(' ');
			}
		});
		return Normalizer.normalize(text.toString().strip(), Form.NFC);
	}

	/**
	 * Whether a text holds a control character, such as a NUL. No name does; line breaks
	 * and tabs are white space in a name as it is kept.
	 * @param text the text
	 * @return true if so
	 */
	public static boolean hasControl(String text) {
		return text.codePoints().anyMatch(Character::isISOControl);
	}

	/** Whether there is nothing to see in the name. */
	public boolean isEmpty() {
		return this.text.isEmpty();
	}

	/** What is seen of a text, with single spaces. */
	private static String seen(String text) {
		StringBuilder seen = new StringBuilder();
		text.codePoints().filter((c) -> !isUnseen(c)).map(NameKey::alike).forEach((c) -> {
			if (c != ' ' || (!seen.isEmpty() && seen.charAt(seen.length() - 1) != ' ')) {
				seen.appendCodePoint(c);
			}
		});
		return seen.toString().strip();
	}

	private static boolean isUnseen(int c) {
		return !isSpace(c) && (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT
				|| UNSEEN.indexOf(c) >= 0 || isVariation(c));
	}

	private static boolean isVariation(int c) {
		return (c >= 0x180B && c <= 0x180F) || (c >= 0xFE00 && c <= 0xFE0F) || (c >= 0xE0100 && c <= 0xE01EF);
	}

	private static boolean isSpace(int c) {
		return Character.isWhitespace(c) || Character.isSpaceChar(c) || c == '\u0085';
	}

	private static int alike(int c) {
		return isSpace(c) ? ' ' : (APOSTROPHES.indexOf(c) >= 0) ? '\'' : (HYPHENS.indexOf(c) >= 0) ? '-' : c;
	}

	/**
	 * Accents that go with any script are left out; what is a letter of its script, such
	 * as a vowel sign or a voiced kana, stays.
	 */
	private static String bare(String key) {
		StringBuilder bare = new StringBuilder();
		Normalizer.normalize(key, Form.NFD).codePoints().filter((c) -> !isAccent(c)).forEach(bare::appendCodePoint);
		String text = Normalizer.normalize(bare, Form.NFC);
		for (String[] stroke : STROKES) {
			text = text.replace(stroke[0], stroke[1]);
		}
		return text;
	}

	private static boolean isAccent(int c) {
		return Character.getType(c) == Character.NON_SPACING_MARK
				&& Character.UnicodeScript.of(c) == Character.UnicodeScript.INHERITED && c != 0x3099 && c != 0x309A;
	}

}
