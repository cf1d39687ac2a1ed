package org.fallow.exchange.imports;

import org.fallow.exchange.csv.ColumnMapping;

/**
 * What a coach chose for an import.
 *
 * @param mapping which column is which
 * @param createPeople whether people the team does not have are added
 */
public record Choice(ColumnMapping mapping, boolean createPeople) {

	private static final String CREATE = " create";

	String asText() {
		return this.mapping.asText() + (this.createPeople ? CREATE : "");
	}

	static Choice parse(String text) {
		boolean create = text.endsWith(CREATE);
		String columns = create ? text.substring(0, text.length() - CREATE.length()) : text;
		return new Choice(ColumnMapping.parse(columns), create);
	}

}
