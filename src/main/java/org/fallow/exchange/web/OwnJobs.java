package org.fallow.exchange.web;

import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.Imports;
import org.fallow.team.Squad;
import org.fallow.team.Team;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.server.ResponseStatusException;

/**
 * Finds imports of the teams a coach has; of others there is nothing to be found.
 */
@Component
class OwnJobs {

	private final Imports imports;

	private final Squad squad;

	OwnJobs(Imports imports, Squad squad) {
		this.imports = imports;
		this.squad = squad;
	}

	Found find(UUID id, PersonId coach) {
		ImportJob job = this.imports.find(id).orElseThrow(OwnJobs::notFound);
		Team team = this.squad.teamsLedBy(coach)
			.stream()
			.filter((one) -> one.id().equals(job.teamId()))
			.findFirst()
			.orElseThrow(OwnJobs::notFound);
		return new Found(job, team);
	}

	private static ResponseStatusException notFound() {
		return new ResponseStatusException(HttpStatus.NOT_FOUND);
	}

	/**
	 * An import with its team.
	 */
	record Found(ImportJob job, Team team) {

		JobView view() {
			return JobView.of(this.job, this.team);
		}

	}

}
