package org.fallow.entry.web;

import java.util.Arrays;
import java.util.List;

import org.fallow.platform.Figures;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;

/**
 * Shows problems at the fields of a form record, or above the form where it has no such
 * field.
 */
final class FormFields {

	private FormFields() {
	}

	static void reject(BindingResult result, List<Problem> problems) {
		for (Problem problem : problems) {
			Message message = problem.message();
			Object[] arguments = Figures.arguments(message.arguments());
			if (has(result.getTarget(), problem.field())) {
				result.rejectValue(problem.field(), message.code(), arguments, null);
			}
			else {
				result.reject(message.code(), arguments, null);
			}
		}
	}

	private static boolean has(@Nullable Object form, String field) {
		return form != null && Arrays.stream(form.getClass().getRecordComponents())
			.anyMatch((component) -> component.getName().equals(field));
	}

}
