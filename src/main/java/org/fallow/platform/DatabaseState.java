package org.fallow.platform;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * What is known of the database without asking it: whether Fallow's own is being started
 * again, and how much room its disk has. Safe for use by several threads.
 */
@Component
public class DatabaseState {

	/** For how long a write that found no room is told of. */
	private static final Duration REMEMBERED = Duration.ofMinutes(1);

	private final Clock clock;

	private volatile @Nullable Attempt attempt;

	private volatile @Nullable DiskRoom room;

	private volatile @Nullable Instant refused;

	DatabaseState(Clock clock) {
		this.clock = clock;
	}

	/**
	 * Whether Fallow's own database has stopped and is not back yet.
	 * @return which attempt to start it is being made; empty while it runs, and always
	 * for a configured database
	 */
	public Optional<Attempt> away() {
		return Optional.ofNullable(this.attempt);
	}

	/**
	 * How dear room on the disk of the home has become.
	 * @return the level; {@link DiskRoom.Level#FULL} too when a write was refused within
	 * the last minute for want of room, wherever the database is
	 */
	public DiskRoom.Level disk() {
		Instant last = this.refused;
		if (last != null && last.plus(REMEMBERED).isAfter(this.clock.instant())) {
			return DiskRoom.Level.FULL;
		}
		DiskRoom known = this.room;
		return (known != null) ? known.level() : DiskRoom.Level.ROOMY;
	}

	/**
	 * What the disk of the home has free, for a page.
	 * @return in whole megabytes; 0 where there is no home to look at
	 */
	public long freeMegabytes() {
		DiskRoom known = this.room;
		return (known != null) ? known.megabytes() : 0;
	}

	/**
	 * Notes that the database refused a write because its disk is full.
	 */
	public void refusedForWantOfRoom() {
		this.refused = this.clock.instant();
	}

	void goneFor(Attempt next) {
		this.attempt = next;
	}

	void back() {
		this.attempt = null;
	}

	void measured(DiskRoom now) {
		this.room = now;
	}

	/**
	 * An attempt to start the database again.
	 *
	 * @param number from 1 on
	 * @param of how many are made before Fallow ends
	 */
	public record Attempt(int number, int of) {
	}

}
