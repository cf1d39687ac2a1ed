package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.jspecify.annotations.Nullable;

/**
 * Which facts open a clinician hold, and which holds stand on a day.
 */
final class Holds {

	/**
	 * Causes after which no clearance closes an episode as no illness. Those beside the
	 * named diseases are red flags.
	 */
	private static final Set<String> NEVER_NO_ILLNESS = Set.of("FAINTING", "CONFUSION", "DARK_URINE", "COUGHING_BLOOD",
			"SEIZURE", "PNEUMONIA", "GLANDULAR_FEVER", "MYOCARDITIS", "PERICARDITIS", "HOSPITAL");

	/** The cause of a hold that somebody set in own words. */
	static final String BY_HAND = "BY_HAND";

	private Holds() {
	}

	/** The hold a fact opens; null if it opens none. */
	static @Nullable HoldState openedBy(Fact fact) {
		String cause = cause(fact);
		return (cause == null) ? null : new HoldState(fact.day(), fact.recorded(), cause, false);
	}

	/**
	 * The hold that a count by finger opens which confirms a racing heart; null if none.
	 */
	static @Nullable HoldState ofARacingHeart(Fact fact, Known known) {
		return known.isRacing(fact) ? new HoldState(fact.day(), fact.recorded(), Symptom.PALPITATIONS.name(), false)
				: null;
	}

	/** Of several red flags the one that is never called no illness. */
	private static @Nullable String cause(Fact fact) {
		List<String> flags = List.of();
		if (fact instanceof MorningEntry entry) {
			flags = entry.symptoms()
				.stream()
				.map(ReportedSymptom::symptom)
				.filter(Symptom::isRedFlag)
				.map(Symptom::name)
				.toList();
		}
		if (fact instanceof SessionLog session) {
			flags = session.after().stream().filter(AfterSession::isRedFlag).map(AfterSession::name).toList();
		}
		if (!flags.isEmpty()) {
			return flags.stream().filter(NEVER_NO_ILLNESS::contains).findFirst().orElse(flags.get(0));
		}
		if (fact instanceof IllnessEvent.Report report && report.kind().opensHold()) {
			return report.kind().name();
		}
		return (fact instanceof IllnessEvent.Hold hold) ? byHand(hold.reason()) : null;
	}

	/**
	 * A hold whose reason is a symptom's code has that as its cause, and one carried over
	 * from another entry of the person keeps what never was no illness.
	 */
	static String byHand(String reason) {
		if (NEVER_NO_ILLNESS.contains(reason)) {
			return reason;
		}
		return Arrays.stream(Symptom.values()).map(Symptom::name).filter(reason::equals).findFirst().orElse(BY_HAND);
	}

	/** Whether a hold can be found to have been no illness. */
	static boolean canBeNoIllness(HoldState hold) {
		return !NEVER_NO_ILLNESS.contains(hold.cause());
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
	 * The clearance in force: of those covering the day, the latest recorded; null if
	 * none covers it.
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

}
