package org.fallow.baseline;

import org.fallow.entry.Posture;
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

	private final Posture posture;

	/**
	 * Flags by a rule set.
	 * @param rules all numbers
	 * @param posture how the readings of the series are taken
	 */
	public DailyFlags(RuleSet rules, Posture posture) {
		this.rules = rules;
		this.posture = posture;
	}

	/**
	 * Flags each morning's resting heart rate against the baseline of the mornings
	 * before.
	 * @param days days since 1970-01-01, rising
	 * @param bpm a reading for each of them
	 * @param dev takes each deviation, bpm; 0 where there is no baseline
	 * @param flags takes each {@link RhrFlag}'s ordinal, or {@link #NONE}
	 * @param above takes whether each morning stands above the line
	 */
	public void rhr(int[] days, double[] bpm, double[] dev, byte[] flags, boolean[] above) {
		Column column = new Column(this.rules);
		int before = -1;
		boolean stands = false;
		for (int i = 0; i < days.length; i++) {
			boolean has = column.moveTo(days[i]);
			if (has) {
				double spread = column.spread();
				double median = column.median();
				double line = column.lineBpm(days[i], median);
				dev[i] = Deviation.dev(bpm[i], median);
				RhrFlag flag = flag(bpm[i], dev[i], line, spread);
				flags[i] = (byte) flag.ordinal();
				boolean near = before >= 0 && days[i] - days[before] <= this.rules.line().apartDays();
				stands = flag.isHigh() || Line.isFarAbove(dev[i], line, this.rules.line())
						|| (near && Line.isPair(dev[i], dev[before], line, this.rules.line()))
						|| (stands && dev[i] >= this.rules.line().endsBelow());
				before = i;
			}
			else {
				dev[i] = 0;
				flags[i] = tooFast(bpm[i]);
				stands = false;
			}
			above[i] = stands;
			column.add(days[i], bpm[i]);
		}
	}

	private RhrFlag flag(double bpm, double dev, double line, double spread) {
		if (RhrFlag.isTooFast(bpm, this.posture, this.rules.flags())) {
			return RhrFlag.VERY_HIGH;
		}
		return Deviation.flag(dev, line, Deviation.low(spread, this.rules.flags()),
				Deviation.high(spread, this.rules.flags()), this.rules.flags());
	}

	private byte tooFast(double bpm) {
		return RhrFlag.isTooFast(bpm, this.posture, this.rules.flags()) ? (byte) RhrFlag.VERY_HIGH.ordinal() : NONE;
	}

	/**
	 * Flags the mean ln RMSSD of the last mornings against the baseline of the mornings
	 * before each.
	 * @param days days since 1970-01-01, rising
	 * @param ln ln RMSSD for each of them, RMSSD in ms
	 * @param flags takes each {@link HrvFlag}'s ordinal, or {@link #NONE}
	 */
	public void hrv(int[] days, double[] ln, byte[] flags) {
		Column column = new Column(this.rules);
		for (int i = 0; i < days.length; i++) {
			column.add(days[i], ln[i]);
			flags[i] = column.hrvFlag(days[i], this.rules.hrv());
		}
	}

}
