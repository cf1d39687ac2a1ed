package org.fallow.training.core;

import java.util.List;

import org.fallow.rules.Intensity;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete does of a programmed session, and why.
 *
 * @param programmed the session as the programme has it
 * @param version what is made of it
 * @param instead what the athlete does; absent for nothing
 * @param reasons why, one for each change in the order they were made; empty as
 * programmed
 * @param effortCeiling greatest session RPE, CR-10; absent where as programmed
 * @param heartRateShare greatest share of HRmax, strides apart; absent likewise
 */
public record ModifiedSession(PlannedSession programmed, Version version, @Nullable PlannedSession instead,
		List<Message> reasons, @Nullable Double effortCeiling, @Nullable Double heartRateShare) {

	/**
	 * Copies the reasons, and checks that nothing got longer or harder.
	 * @throws IllegalArgumentException if it did
	 */
	public ModifiedSession {
		reasons = List.copyOf(reasons);
		if (instead != null) {
			requireNoMore(programmed, instead);
		}
	}

	private static void requireNoMore(PlannedSession programmed, PlannedSession instead) {
		boolean more = instead.minutes() > programmed.minutes() || instead.hardest().compareTo(programmed.hardest()) > 0
				|| instead.secondsAboveEasy() > programmed.secondsAboveEasy();
		if (more) {
			throw new IllegalArgumentException("a modified session is never more than the programmed one");
		}
	}

	/**
	 * How long the athlete runs.
	 * @return minutes; 0 for nothing
	 */
	public int minutes() {
		return (this.instead == null) ? 0 : this.instead.minutes();
	}

	/**
	 * The hardest of what the athlete does.
	 * @return REST for nothing
	 */
	public Intensity hardest() {
		return (this.instead == null) ? Intensity.REST : this.instead.hardest();
	}

}
