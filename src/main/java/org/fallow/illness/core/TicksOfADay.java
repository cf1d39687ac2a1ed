package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.jspecify.annotations.Nullable;

/**
 * What was ticked on a day, and what of it was told to be a slip.
 */
public final class TicksOfADay {

	private TicksOfADay() {
	}

	/**
	 * The ticks of what was recorded on a day, whichever day it speaks of: those of
	 * morning entries, and the red flags of after-session lists.
	 * @param timeline what is known
	 * @param recordedOn the day
	 * @return in the order recorded, each once
	 */
	public static List<Tick> of(Timeline timeline, LocalDate recordedOn) {
		Set<Tick> ticks = new LinkedHashSet<>();
		for (Fact fact : timeline.facts()) {
			if (fact.recorded().on().equals(recordedOn)) {
				ticks.addAll(ticks(fact));
			}
		}
		return List.copyOf(ticks);
	}

	private static List<Tick> ticks(Fact fact) {
		List<Tick> ticks = new ArrayList<>();
		if (fact instanceof MorningEntry entry) {
			entry.symptoms().forEach((felt) -> ticks.add(Tick.of(felt.symptom())));
		}
		if (fact instanceof SessionLog log) {
			log.after().stream().filter((one) -> one.isRedFlag()).forEach((one) -> ticks.add(Tick.of(log.key(), one)));
		}
		return ticks;
	}

	/**
	 * The day of the entry or session that carries a tick.
	 * @param timeline what is known
	 * @param tick what was ticked
	 * @param recordedOn the day it was recorded on
	 * @return the latest such day; {@code recordedOn} if nothing carries it
	 */
	public static LocalDate dayOf(Timeline timeline, Tick tick, LocalDate recordedOn) {
		LocalDate day = null;
		for (Fact fact : timeline.facts()) {
			if (fact.recorded().on().equals(recordedOn) && tick.isOf(fact)) {
				day = (day == null || fact.day().isAfter(day)) ? fact.day() : day;
			}
		}
		return (day == null) ? recordedOn : day;
	}

	/**
	 * The slip of a tick of a day: told, and the same not ticked again since.
	 * @param timeline what is known
	 * @param tick what was ticked
	 * @param day the day
	 * @return the slip, whether it works or waits for a coach; null if there is none
	 */
	public static IllnessEvent.@Nullable Slip slip(Timeline timeline, Tick tick, LocalDate day) {
		IllnessEvent.Slip told = null;
		Recorded ticked = null;
		for (Fact fact : timeline.facts()) {
			if (fact instanceof IllnessEvent.Slip slip && slip.day().equals(day) && slip.tick().equals(tick)) {
				told = slip;
			}
			else if (fact.day().equals(day) && tick.isOf(fact)) {
				ticked = fact.recorded();
			}
		}
		boolean stands = told != null && (ticked == null || ticked.compareTo(told.recorded()) < 0);
		return stands ? told : null;
	}

	/**
	 * Whether a slip waits for a coach.
	 * @param timeline what is known
	 * @param slip the slip
	 * @return false if it works
	 */
	public static boolean isWaiting(Timeline timeline, IllnessEvent.Slip slip) {
		return !Slips.works(slip, timeline.facts());
	}

	/**
	 * Whether any slip of a day waits for a coach.
	 * @param timeline what is known
	 * @param day the day
	 * @return true if so
	 */
	public static boolean isAnyWaiting(Timeline timeline, LocalDate day) {
		return timeline.facts()
			.stream()
			.anyMatch((fact) -> fact instanceof IllnessEvent.Slip slip && slip.day().equals(day)
					&& isWaiting(timeline, slip));
	}

	/**
	 * Red flags that a report of illness of a day carried: holds with their names.
	 * @param timeline what is known
	 * @param recordedOn the day it was recorded on
	 * @return codes of symptoms, each once
	 */
	public static List<String> reported(Timeline timeline, LocalDate recordedOn) {
		return timeline.facts()
			.stream()
			.filter((fact) -> fact instanceof IllnessEvent.Hold && fact.recorded().on().equals(recordedOn))
			.map((fact) -> Holds.byHand(((IllnessEvent.Hold) fact).reason()))
			.filter((cause) -> Arrays.stream(Symptom.values()).anyMatch((one) -> one.name().equals(cause)))
			.distinct()
			.toList();
	}

}
