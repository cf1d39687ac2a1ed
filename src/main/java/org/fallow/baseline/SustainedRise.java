package org.fallow.baseline;

import org.fallow.rules.RuleSet;

/**
 * The one-sided CUSUM of deviations as it stands after a morning. It is an alarm that
 * asks a question; it proves nothing.
 *
 * @param sum S, bpm
 * @param signal whether the signal stands
 * @param inBandRunning readings running within band since the signal began
 * @param silent mornings running without a reading
 * @param zeroedBySilence whether the sum was set to 0 by silence while the signal stands
 */
public record SustainedRise(double sum, boolean signal, int inBandRunning, int silent, boolean zeroedBySilence) {

	/**
	 * Refuses what no mornings give.
	 * @throws IllegalArgumentException if the sum is not finite, or a number is negative
	 */
	public SustainedRise {
		if (!(sum >= 0 && Double.isFinite(sum)) || inBandRunning < 0 || silent < 0) {
			throw new IllegalArgumentException("no sustained rise: " + sum + ", " + inBandRunning + ", " + silent);
		}
	}

	/** Nothing summed, no signal. */
	public static final SustainedRise NONE = new SustainedRise(0, false, 0, 0, false);

	/**
	 * Slack k of a baseline.
	 * @param spread the baseline's spread, bpm
	 * @param rules CUSUM numbers
	 * @return k, bpm
	 */
	public static double slack(double spread, RuleSet.Cusum rules) {
		return Math.max(rules.slackFloor(), spread);
	}

	/**
	 * Limit h of a baseline.
	 * @param spread the baseline's spread, bpm
	 * @param rules CUSUM numbers
	 * @return h, bpm
	 */
	public static double limit(double spread, RuleSet.Cusum rules) {
		return Math.max(rules.signalFloor(), rules.signalSpreads() * spread);
	}

	/**
	 * The next sum of a one-sided CUSUM, without cap or end.
	 * @param sum the sum before
	 * @param deviation today's deviation
	 * @param slack k
	 * @return the sum after, never negative
	 */
	public static double next(double sum, double deviation, double slack) {
		return Math.max(0, sum + deviation - slack);
	}

	/**
	 * After a morning with a reading.
	 * @param deviation the morning's deviation
	 * @param spread the baseline's spread, bpm
	 * @param rules CUSUM numbers
	 * @return the rise as it stands then
	 */
	public SustainedRise after(Deviation deviation, double spread, RuleSet.Cusum rules) {
		double limit = limit(spread, rules);
		double next = next(this.sum, Math.min(deviation.dev(), rules.deviationCap()), slack(spread, rules));
		next = Math.min(rules.sumCap() * limit, next);
		if (!this.signal) {
			return new SustainedRise(next, next >= limit, 0, 0, false);
		}
		int running = (deviation.flag() == RhrFlag.WITHIN) ? this.inBandRunning + 1 : 0;
		int needed = this.zeroedBySilence ? 1 : rules.readingsInBand();
		return (running >= needed) ? NONE : new SustainedRise(next, true, running, 0, this.zeroedBySilence);
	}

	/**
	 * After a morning without a reading.
	 * @param rules CUSUM numbers
	 * @return the rise as it stands then: the sum is 0 once the silence is long enough,
	 * the signal stands
	 */
	public SustainedRise afterSilence(RuleSet.Cusum rules) {
		int running = this.silent + 1;
		if (running < rules.silentMornings()) {
			return new SustainedRise(this.sum, this.signal, this.inBandRunning, running, this.zeroedBySilence);
		}
		return new SustainedRise(0, this.signal, this.inBandRunning, running, this.signal);
	}

}
