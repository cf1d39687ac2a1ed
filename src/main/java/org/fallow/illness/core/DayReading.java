package org.fallow.illness.core;

import java.util.function.Function;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.Repeat.Taken;
import org.fallow.illness.core.Repeat.Use;
import org.jspecify.annotations.Nullable;

/**
 * Which of a morning's readings decides it. After a high first the one after lying does,
 * lower or higher; where it cannot be compared although the first can, where the first
 * was corrected since, where it was not high and where it still has to be counted by
 * finger, the first stays, unless the second is high itself (the safer readings).
 *
 * @param entry the morning as measured by the reading that decides
 * @param repeat what it was chosen from; absent where nothing was measured again
 */
record DayReading(MorningEntry entry, @Nullable Repeat repeat) {

	static DayReading of(Morning morning, Function<MorningEntry, @Nullable Taken> judge) {
		if (morning.isMeasuredOnce()) {
			return new DayReading(morning.effective(), null);
		}
		Remeasured again = morning.remeasured();
		MorningEntry entered = again.entered();
		MorningEntry second = again.second();
		MorningEntry first = again.first();
		Taken ofFirst = (Morning.usableRhr(first) == null) ? null : judge.apply(first);
		Taken ofSecond = (second == null) ? null : judge.apply(second);
		boolean beside = again.isRestedBeside() && !again.isUncounted();
		boolean rested = isSecond(ofFirst, ofSecond, beside);
		Use used = rested ? Use.RESTED : again.isUnsure() ? Use.COUNTED : Use.ENTERED;
		MorningEntry chosen = (rested && second != null) ? second : first;
		Repeat repeat = new Repeat((entered.rhrBpm() == null) ? null : judge.apply(entered), entered.unsure(),
				counted(again, judge), ofSecond, again.isRestedBeside(), used);
		return new DayReading(chosen, repeat);
	}

	private static @Nullable Taken counted(Remeasured again, Function<MorningEntry, @Nullable Taken> judge) {
		MeasuredAgain count = again.counted();
		return (count == null) ? null
				: judge.apply(again.entered().measuredAs(count.method(), count.posture(), count.rhrBpm()));
	}

	private static boolean isSecond(@Nullable Taken first, @Nullable Taken second, boolean beside) {
		if (second == null || second.high()) {
			return second != null;
		}
		boolean comparable = second.dev() != null || first == null || first.dev() == null;
		return beside && comparable && (first == null || first.high());
	}

}
