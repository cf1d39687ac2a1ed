package org.fallow.exchange.imports;

import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.platform.DatabaseState;
import org.fallow.platform.LostDatabase;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Runs imports one after the other in the background, waits while the database is away or
 * full, and takes up at start those a stop or crash left unfinished.
 */
@Component
public class ImportWorker implements DisposableBean {

	private static final Logger log = LoggerFactory.getLogger(ImportWorker.class);

	private static final int SECONDS_TO_STOP = 15;

	private static final long PAUSE_MILLIS = 50;

	/** Five seconds before the database is asked again. */
	private static final int PAUSES = 100;

	private final ExecutorService executor = Executors
		.newSingleThreadExecutor((work) -> new Thread(work, "fallow-import"));

	private final AtomicBoolean stopped = new AtomicBoolean();

	private final Imports imports;

	private final ImportRun run;

	private final DatabaseState database;

	ImportWorker(Imports imports, ImportRun run, DatabaseState database) {
		this.database = database;
		this.imports = imports;
		this.run = run;
	}

	/**
	 * Runs a started job soon.
	 * @param id the job
	 * @param actor the coach who sent the file
	 */
	public void submit(UUID id, PersonId actor) {
		this.executor.submit(() -> CurrentPerson.runAs(actor, () -> runNow(id)));
	}

	/**
	 * Runs a started job in this thread, to its end, for the coach who sent the file.
	 * While the database is away or its disk is full it waits, and goes on with the
	 * person it was at.
	 * @param id the job
	 */
	public void runNow(UUID id) {
		boolean told = false;
		while (!runsToItsEnd(id)) {
			if (!told) {
				log.warn("Import {} waits: the database is away or its disk is full", id);
				told = true;
			}
			if (!pause()) {
				return;
			}
		}
	}

	/** Whether nothing is left to do; false if the database could not do its work. */
	private boolean runsToItsEnd(UUID id) {
		try {
			this.imports.find(id)
				.filter((job) -> job.state() == ImportJob.State.RUNNING)
				.ifPresent((job) -> this.run.run(job, this.stopped));
			return true;
		}
		catch (RuntimeException ex) {
			LostDatabase lost = LostDatabase.in(ex).orElseThrow(() -> ex);
			if (lost == LostDatabase.FULL) {
				this.database.refusedForWantOfRoom();
			}
			return false;
		}
	}

	/** Whether to go on afterwards. */
	private boolean pause() {
		try {
			for (int waited = 0; waited < PAUSES && !this.stopped.get(); waited++) {
				Thread.sleep(PAUSE_MILLIS);
			}
			return !this.stopped.get();
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
			return false;
		}
	}

	@EventListener(ApplicationReadyEvent.class)
	void takeUpWhatWasLeft() {
		Purpose.OPERATION.call(this.imports::unfinished).forEach((job) -> submit(job.id(), job.actor()));
	}

	@Override
	public void destroy() throws InterruptedException {
		this.stopped.set(true);
		this.executor.shutdown();
		this.executor.awaitTermination(SECONDS_TO_STOP, TimeUnit.SECONDS);
	}

}
