package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.Clearance;

/**
 * The ceilings that coaches set. All stay stored; one that is lifted holds no longer from
 * the day on which that was recorded.
 */
public final class Ceilings {

	private Ceilings() {
	}

	/**
	 * The ceilings that hold on a day.
	 * @param events what is known by that day, in the order recorded
	 * @param day the day
	 * @return in the order recorded
	 */
	public static List<IllnessEvent.Stricter> on(List<IllnessEvent> events, LocalDate day) {
		return from(events, day).stream().filter((ceiling) -> !ceiling.day().isAfter(day)).toList();
	}

	/**
	 * The ceilings that hold on a day or on a later one.
	 * @param events what is known by that day, in the order recorded
	 * @param day the day
	 * @return in the order recorded
	 */
	public static List<IllnessEvent.Stricter> from(List<IllnessEvent> events, LocalDate day) {
		List<IllnessEvent.Stricter> holding = new ArrayList<>();
		for (IllnessEvent event : events) {
			if (event instanceof IllnessEvent.Stricter ceiling && !day.isAfter(ceiling.until())) {
				holding.add(ceiling);
			}
		}
		for (IllnessEvent event : events) {
			if (!holding.isEmpty() && event instanceof IllnessEvent.Lifted lifted) {
				holding.removeIf(lifted::lifts);
			}
		}
		return holding;
	}

	/** The strictest of some; full training if there is none. */
	static Clearance strictest(List<IllnessEvent.Stricter> ceilings) {
		Clearance strictest = Clearance.FULL_TRAINING;
		for (IllnessEvent.Stricter ceiling : ceilings) {
			strictest = strictest.stricterOf(ceiling.ceiling());
		}
		return strictest;
	}

}
