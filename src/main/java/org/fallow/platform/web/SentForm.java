package org.fallow.platform.web;

import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

import jakarta.servlet.http.HttpServletRequest;
import org.apache.tomcat.util.http.InvalidParameterException;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;

/**
 * What somebody sent that could not be taken, so that it can be sent again without being
 * typed again. The form's token is among the fields and is still the session's when the
 * database is back; none is made here, so a form of another site gets none.
 *
 * @param action where it was sent
 * @param fields what was sent, in order
 */
record SentForm(String action, List<Field> fields) {

	/** Fields that never go back into a page; a form with one of them is not kept. */
	private static final Set<String> SECRET = Set.of("password", "again", "present", "wanted");

	SentForm {
		fields = List.copyOf(fields);
	}

	/**
	 * The form of a request.
	 * @param request as it came from the server, not yet changed by a filter
	 * @return the form; absent if none was sent, if it had files or a password, or if it
	 * cannot be read
	 */
	static @Nullable SentForm of(HttpServletRequest request) {
		if (!HttpMethod.POST.matches(request.getMethod()) || !isForm(request.getContentType())) {
			return null;
		}
		String action = request.getRequestURI();
		try {
			// in vain where a filter has read them, and then it has said so too
			request.setCharacterEncoding(StandardCharsets.UTF_8.name());
			Map<String, String[]> sent = request.getParameterMap();
			boolean keep = !isElsewhere(action) && sent.keySet().stream().noneMatch(SECRET::contains);
			return keep ? new SentForm(action, fields(sent)) : null;
		}
		catch (InvalidParameterException | UnsupportedEncodingException ex) {
			return null;
		}
	}

	private static boolean isForm(@Nullable String type) {
		return type != null
				&& type.strip().toLowerCase(Locale.ROOT).startsWith(MediaType.APPLICATION_FORM_URLENCODED_VALUE);
	}

	/** An address that a browser would take for another host. */
	private static boolean isElsewhere(String action) {
		return !action.startsWith("/") || action.startsWith("//") || action.contains("\\");
	}

	private static List<Field> fields(Map<String, String[]> sent) {
		List<Field> fields = new ArrayList<>();
		sent.forEach((name, values) -> {
			for (String value : values) {
				fields.add(new Field(name, value));
			}
		});
		return fields;
	}

	/**
	 * One field.
	 *
	 * @param name its name
	 * @param value what it held, line breaks as they were sent
	 */
	record Field(String name, String value) {
	}

}
