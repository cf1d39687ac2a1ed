package org.fallow.exchange.web;

import java.util.Arrays;
import java.util.List;

import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.ImportField;
import org.jspecify.annotations.Nullable;

/**
 * A field on the mapping page.
 *
 * @param code the field
 * @param required whether a file cannot do without
 * @param chosen index of the chosen column; absent if none
 */
record FieldView(String code, boolean required, @Nullable Integer chosen) {

	static List<FieldView> all(ColumnMapping mapping) {
		return Arrays.stream(ImportField.values())
			.map((field) -> new FieldView(field.name(), ImportField.REQUIRED.contains(field),
					mapping.columns().get(field)))
			.toList();
	}

}
