package org.fallow.exchange.imports;

import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;

import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Runs imports one after the other in the background, and takes up at start those a stop
 * or crash left unfinished.
 */
@Component
public class ImportWorker implements DisposableBean {

	private static final int SECONDS_TO_STOP = 15;

	private final ExecutorService executor = Executors
		.newSingleThreadExecutor((work) -> new Thread(work, "fallow-import"));

	private final AtomicBoolean stopped = new AtomicBoolean();

	private final Imports imports;

	private final ImportRun run;

	ImportWorker(Imports imports, ImportRun run) {
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
	 * @param id the job
	 */
	public void runNow(UUID id) {
		this.imports.find(id)
			.filter((job) -> job.state() == ImportJob.State.RUNNING)
			.ifPresent((job) -> this.run.run(job, this.stopped));
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
