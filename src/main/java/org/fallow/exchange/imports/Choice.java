package org.fallow.exchange.imports;

import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.team.Basis;
import org.jspecify.annotations.Nullable;

/**
 * What a coach chose for an import.
 *
 * @param mapping which column is which
 * @param createPeople whether people the team does not have are added, all of them
 * @param basis on whose word data of people it adds are kept; absent if it adds nobody
 */
public record Choice(ColumnMapping mapping, boolean createPeople, @Nullable Basis basis) {

	private static final String CREATE = " create";

	private static final String BASIS = " basis=";

	/**
	 * Checks that nobody is added without a word.
	 * @throws IllegalArgumentException if people are to be added on no basis
	 */
	public Choice {
		if (createPeople && basis == null) {
			throw new IllegalArgumentException("people are added on somebody's word or the club's record");
		}
	}

	/**
	 * A choice that adds nobody.
	 * @param mapping which column is which
	 * @return the choice
	 */
	public static Choice ofPeopleHere(ColumnMapping mapping) {
		return new Choice(mapping, false, null);
	}

	/**
	 * A choice that adds everybody the team does not have.
	 * @param mapping which column is which
	 * @param basis on whose word
	 * @return the choice
	 */
	public static Choice ofEverybody(ColumnMapping mapping, Basis basis) {
		return new Choice(mapping, true, basis);
	}

	String asText() {
		return this.mapping.asText() + ((this.basis == null) ? "" : BASIS + this.basis)
				+ (this.createPeople ? CREATE : "");
	}

	/** What an earlier version wrote says no basis, so nobody is added by it. */
	static Choice parse(String text) {
		boolean create = text.endsWith(CREATE);
		String rest = create ? text.substring(0, text.length() - CREATE.length()) : text;
		int at = rest.indexOf(BASIS);
		Basis basis = (at < 0) ? null : Basis.valueOf(rest.substring(at + BASIS.length()));
		ColumnMapping mapping = ColumnMapping.parse((at < 0) ? rest : rest.substring(0, at));
		return new Choice(mapping, create && basis != null, basis);
	}

}
