package org.fallow.exchange.imports;

import org.fallow.team.ByHeadCoach;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.UnreadableFile;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Imports of files of mornings. Whether the person who asks coaches the team is checked
 * by the caller.
 */
@Service
@Transactional
public class Imports {

	private static final int SAMPLES = 5;

	private static final int LONGEST_FILE_NAME = 200;

	private final ImportJobs jobs;

	private final ImportRows rows;

	private final ImportProblems problems;

	private final ImportDecisions decisions;

	private final Clock clock;

	Imports(ImportJobs jobs, ImportRows rows, ImportProblems problems, ImportDecisions decisions, Clock clock) {
		this.jobs = jobs;
		this.rows = rows;
		this.problems = problems;
		this.decisions = decisions;
		this.clock = clock;
	}

	/**
	 * Receives a file: looks at it and stages its rows. The file is not needed after.
	 * @param teamId into which team
	 * @param coach who sends it
	 * @param fileName as the browser told it
	 * @param path where it is
	 * @return names the job, which waits for its columns
	 * @throws UnreadableFile if it is no CSV file
	 */
	@ByHeadCoach
	public UUID receive(UUID teamId, PersonId coach, String fileName, Path path) {
		CsvFile file = CsvFile.open(path);
		UUID id = Ids.next();
		String name = fileName.substring(Math.max(0, fileName.length() - LONGEST_FILE_NAME));
		this.jobs.add(id, teamId, coach, name, file.headers(), this.clock.instant());
		this.jobs.total(id, this.rows.stage(id, file));
		return id;
	}

	/**
	 * Says what the columns mean; the job waits on.
	 * @param id the job
	 * @param choice what the columns mean, without problems
	 * @return true if it waits, false if it had started before
	 */
	public boolean choose(UUID id, Choice choice) {
		return this.jobs.choose(id, choice);
	}

	/**
	 * Lets the job run, whose names are all plain.
	 * @param id the job
	 * @param choice what the columns mean, without problems
	 * @return true if it starts now, false if it had started before
	 */
	public boolean start(UUID id, Choice choice) {
		return start(id, choice, Map.of());
	}

	/**
	 * Lets the job run.
	 * @param id the job
	 * @param choice what the columns mean, without problems
	 * @param decisions of names that are nearly somebody's, as the file has them; lines
	 * of those left out are refused
	 * @return true if it starts now, false if it had started before
	 */
	public boolean start(UUID id, Choice choice, Map<String, Decision> decisions) {
		boolean started = this.jobs.start(id, choice);
		if (started) {
			this.decisions.add(id, decisions);
		}
		return started;
	}

	/**
	 * One job.
	 * @param id names it
	 * @return as it stands; empty if there is none
	 */
	@Transactional(readOnly = true)
	public Optional<ImportJob> find(UUID id) {
		return this.jobs.find(id);
	}

	/**
	 * The latest jobs of a team.
	 * @param teamId the team
	 * @param most how many
	 * @return newest first
	 */
	@ByHeadCoach
	@Transactional(readOnly = true)
	public List<ImportJob> latest(UUID teamId, int most) {
		return this.jobs.latest(teamId, most);
	}

	/**
	 * The jobs that should run and do not, after a restart.
	 * @return oldest first
	 */
	@Transactional(readOnly = true)
	public List<ImportJob> unfinished() {
		return this.jobs.unfinished();
	}

	/**
	 * The first rows of a file whose job waits.
	 * @param id the job
	 * @return cells as they stand
	 */
	@Transactional(readOnly = true)
	public List<List<String>> samples(UUID id) {
		return this.rows.samples(id, SAMPLES);
	}

	/**
	 * What was refused or noticed.
	 * @param id the job
	 * @param offset how many to pass over
	 * @param most how many
	 * @return by line
	 */
	@Transactional(readOnly = true)
	public List<ListedProblem> problems(UUID id, int offset, int most) {
		return this.problems.page(id, offset, most);
	}

	/**
	 * How many were refused or noticed.
	 * @param id the job
	 * @return count
	 */
	@Transactional(readOnly = true)
	public int problemCount(UUID id) {
		return this.problems.count(id);
	}

}
