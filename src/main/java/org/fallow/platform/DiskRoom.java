package org.fallow.platform;

/**
 * How much room a disk has.
 *
 * @param free bytes that Fallow's user may still write; not negative
 * @param total bytes of the whole disk; at least {@code free}
 */
public record DiskRoom(long free, long total) {

	private static final long MEGABYTE = 1024L * 1024;

	/** One file of the database's journal, which it needs whole. */
	private static final long JOURNAL_FILE = 16 * MEGABYTE;

	private static final int LOW_PERCENT = 10;

	private static final int SHORT_PERCENT = 2;

	public DiskRoom {
		if (free < 0 || total < free) {
			throw new IllegalArgumentException(free + " of " + total + " bytes free");
		}
	}

	/**
	 * How dear room has become.
	 * @return one of four levels, the dearest that holds
	 */
	public Level level() {
		if (this.free < JOURNAL_FILE) {
			return Level.FULL;
		}
		double percent = 100.0 * this.free / this.total;
		return (percent < SHORT_PERCENT) ? Level.SHORT : (percent < LOW_PERCENT) ? Level.LOW : Level.ROOMY;
	}

	/**
	 * What is free.
	 * @return whole megabytes (1024 × 1024 bytes), rounded down
	 */
	public long megabytes() {
		return this.free / MEGABYTE;
	}

	/** From plenty to nothing. */
	public enum Level {

		/** At least a tenth is free. */
		ROOMY,

		/** Less than 10 % is free. */
		LOW,

		/** Less than 2 % is free. */
		SHORT,

		/** Less than 16 MB are free: the next entry may be refused. */
		FULL

	}

}
