package org.fallow.platform;

import java.text.MessageFormat;
import java.util.ResourceBundle;

/**
 * The sentences a failed start is explained with. They have a file of their own because
 * the application's message source does not exist yet when they are needed.
 */
final class StartSentences {

	private StartSentences() {
	}

	static String sentence(String code, String... arguments) {
		String pattern = ResourceBundle.getBundle("messages-start").getString(code);
		return new MessageFormat(pattern).format(arguments);
	}

}
