package org.fallow.assess;

import java.util.List;

import org.fallow.entry.Fact;

/**
 * What one file says about one person.
 *
 * @param person as the file writes it
 * @param line line of the person's first row
 * @param facts in the order of the file
 */
record PersonFacts(String person, long line, List<Fact> facts) {

	PersonFacts {
		facts = List.copyOf(facts);
	}

}
