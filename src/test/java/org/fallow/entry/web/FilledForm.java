package org.fallow.entry.web;

import java.util.LinkedHashMap;
import java.util.Map;

import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

/**
 * A form as somebody filled it in, sent as often as wanted.
 */
final class FilledForm {

	private final String path;

	private final Map<String, String> fields = new LinkedHashMap<>();

	FilledForm(String path, Map<String, String> fields) {
		this.path = path;
		this.fields.putAll(fields);
	}

	FilledForm with(String name, String value) {
		FilledForm other = new FilledForm(this.path, this.fields);
		other.fields.put(name, value);
		return other;
	}

	MockHttpServletRequestBuilder sentBy(UserDetails person) {
		return sent().with(user(person));
	}

	MockHttpServletRequestBuilder sent() {
		MockHttpServletRequestBuilder request = post(this.path).with(csrf());
		this.fields.forEach(request::param);
		return request;
	}

}
