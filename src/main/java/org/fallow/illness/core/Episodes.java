package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * An episode as it was and as it would have been under other rules.
 *
 * @param before as it was; absent if it would be new
 * @param after as it would have been; absent if it would not have opened, or would have
 * gone on from an earlier one
 */
public record Episodes(@Nullable Lived before, @Nullable Lived after) {

	/** Pairs those that overlap; what has no partner stands alone. */
	static List<Episodes> paired(List<Lived> before, List<Lived> after) {
		List<Lived> left = new ArrayList<>(after);
		List<Episodes> pairs = new ArrayList<>();
		for (Lived was : before) {
			Lived would = left.stream().filter(was::overlaps).findFirst().orElse(null);
			left.remove(would);
			pairs.add(new Episodes(was, would));
		}
		left.forEach((would) -> pairs.add(new Episodes(null, would)));
		pairs.sort(Comparator.comparing(Episodes::opened));
		return List.copyOf(pairs);
	}

	/**
	 * The day it opened, as it was or else as it would have been.
	 * @return a day
	 */
	public LocalDate opened() {
		if (this.before != null) {
			return this.before.opened();
		}
		if (this.after != null) {
			return this.after.opened();
		}
		throw new IllegalStateException("neither was nor would be");
	}

	/**
	 * Whether anything of it would have been different.
	 * @return true if so
	 */
	public boolean differs() {
		return this.before == null || this.after == null || !this.before.isAs(this.after);
	}

	/**
	 * Whether full training would have come later or earlier; not yet is later than any
	 * day.
	 * @return above 0 for later, below 0 for earlier, 0 for the same day, or if either is
	 * absent
	 */
	public int returnsBy() {
		if (this.before == null || this.after == null) {
			return 0;
		}
		LocalDate was = (this.before.fullTraining() == null) ? LocalDate.MAX : this.before.fullTraining();
		LocalDate would = (this.after.fullTraining() == null) ? LocalDate.MAX : this.after.fullTraining();
		return would.compareTo(was);
	}

}
