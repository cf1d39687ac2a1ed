package org.fallow.platform;

import java.io.IOException;
import java.time.Duration;
import java.util.List;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Looks twice a second whether Fallow's own database runs, and starts it again when it
 * does not: it was killed, or stopped by itself because its disk was full. Each attempt
 * has a wait of its own before it; when the last one has failed, Fallow ends, so that
 * whatever started it can see that. Twice a minute it looks how much room the disk has.
 */
final class DatabaseWatch implements AutoCloseable {

	private static final Logger log = LoggerFactory.getLogger(DatabaseWatch.class);

	private static final long PAUSE_MILLIS = 500;

	private static final int PAUSES_BETWEEN_MEASUREMENTS = 60;

	/** A database that dies sooner did not really come up: its attempt has failed. */
	private static final Duration PROBATION = Duration.ofSeconds(5);

	private final Watched database;

	private final DatabaseState state;

	private final List<Duration> waits;

	private final Runnable end;

	private final DiskLog disk = new DiskLog();

	private final Thread thread = new Thread(this::watch, "own-database-watch");

	private volatile boolean closed;

	/**
	 * A watch, not yet begun.
	 * @param database what is watched
	 * @param state who is told
	 * @param waits before each attempt; as many attempts as there are waits
	 * @param end what to do when all of them have failed
	 */
	DatabaseWatch(Watched database, DatabaseState state, List<Duration> waits, Runnable end) {
		this.database = database;
		this.state = state;
		this.waits = List.copyOf(waits);
		this.end = end;
	}

	void begin() {
		this.thread.setDaemon(true);
		this.thread.start();
	}

	private void watch() {
		try {
			for (int pauses = 0; !this.closed; pauses++) {
				if (pauses % PAUSES_BETWEEN_MEASUREMENTS == 0) {
					measure();
				}
				if (!this.database.runs() && !bringBack()) {
					this.end.run();
					return;
				}
				Thread.sleep(PAUSE_MILLIS);
			}
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
	}

	/** Whether the database is back; false once the last attempt has failed. */
	private boolean bringBack() throws InterruptedException {
		for (int number = 1; number <= this.waits.size() && !this.closed; number++) {
			this.state.goneFor(new DatabaseState.Attempt(number, this.waits.size()));
			Duration wait = this.waits.get(number - 1);
			log.error("Fallow's own database has stopped; attempt {} of {} to start it again in {} seconds", number,
					this.waits.size(), wait.toSeconds());
			Thread.sleep(wait.toMillis());
			if (comesUp(number) && staysUp()) {
				return true;
			}
		}
		return this.closed;
	}

	private boolean comesUp(int number) {
		try {
			this.database.startAgain();
			log.warn("Fallow's own database runs again, after attempt {}", number);
			this.state.back();
			return true;
		}
		catch (IOException | StartFailure ex) {
			measure();
			log.error("Attempt {} of {} to start Fallow's own database failed: {}", number, this.waits.size(),
					ex.getMessage());
			return false;
		}
	}

	private boolean staysUp() throws InterruptedException {
		for (long left = PROBATION.toMillis(); left > 0 && !this.closed; left -= PAUSE_MILLIS) {
			Thread.sleep(PAUSE_MILLIS);
			if (!this.database.runs()) {
				return false;
			}
		}
		return true;
	}

	private void measure() {
		try {
			DiskRoom room = this.database.room();
			this.state.measured(room);
			this.disk.tell(room);
		}
		catch (IOException ex) {
			log.warn("The room on the disk of the home cannot be looked at: {}", ex.getMessage());
		}
	}

	/** Looks no more; the database is left as it is. */
	@Override
	public void close() {
		this.closed = true;
		this.thread.interrupt();
		try {
			if (Thread.currentThread() != this.thread) {
				this.thread.join();
			}
		}
		catch (InterruptedException ex) {
			Thread.currentThread().interrupt();
		}
	}

	/** What the watch needs of a database. */
	interface Watched {

		boolean runs();

		void startAgain() throws IOException;

		DiskRoom room() throws IOException;

	}

}
