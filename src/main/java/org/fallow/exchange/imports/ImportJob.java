package org.fallow.exchange.imports;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The import of one file as it stands.
 *
 * @param id names it
 * @param teamId into which team
 * @param actor the coach who sent it
 * @param fileName as the browser told it
 * @param state how far it is
 * @param headers names of the columns in the order of the file
 * @param choice what the columns mean; absent until chosen
 * @param started when the file came
 * @param counts what came of its rows so far
 * @param firstDay earliest day taken in; absent before the first
 * @param lastDay latest day taken in; absent before the first
 * @param problem why it failed; absent unless it did
 */
public record ImportJob(UUID id, UUID teamId, PersonId actor, String fileName, State state, List<String> headers,
		@Nullable Choice choice, Instant started, Counts counts, @Nullable LocalDate firstDay,
		@Nullable LocalDate lastDay, @Nullable Message problem) {

	/** Copies the names. */
	public ImportJob {
		headers = List.copyOf(headers);
	}

	/** How far an import is. */
	public enum State {

		/** It waits for its columns to be chosen. */
		MAPPING,
		/** It runs, or will again after a restart. */
		RUNNING,
		/** All rows were dealt with. */
		DONE,
		/** It ended early. */
		FAILED

	}

	/**
	 * What came of the rows, each a count.
	 *
	 * @param rowsTotal rows in the file
	 * @param rowsRead rows dealt with
	 * @param stored mornings stored for the first time
	 * @param unchanged mornings that were there already
	 * @param corrected mornings that corrected an earlier import
	 * @param rejected rows refused
	 * @param peopleCreated people added
	 * @param peopleMatched people found
	 */
	public record Counts(int rowsTotal, int rowsRead, int stored, int unchanged, int corrected, int rejected,
			int peopleCreated, int peopleMatched) {
	}

}
