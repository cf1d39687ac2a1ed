package org.fallow.baseline;

import org.fallow.rules.RuleSet;

/**
 * The flags of one series over all its mornings at once, numbers only: for looking at
 * many athletes or years. They are the flags the fold gives an athlete who has neither
 * episode nor symptom, by the same functions; an illness, a change of medicine or a
 * coach's decision is the fold's.
 */
public final class DailyFlags {

	/** No flag: there is no baseline yet, or too few readings for a mean. */
	public static final byte NONE = -1;

	private final RuleSet rules;

	private final double stepBpm;

	/**
	 * Flags by a rule set.
	 * @param rules all numbers
	 * @param stepBpm step of a counted pulse, 0 for other methods
	 */
	public DailyFlags(RuleSet rules, double stepBpm) {
		this.rules = rules;
		this.stepBpm = stepBpm;
	}

	/**
	 * Flags each morning's resting heart rate against the baseline of the mornings
	 * before.
	 * @param days days since 1970-01-01, rising
	 * @param bpm a reading for each of them
	 * @param dev takes each deviation, bpm; 0 where there is no flag
	 * @param flags takes each {@link RhrFlag}'s ordinal, or {@link #NONE}
	 */
	public void rhr(int[] days, double[] bpm, double[] dev, byte[] flags) {
		Column column = new Column(this.rules.baseline());
		for (int i = 0; i < days.length; i++) {
			if (column.moveTo(days[i])) {
				double spread = column.spread();
				dev[i] = bpm[i] - column.median();
				flags[i] = (byte) Deviation
					.flag(dev[i], Deviation.tolerance(spread, this.stepBpm, this.rules.flags()),
							Deviation.low(spread, this.rules.flags()), Deviation.high(spread, this.rules.flags()),
							this.rules.flags())
					.ordinal();
			}
			else {
				dev[i] = 0;
				flags[i] = NONE;
			}
			column.add(days[i], bpm[i]);
		}
	}

	/**
	 * Flags the mean ln RMSSD of the last mornings against the baseline of the mornings
	 * before each.
	 * @param days days since 1970-01-01, rising
	 * @param ln ln RMSSD for each of them, RMSSD in ms
	 * @param flags takes each {@link HrvFlag}'s ordinal, or {@link #NONE}
	 */
	public void hrv(int[] days, double[] ln, byte[] flags) {
		Column column = new Column(this.rules.baseline());
		for (int i = 0; i < days.length; i++) {
			column.add(days[i], ln[i]);
			flags[i] = column.hrvFlag(days[i], this.rules.hrv());
		}
	}

}
