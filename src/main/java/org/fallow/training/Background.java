package org.fallow.training;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.Absence;
import org.fallow.entry.Activity;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.SessionLog;
import org.fallow.illness.core.Episode;
import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

/**
 * What is known of an athlete besides today's clearance, as far as plans depend on it.
 *
 * @param athlete who
 * @param today the athlete's day
 * @param episode as the latest day left it; absent without an open one
 * @param lastIll last day ill of late; absent if there was none
 * @param absences as they stand
 * @param raceWords that stand for races from today on
 * @param statement what was said of the usual training
 * @param medicines begun and stopped, in the order recorded
 * @param sessions as they stand: today's, and in an episode back to half a year before it
 * @param unwell days in an episode or under a hold in the half year before the present
 * episode
 */
record Background(Athlete athlete, LocalDate today, @Nullable Episode episode, @Nullable LocalDate lastIll,
		List<Absence> absences, List<RaceWord> raceWords, Statement statement, List<MedicineChange> medicines,
		List<SessionLog> sessions, List<LocalDate> unwell) {

	/** Runs of some days of those that are known here. */
	List<SessionLog> runs(LocalDate from, LocalDate to) {
		return this.sessions.stream()
			.filter((log) -> log.activity() == Activity.RUN && !log.day().isBefore(from) && !log.day().isAfter(to))
			.toList();
	}

}
