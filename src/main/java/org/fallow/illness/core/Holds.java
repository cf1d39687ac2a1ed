package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * Which facts open a clinician hold, and which holds stand on a day.
 */
final class Holds {

	/** The cause of a hold that somebody set in own words. */
	static final String BY_HAND = "BY_HAND";

	private Holds() {
	}

	/** The hold a fact opens; null if it opens none. */
	static @Nullable HoldState openedBy(Fact fact) {
		String cause = cause(fact);
		return (cause == null) ? null : new HoldState(fact.day(), fact.recorded(), cause, false);
	}

	private static @Nullable String cause(Fact fact) {
		if (fact instanceof MorningEntry entry && entry.hasRedFlag()) {
			return entry.symptoms()
				.stream()
				.map(ReportedSymptom::symptom)
				.filter(Symptom::isRedFlag)
				.findFirst()
				.orElseThrow()
				.name();
		}
		if (fact instanceof SessionLog session && session.hasRedFlag()) {
			return session.after().stream().filter(AfterSession::isRedFlag).findFirst().orElseThrow().name();
		}
		if (fact instanceof IllnessEvent.Report report && report.kind().opensHold()) {
			return report.kind().name();
		}
		return (fact instanceof IllnessEvent.Hold hold) ? byHand(hold.reason()) : null;
	}

	/** A hold whose reason is a symptom's code has that as its cause. */
	static String byHand(String reason) {
		return Arrays.stream(Symptom.values()).map(Symptom::name).filter(reason::equals).findFirst().orElse(BY_HAND);
	}

	/**
	 * Whether a hold stands at the end of a day: no clearance recorded after it covers
	 * the day.
	 */
	static boolean stands(HoldState hold, List<IllnessEvent> events, LocalDate day) {
		for (IllnessEvent event : events) {
			if (event instanceof IllnessEvent.Cleared cleared && cleared.covers(day)
					&& cleared.recorded().at().isAfter(hold.recorded().at())) {
				return false;
			}
		}
		return true;
	}

	/** The standing holds, in the order recorded. */
	static List<HoldState> standing(List<HoldState> holds, List<IllnessEvent> events, LocalDate day) {
		List<HoldState> standing = new ArrayList<>();
		for (HoldState hold : holds) {
			if (stands(hold, events, day)) {
				standing.add(hold);
			}
		}
		return standing;
	}

	/**
	 * The ceiling of the clearance in force: of those covering the day, the latest
	 * recorded; null if none covers it.
	 */
	static IllnessEvent.@Nullable Cleared inForce(List<IllnessEvent> events, LocalDate day) {
		IllnessEvent.Cleared latest = null;
		for (IllnessEvent event : events) {
			if (event instanceof IllnessEvent.Cleared cleared && cleared.covers(day)
					&& (latest == null || cleared.recorded().compareTo(latest.recorded()) >= 0)) {
				latest = cleared;
			}
		}
		return latest;
	}

	/** The coach's ceiling of the day; full training where there is none. */
	static Clearance coachCeiling(List<IllnessEvent> events, LocalDate day) {
		Clearance ceiling = Clearance.FULL_TRAINING;
		for (IllnessEvent event : events) {
			if (event instanceof IllnessEvent.Stricter stricter && stricter.covers(day)) {
				ceiling = ceiling.stricterOf(stricter.ceiling());
			}
		}
		return ceiling;
	}

}
