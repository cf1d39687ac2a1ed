package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.MorningEntry;
import org.jspecify.annotations.Nullable;

/**
 * The mornings known so far, one a day, in the order of their days. The days stand beside
 * them as numbers, so that looking for one does not touch the mornings on the way.
 */
final class MorningsByDay {

	private static final int FEW = 64;

	private final ArrayList<Morning> mornings = new ArrayList<>();

	private int[] days = new int[FEW];

	/** What was measured again on days without an entry so far. */
	private final TreeMap<LocalDate, List<MeasuredAgain>> before = new TreeMap<>();

	/** A copy with the mornings from a day on. */
	MorningsByDay from(LocalDate day) {
		MorningsByDay copy = new MorningsByDay();
		int first = indexOf(day.toEpochDay());
		copy.mornings.addAll(this.mornings.subList(first, this.mornings.size()));
		this.before.tailMap(day).forEach((date, all) -> copy.before.put(date, new ArrayList<>(all)));
		copy.days = Arrays.copyOfRange(this.days, first, Math.max(first + FEW, this.days.length));
		return copy;
	}

	/** Takes in an entry; answers whether it is of a day after all others. */
	boolean add(MorningEntry entry) {
		long day = entry.day().toEpochDay();
		int index = indexOf(day);
		int size = this.mornings.size();
		if (index < size && this.days[index] == day) {
			this.mornings.set(index, this.mornings.get(index).revisedBy(entry));
			return false;
		}
		if (size == this.days.length) {
			this.days = Arrays.copyOf(this.days, 2 * size);
		}
		System.arraycopy(this.days, index, this.days, index + 1, size - index);
		this.days[index] = (int) day;
		List<MeasuredAgain> again = this.before.remove(entry.day());
		this.mornings.add(index, Morning.of(entry, (again == null) ? List.of() : again));
		return index == size;
	}

	/** Takes in what was measured again on a morning, entered or still to be entered. */
	void add(MeasuredAgain again) {
		int index = indexOf(again.day().toEpochDay());
		if (on(again.day()) == null) {
			this.before.computeIfAbsent(again.day(), (day) -> new ArrayList<>()).add(again);
		}
		else {
			this.mornings.set(index, this.mornings.get(index).measuredAgain(again));
		}
	}

	/** All, oldest first. */
	List<Morning> all() {
		return this.mornings;
	}

	@Nullable Morning on(LocalDate day) {
		long epochDay = day.toEpochDay();
		int index = indexOf(epochDay);
		return (index < this.mornings.size() && this.days[index] == epochDay) ? this.mornings.get(index) : null;
	}

	/** From a day (inclusive) to a day (exclusive), oldest first. */
	List<Morning> between(long from, long to) {
		int end = indexOf(to);
		int begin = indexOf(from);
		return (begin < end) ? this.mornings.subList(begin, end) : List.of();
	}

	/** Up to a day, inclusive, latest first. */
	List<Morning> backFrom(LocalDate day) {
		List<Morning> all = this.mornings;
		int end = indexOf(day.toEpochDay() + 1);
		return new AbstractList<>() {

			@Override
			public Morning get(int index) {
				return all.get(end - 1 - index);
			}

			@Override
			public int size() {
				return end;
			}

		};
	}

	/**
	 * The first morning on or after a day. Where no day is without a morning since then,
	 * it is where counting back from the last one leads; otherwise it is after that.
	 */
	private int indexOf(long day) {
		int size = this.mornings.size();
		if (size == 0 || this.days[size - 1] < day) {
			return size;
		}
		int last = size - 1;
		int guess = (int) Math.max(0, last - (this.days[last] - day));
		if (this.days[guess] >= day) {
			return guess;
		}
		int found = Arrays.binarySearch(this.days, guess + 1, size, (int) day);
		return (found < 0) ? -found - 1 : found;
	}

}
