package org.fallow.account;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * What people type to say who they are. Names that look alike are one: full-width letters
 * and ligatures are folded to plain ones (NFKC), capitals to small letters.
 */
final class SignInName {

	/** Three to a hundred characters, none of them white or invisible. */
	private static final Pattern FORM = Pattern.compile("[^\\s\\p{Z}\\p{C}]{3,100}");

	/** Longer than any name, so that folding never works on a megabyte. */
	private static final int LONGEST_TYPED = 200;

	private SignInName() {
	}

	static String folded(String typed) {
		String name = typed.substring(0, Math.min(typed.length(), LONGEST_TYPED));
		String small = Normalizer.normalize(name, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
		return Normalizer.normalize(small, Normalizer.Form.NFKC).strip();
	}

	static boolean isOne(String typed) {
		return typed.length() <= LONGEST_TYPED && FORM.matcher(folded(typed)).matches();
	}

	/** Whether mail can be sent to it; the mail server has the last word. */
	static boolean isAddress(String folded) {
		int at = folded.indexOf('@');
		return at > 0 && at == folded.lastIndexOf('@') && at < folded.length() - 1;
	}

}
