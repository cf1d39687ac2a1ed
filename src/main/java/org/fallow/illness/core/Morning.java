package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.MorningEntry;
import org.jspecify.annotations.Nullable;

/**
 * One civil day's morning with all its revisions, in the order recorded, and what is read
 * from the last one, which is effective.
 */
final class Morning {

	private final List<MorningEntry> revisions;

	private final MorningEntry effective;

	private final @Nullable Double ln;

	private Morning(List<MorningEntry> revisions, MorningEntry effective) {
		this.revisions = revisions;
		this.effective = effective;
		Double rmssd = effective.unsure() ? null : effective.rmssdMs();
		this.ln = (rmssd == null) ? null : Math.log(rmssd);
	}

	static Morning of(MorningEntry entry) {
		return new Morning(List.of(entry), entry);
	}

	Morning revisedBy(MorningEntry entry) {
		List<MorningEntry> all = new ArrayList<>(this.revisions);
		all.add(entry);
		return new Morning(List.copyOf(all), entry);
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
		return usableRhr(this.effective);
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
