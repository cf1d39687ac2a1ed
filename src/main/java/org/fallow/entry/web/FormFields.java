package org.fallow.entry.web;

import java.util.Arrays;

/**
 * Which fields a form record has.
 */
final class FormFields {

	private FormFields() {
	}

	static boolean has(Record form, String field) {
		return Arrays.stream(form.getClass().getRecordComponents())
			.anyMatch((component) -> component.getName().equals(field));
	}

}
