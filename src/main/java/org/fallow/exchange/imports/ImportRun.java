package org.fallow.exchange.imports;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;

import org.fallow.access.CurrentPerson;
import org.fallow.exchange.csv.ImportField;
import org.fallow.platform.LostDatabase;
import org.fallow.team.Rosters;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Runs an import to its end, person by person in the order of their names. It can be
 * stopped between two people and goes on there later.
 */
@Component
class ImportRun {

	private static final Logger log = LoggerFactory.getLogger(ImportRun.class);

	/** Names held in memory: however long the file, no more. */
	private static final int PEOPLE_AT_ONCE = 50;

	private final ImportJobs jobs;

	private final ImportRows rows;

	private final PersonImport personImport;

	private final ImportDecisions decisions;

	private final Rosters rosters;

	private final Squad squad;

	private final TransactionTemplate transaction;

	private final Clock clock;

	private final Today today;

	ImportRun(ImportJobs jobs, ImportRows rows, PersonImport personImport, ImportDecisions decisions, Rosters rosters,
			Squad squad, PlatformTransactionManager transactions, Clock clock, Today today) {
		this.jobs = jobs;
		this.rows = rows;
		this.personImport = personImport;
		this.decisions = decisions;
		this.rosters = rosters;
		this.squad = squad;
		this.transaction = new TransactionTemplate(transactions);
		this.clock = clock;
		this.today = today;
	}

	/**
	 * Runs it as the coach who sent the file. What was taken in of a person is taken in
	 * whole, so a run can begin again where an earlier one broke off.
	 * @param job the job, running
	 * @param stopped becomes true when the run shall end early
	 * @throws RuntimeException if the database is away or its disk is full; the job is
	 * running still
	 */
	void run(ImportJob job, AtomicBoolean stopped) {
		CurrentPerson.runAs(job.actor(), () -> {
			try {
				takeIn(job, stopped);
			}
			catch (RuntimeException ex) {
				if (LostDatabase.in(ex).isPresent()) {
					throw ex;
				}
				log.error("Import {} broke off", job.id(), ex);
				end(job.id(), Message.of("importFile.failed"));
			}
		});
	}

	private void takeIn(ImportJob job, AtomicBoolean stopped) {
		Choice choice = job.choice();
		Integer column = (choice == null) ? null : choice.mapping().columns().get(ImportField.PERSON);
		Long staged = this.transaction.execute((status) -> this.rows.count(job.id()));
		if (choice == null || column == null || staged == null || staged < job.counts().rowsTotal()) {
			end(job.id(), Message.of("importFile.lost"));
			return;
		}
		LocalDate today = this.today.in(zone(job));
		this.transaction.executeWithoutResult((status) -> this.rows.nameThePeople(job.id(), column));
		Optional<String> done = this.transaction.execute((status) -> this.jobs.doneTo(job.id()));
		String after = (done == null) ? null : done.orElse(null);
		Whom whom = whom(job, choice);
		for (List<String> next = people(job, after); !next.isEmpty(); next = people(job, after)) {
			whom = isAsBefore(job, whom) ? whom : whom(job, choice);
			for (String person : next) {
				if (stopped.get()) {
					return;
				}
				this.personImport.takeIn(job, choice, whom, person, today);
				after = person;
			}
		}
		end(job.id(), null);
	}

	private Whom whom(ImportJob job, Choice choice) {
		return Objects.requireNonNull(this.transaction.execute((status) -> new Whom(this.rosters.of(job.teamId()),
				this.decisions.of(job.id()), choice, this.rows.people(job.id(), null, ImportPeople.MOST))));
	}

	/** Others may have been added meanwhile; who took consent back is found out later. */
	private boolean isAsBefore(ImportJob job, Whom whom) {
		Integer members = this.transaction.execute((status) -> this.rosters.count(job.teamId()));
		return members != null && members == whom.size();
	}

	private List<String> people(ImportJob job, @Nullable String after) {
		List<String> next = this.transaction.execute((status) -> this.rows.people(job.id(), after, PEOPLE_AT_ONCE));
		return (next == null) ? List.of() : next;
	}

	private ZoneId zone(ImportJob job) {
		return this.transaction.execute((status) -> this.squad.teamsLedBy(job.actor())
			.stream()
			.filter((team) -> team.id().equals(job.teamId()))
			.map(Team::zone)
			.findFirst()
			.orElseThrow(() -> new IllegalStateException("the coach has left the team")));
	}

	private void end(UUID job, @Nullable Message problem) {
		this.transaction.executeWithoutResult((status) -> {
			if (problem == null) {
				this.jobs.finish(job, this.clock.instant());
			}
			else {
				this.jobs.fail(job, problem, this.clock.instant());
			}
			this.rows.forget(job);
			this.decisions.forget(job);
		});
	}

}
