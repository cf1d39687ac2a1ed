package org.fallow.measure;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.Activity;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Timeline;
import org.fallow.measure.Readings.Reading;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;

/**
 * Readings as facts, alone or with an illness of three sick mornings planted, and the
 * days decided from them by the default rules.
 */
final class Diary {

	/** Mornings of the planted illness. */
	static final int SICK_MORNINGS = 3;

	/** What it adds to resting heart rate, bpm: a degree of fever (Karjalainen 1986). */
	static final double SICK_BPM = 8;

	private static final RuleBook RULES = RuleBook.of(DefaultRules.ruleSet());

	private Diary() {
	}

	static List<DayAssessment> healthy(Readings readings) {
		List<Fact> facts = new ArrayList<>();
		readings.mornings().forEach((day, reading) -> facts.add(well(readings, day, reading)));
		return decided(facts, readings.mornings().lastKey());
	}

	/**
	 * The same person with excessive fatigue on three mornings and, from the first well
	 * one on, a half-hour easy run every other day.
	 */
	static List<DayAssessment> ill(Readings readings, LocalDate onset, LocalDate to) {
		List<Fact> facts = new ArrayList<>();
		LocalDate wellFrom = onset.plusDays(SICK_MORNINGS);
		readings.mornings().headMap(to.plusDays(1)).forEach((day, reading) -> {
			if (day.isBefore(onset) || !day.isBefore(wellFrom)) {
				facts.add(well(readings, day, reading));
			}
		});
		for (LocalDate day = onset; day.isBefore(wellFrom); day = day.plusDays(1)) {
			facts.add(sick(readings, day, readings.mornings().get(day)));
		}
		for (LocalDate day = wellFrom; !day.isAfter(to); day = day.plusDays(2)) {
			facts.add(run(day));
		}
		return decided(facts, to);
	}

	private static List<DayAssessment> decided(List<Fact> facts, LocalDate to) {
		return Course.withoutForecast(new Timeline(facts), RULES, to);
	}

	private static MorningEntry well(Readings readings, LocalDate day, Reading reading) {
		return entry(readings, day, reading.rhr(), reading.rmssd(), reading.unsure(), List.of(), Feels.WELL);
	}

	private static MorningEntry sick(Readings readings, LocalDate day, Reading reading) {
		Double rhr = (reading == null || reading.rhr() == null) ? null : reading.rhr() + SICK_BPM;
		return entry(readings, day, rhr, (reading == null) ? null : reading.rmssd(), false,
				List.of(ReportedSymptom.of(Symptom.FATIGUE, Severity.MODERATE)), Feels.UNWELL);
	}

	private static MorningEntry entry(Readings readings, LocalDate day, Double rhr, Double rmssd, boolean unsure,
			List<ReportedSymptom> symptoms, Feels feels) {
		return new MorningEntry(day, recorded(day, 6), readings.method(), Posture.LYING, rhr, rmssd, unsure, null,
				symptoms, false, FeverMedicine.NONE, true, feels, null, List.of(), null, Meanwhile.NO);
	}

	private static SessionLog run(LocalDate day) {
		return new SessionLog("run " + day, day, recorded(day, 19), Activity.RUN, 30, 3.0, Intensity.EASY, List.of(),
				false, null);
	}

	private static Recorded recorded(LocalDate day, int hour) {
		Instant at = day.atTime(hour, 0).toInstant(ZoneOffset.UTC);
		return new Recorded(at, day);
	}

}
