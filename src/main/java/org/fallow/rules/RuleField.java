package org.fallow.rules;

/**
 * One number of a rule set with the bounds within which a coach may change it. Names for
 * people are in the message files, under {@code rules.field.} and {@link #label}.
 *
 * @param pointer where it stands in the canonical JSON, as in RFC 6901
 * @param label what it is called in the message files
 * @param usual its default
 * @param least least value allowed, inclusive
 * @param most greatest value allowed, inclusive; equal to {@code least} where it is fixed
 * @param looser which way leads to earlier or easier clearances
 * @param unit its unit
 * @param mark how sure the default is
 */
public record RuleField(String pointer, String label, double usual, double least, double most, Looser looser, Unit unit,
		Mark mark) {

	/**
	 * Whether it cannot be changed.
	 * @return true if only one value is allowed
	 */
	public boolean isFixed() {
		return this.least == this.most;
	}

	/**
	 * The least value as text.
	 * @return without needless zeros
	 */
	public String leastText() {
		return RuleTree.text(this.least);
	}

	/**
	 * The greatest value as text.
	 * @return without needless zeros
	 */
	public String mostText() {
		return RuleTree.text(this.most);
	}

	/**
	 * Whether a value is on the looser side of the bounds.
	 * @param value the value
	 * @return true if it is beyond the safe bound; where neither way is looser, beyond
	 * either
	 */
	boolean isLooser(double value) {
		return switch (this.looser) {
			case LOWER -> value < this.least;
			case HIGHER -> value > this.most;
			case NEITHER -> false;
		};
	}

	boolean allows(double value) {
		return value >= this.least && value <= this.most;
	}

	/** Which way leads to earlier or easier clearances. */
	public enum Looser {

		LOWER, HIGHER, NEITHER

	}

	/** What a value is counted in. */
	public enum Unit {

		DAYS, MORNINGS, READINGS, RUNS, MINUTES, BPM, CELSIUS, FACTOR, SHARE, LN, SEVERITY, CR10, BORG

	}

	/** How sure a default is; the sources stand in docs/evidence.md. */
	public enum Mark {

		/** Common practice, no source. */
		TRADE,
		/** Our convention. */
		OWN,
		/** Read in a stored copy. */
		R,
		/** Read in a secondary report. */
		R2,
		/** From memory. */
		M

	}

}
