package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of what clinicians and coaches recorded.
 *
 * @param standing the holds that stand, in the order recorded
 * @param clearance the clearance in force; absent without one
 * @param ceilings the coaches' ceilings that hold, in the order recorded
 * @param examined what was ticked today that a physician has examined
 * @param saidAble whether a coach noted that the athlete said to feel able today
 * @param saidEating whether a coach noted that the athlete said to eat normally today
 */
public record ClinicEvidence(List<HoldState> standing, @Nullable InForce clearance, List<Ceiling> ceilings,
		List<Examined> examined, boolean saidAble, boolean saidEating) {

	/** Copies the lists. */
	public ClinicEvidence {
		standing = List.copyOf(standing);
		ceilings = List.copyOf(ceilings);
		examined = List.copyOf(examined);
	}

	static ClinicEvidence of(DayFold fold) {
		boolean able = false;
		boolean eating = false;
		if (!fold.known.isMinor(fold.day)) {
			for (IllnessEvent.SaidToday said : fold.known.events(IllnessEvent.SaidToday.class)) {
				boolean today = said.day().equals(fold.day) && said.recorded().on().equals(fold.day);
				able |= today && said.able();
				eating |= today && said.eating();
			}
		}
		List<IllnessEvent> events = fold.known.events();
		IllnessEvent.Cleared cleared = Holds.inForce(events, fold.day);
		InForce clearance = (cleared == null) ? null : new InForce(cleared.day(), cleared.until(),
				cleared.recorded().at(), cleared.ceiling(), cleared.word());
		List<Ceiling> ceilings = Ceilings.on(events, fold.day)
			.stream()
			.map((one) -> new Ceiling(one.key(), one.ceiling(), one.until()))
			.toList();
		return new ClinicEvidence(fold.standing, clearance, ceilings, fold.examined, able, eating);
	}

	/**
	 * The clearance in force: of those covering the day the latest recorded.
	 *
	 * @param from first day it covers
	 * @param until last day it covers, inclusive; absent when open
	 * @param recordedAt when it was recorded
	 * @param ceiling the most it allows
	 * @param word whose word it is, and what it says besides
	 */
	public record InForce(LocalDate from, @Nullable LocalDate until, Instant recordedAt, Clearance ceiling,
			ClinicianWord word) {
	}

	/**
	 * A coach's ceiling.
	 *
	 * @param key names it among the athlete's ceilings
	 * @param ceiling the most it allows
	 * @param until last day, inclusive
	 */
	public record Ceiling(String key, Clearance ceiling, LocalDate until) {
	}

}
