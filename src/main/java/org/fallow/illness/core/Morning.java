package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.MorningEntry;
import org.jspecify.annotations.Nullable;

/**
 * One civil day's morning with all its revisions, in the order recorded, and what is read
 * from the last one, which is effective.
 */
final class Morning {

	private final List<MorningEntry> revisions;

	private final MorningEntry effective;

	private final List<MeasuredAgain> again;

	private final MorningEntry measured;

	private final @Nullable Double ln;

	private Morning(List<MorningEntry> revisions, MorningEntry effective, List<MeasuredAgain> again) {
		this.revisions = revisions;
		this.effective = effective;
		this.again = again;
		this.measured = again.isEmpty() ? effective : remeasured().ofTheDay();
		boolean unsure = effective.unsure() || (!again.isEmpty() && remeasured().isUnsure());
		Double rmssd = unsure ? null : effective.rmssdMs();
		this.ln = (rmssd == null) ? null : Math.log(rmssd);
	}

	static Morning of(MorningEntry entry, List<MeasuredAgain> again) {
		return new Morning(List.of(entry), entry, List.copyOf(again));
	}

	Morning revisedBy(MorningEntry entry) {
		List<MorningEntry> all = new ArrayList<>(this.revisions);
		all.add(entry);
		return new Morning(List.copyOf(all), entry, this.again);
	}

	Morning measuredAgain(MeasuredAgain measurement) {
		List<MeasuredAgain> all = new ArrayList<>(this.again);
		all.add(measurement);
		return new Morning(this.revisions, this.effective, List.copyOf(all));
	}

	/** The reading with what was measured again beside it. */
	Remeasured remeasured() {
		return new Remeasured(this.revisions, this.again);
	}

	/** Whether nothing was measured again, or asks for a count by finger. */
	boolean isMeasuredOnce() {
		return this.again.isEmpty() && !FastAtRest.isCounted(usableRhr(this.effective), this.effective.posture());
	}

	/** Whether anything was measured again. */
	boolean isMeasuredAgain() {
		return !this.again.isEmpty();
	}

	/** The morning with the measurement whose heart rate enters baselines. */
	MorningEntry measured() {
		return this.measured;
	}

	List<MorningEntry> revisions() {
		return this.revisions;
	}

	MorningEntry effective() {
		return this.effective;
	}

	LocalDate day() {
		return this.effective.day();
	}

	/** Resting heart rate, bpm; null without one that is used. */
	@Nullable Double rhr() {
		return usableRhr(this.measured);
	}

	/** ln RMSSD, RMSSD in ms; null without one that is used. */
	@Nullable Double ln() {
		return this.ln;
	}

	static @Nullable Double usableRhr(MorningEntry entry) {
		return entry.unsure() ? null : entry.rhrBpm();
	}

	/** Whether it was entered on its own day: only then it counts in a row. */
	boolean isOnTime() {
		for (MorningEntry entry : this.revisions) {
			if (!entry.recorded().on().isAfter(entry.day())) {
				return true;
			}
		}
		return false;
	}

}
