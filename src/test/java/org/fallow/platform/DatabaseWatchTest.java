package org.fallow.platform;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

import org.fallow.platform.DatabaseState.Attempt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

import static org.assertj.core.api.Assertions.assertThat;

/** The watch over a made-up database: what is tried, what is told, and when it ends. */
@Timeout(60)
class DatabaseWatchTest {

	private static final List<Duration> AT_ONCE = List.of(Duration.ZERO, Duration.ZERO, Duration.ZERO);

	private final DatabaseState state = new DatabaseState(Clock.systemUTC());

	private final CountDownLatch ended = new CountDownLatch(1);

	@Test
	void bringsADeadDatabaseBack() throws InterruptedException {
		Made database = new Made(true, true);
		try (DatabaseWatch watch = watch(database, AT_ONCE)) {
			watch.begin();
			database.die();
			assertThat(database.started.await(20, TimeUnit.SECONDS)).isTrue();
			assertThat(awaitBack()).isTrue();
		}
		assertThat(this.ended.getCount()).isOne();
	}

	@Test
	void endsAfterTheLastAttempt() throws InterruptedException {
		Made database = new Made(false, false, false);
		try (DatabaseWatch watch = watch(database, AT_ONCE)) {
			watch.begin();
			database.die();
			assertThat(this.ended.await(20, TimeUnit.SECONDS)).isTrue();
			assertThat(database.attempts).isEqualTo(3);
			assertThat(this.state.away()).isEqualTo(Optional.of(new Attempt(3, 3)));
		}
	}

	@Test
	void countsADatabaseThatDiesAtOnceAsOneThatDidNotComeUp() throws InterruptedException {
		Made database = new Made(true, true, true);
		database.diesAtOnce = true;
		try (DatabaseWatch watch = watch(database, AT_ONCE)) {
			watch.begin();
			database.die();
			assertThat(this.ended.await(30, TimeUnit.SECONDS)).isTrue();
			assertThat(database.attempts).isEqualTo(3);
		}
	}

	@Test
	void saysThatItIsAwayWhileItWaits() throws InterruptedException {
		Made database = new Made(true);
		try (DatabaseWatch watch = watch(database, List.of(Duration.ofMinutes(10)))) {
			watch.begin();
			database.die();
			while (this.state.away().isEmpty()) {
				Thread.sleep(20);
			}
			assertThat(this.state.away()).isEqualTo(Optional.of(new Attempt(1, 1)));
			assertThat(database.attempts).isZero();
		}
		assertThat(this.ended.getCount()).as("a watch that is closed ends nothing").isOne();
	}

	@Test
	void measuresTheDisk() throws InterruptedException {
		Made database = new Made();
		try (DatabaseWatch watch = watch(database, AT_ONCE)) {
			watch.begin();
			while (this.state.disk() == DiskRoom.Level.ROOMY) {
				Thread.sleep(20);
			}
			assertThat(this.state.disk()).isEqualTo(DiskRoom.Level.LOW);
			assertThat(this.state.freeMegabytes()).isEqualTo(90);
		}
	}

	private boolean awaitBack() throws InterruptedException {
		for (int i = 0; i < 1000 && this.state.away().isPresent(); i++) {
			Thread.sleep(20);
		}
		return this.state.away().isEmpty();
	}

	private DatabaseWatch watch(Made database, List<Duration> waits) {
		return new DatabaseWatch(database, this.state, waits, this.ended::countDown);
	}

	/** A database that dies when it is told to and comes up as often as it is told. */
	private static final class Made implements DatabaseWatch.Watched {

		private final Deque<Boolean> comesUp = new ArrayDeque<>();

		private final CountDownLatch started = new CountDownLatch(1);

		private volatile boolean running = true;

		private volatile boolean diesAtOnce;

		private volatile int attempts;

		Made(Boolean... comesUp) {
			this.comesUp.addAll(List.of(comesUp));
		}

		void die() {
			this.running = false;
		}

		@Override
		public boolean runs() {
			return this.running;
		}

		@Override
		public void startAgain() throws IOException {
			this.attempts++;
			if (!this.comesUp.remove()) {
				throw new IOException("it does not come up");
			}
			this.running = !this.diesAtOnce;
			this.started.countDown();
		}

		@Override
		public DiskRoom room() {
			return new DiskRoom(90L * 1024 * 1024, 1000L * 1024 * 1024);
		}

	}

}
