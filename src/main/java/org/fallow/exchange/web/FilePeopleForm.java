package org.fallow.exchange.web;

import java.util.Arrays;

import org.fallow.team.Basis;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of people the team does not have, as the page sends it; decisions about
 * names that are nearly somebody's are read apart.
 *
 * @param createPeople whether those who are nobody in the team are added
 * @param basis on whose word data of all who are added are kept
 */
record FilePeopleForm(@Nullable Boolean createPeople, @Nullable String basis) {

	/** The word chosen; absent if none of those the page offers. */
	@Nullable Basis word() {
		return Arrays.stream(Basis.values()).filter((one) -> one.name().equals(this.basis)).findFirst().orElse(null);
	}

}
