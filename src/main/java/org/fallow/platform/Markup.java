package org.fallow.platform;

import java.util.ArrayDeque;
import java.util.Deque;

import org.jspecify.annotations.Nullable;

import org.springframework.web.util.HtmlUtils;

/**
 * HTML written by Java, for what a page has so many of that a template would be too dear:
 * the rows of long tables, and nothing else. Texts and values of attributes are always
 * escaped, there is no way around it; names of elements and attributes are those of the
 * code.
 */
public final class Markup {

	private static final String ESCAPED = "<>&\"'";

	private final StringBuilder html;

	private final Deque<String> open = new ArrayDeque<>();

	/**
	 * Nothing yet.
	 * @param expected about how many characters there will be
	 */
	public Markup(int expected) {
		this.html = new StringBuilder(expected);
	}

	/**
	 * Begins an element.
	 * @param element its name
	 * @param attributes names and values by turns; one whose value is null is left out
	 * @return this
	 */
	public Markup open(String element, @Nullable String... attributes) {
		this.html.append('<').append(element);
		for (int i = 0; i < attributes.length; i += 2) {
			String value = attributes[i + 1];
			if (value != null) {
				this.html.append(' ').append(attributes[i]).append("=\"").append(escaped(value)).append('"');
			}
		}
		this.html.append('>');
		this.open.push(element);
		return this;
	}

	/**
	 * Ends the element begun last of those not ended.
	 * @return this
	 */
	public Markup close() {
		this.html.append("</").append(this.open.pop()).append('>');
		return this;
	}

	/**
	 * Text within the present element.
	 * @param text any
	 * @return this
	 */
	public Markup text(String text) {
		this.html.append(escaped(text));
		return this;
	}

	/**
	 * An element that holds a text alone.
	 * @param element its name
	 * @param style its class
	 * @param text the text; null for no element at all
	 * @return this
	 */
	public Markup said(String element, String style, @Nullable String text) {
		return (text == null) ? this : open(element, "class", style).text(text).close();
	}

	/**
	 * The whole of it.
	 * @return well-formed HTML
	 * @throws IllegalStateException if an element was not ended
	 */
	public String html() {
		if (!this.open.isEmpty()) {
			throw new IllegalStateException("not ended: " + this.open);
		}
		return this.html.toString();
	}

	/** Most texts hold nothing to escape, and looking is cheaper than copying. */
	private static String escaped(String text) {
		for (int i = 0; i < text.length(); i++) {
			if (ESCAPED.indexOf(text.charAt(i)) >= 0) {
				return HtmlUtils.htmlEscape(text, "UTF-8");
			}
		}
		return text;
	}

}
