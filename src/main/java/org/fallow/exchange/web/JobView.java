package org.fallow.exchange.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.UUID;

import org.fallow.exchange.imports.ImportJob;
import org.fallow.team.Team;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * An import as the pages show it; docs/pages.md says what each name means.
 */
record JobView(UUID id, String fileName, String teamName, ImportJob.State state, LocalDateTime started, int rowsRead,
		int rowsTotal, int stored, int unchanged, int rejected, int peopleCreated, int peopleMatched,
		int entriesCorrected, @Nullable LocalDate firstDay, @Nullable LocalDate lastDay, @Nullable Message problem) {

	static JobView of(ImportJob job, Team team) {
		ImportJob.Counts counts = job.counts();
		return new JobView(job.id(), job.fileName(), team.name(), job.state(),
				LocalDateTime.ofInstant(job.started(), team.zone()), counts.rowsRead(), counts.rowsTotal(),
				counts.stored(), counts.unchanged(), counts.rejected(), counts.peopleCreated(), counts.peopleMatched(),
				counts.corrected(), job.firstDay(), job.lastDay(), job.problem());
	}

}
