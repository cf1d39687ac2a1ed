package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.HrvBaseline;
import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.Series;
import org.fallow.entry.Activity;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;
import org.jspecify.annotations.Nullable;

/**
 * Earliest days: the fold itself, lived on with good mornings, every number at baseline
 * from tomorrow and one easy run a day from today. Windows still carry past readings.
 */
final class Forecast {

	private static final int HORIZON_DAYS = 60;

	private static final int WINDOW_DAYS = 70;

	private Forecast() {
	}

	static GateSheet of(DayFold fold, State after, boolean mayRun, RuleBook book, GateSheet sheet) {
		List<@Nullable LocalDate> earliest = new ArrayList<>();
		for (Criterion criterion : sheet.criteria()) {
			earliest.add(criterion.shuts() ? null : fold.day);
		}
		LocalDate opens = fold.standing.isEmpty() ? liveOn(fold, after, mayRun, book, sheet, earliest) : null;
		List<Criterion> criteria = new ArrayList<>();
		for (int i = 0; i < earliest.size(); i++) {
			criteria.add(sheet.criteria().get(i).withEarliest(earliest.get(i)));
		}
		return new GateSheet(sheet.from(), sheet.to(), sheet.closes(), criteria, sheet.opened(), opens);
	}

	private static @Nullable LocalDate liveOn(DayFold fold, State after, boolean mayRun, RuleBook book, GateSheet sheet,
			List<@Nullable LocalDate> earliest) {
		Known known = fold.known.from(fold.day.minusDays(WINDOW_DAYS));
		known.newDay();
		State state = after;
		if (mayRun && known.sessions(fold.day, fold.day).isEmpty()) {
			known.add(run(fold.day));
		}
		for (int i = 1; i <= HORIZON_DAYS; i++) {
			LocalDate day = fold.day.plusDays(i);
			known.newDay();
			known.add(goodMorning(state, known, fold, day));
			DayFold next = new DayFold(state, known, book, day);
			Draft episode = next.episode;
			if (episode == null || episode.stage != sheet.from()) {
				return null;
			}
			note(sheet, Gates.evaluate(next, episode), day, earliest);
			DayAssessment assessment = next.decide(book, false);
			if (assessment.opened() != null) {
				return day;
			}
			state = assessment.state();
			if (assessment.clearance().compareTo(Clearance.EASY_ONLY) >= 0) {
				known.add(run(day));
			}
		}
		return null;
	}

	/** A criterion that is asked for no longer is met. */
	private static void note(GateSheet sheet, GateSheet next, LocalDate day, List<@Nullable LocalDate> earliest) {
		for (int i = 0; i < earliest.size(); i++) {
			if (earliest.get(i) == null && !isShutBy(sheet.criteria().get(i).code(), next)) {
				earliest.set(i, day);
			}
		}
	}

	private static boolean isShutBy(String code, GateSheet sheet) {
		for (Criterion criterion : sheet.criteria()) {
			if (criterion.shuts() && criterion.code().equals(code)) {
				return true;
			}
		}
		return false;
	}

	private static MorningEntry goodMorning(State state, Known known, DayFold fold, LocalDate day) {
		Episode episode = state.episode();
		Held held = (episode == null) ? null : episode.held();
		Series inUse = new Windows(known, List.of(), fold.rules).latestRhrSeries(fold.day);
		RhrBaseline rhr = (held == null) ? null : held.level();
		HrvBaseline hrv = (held == null) ? null : held.hrv();
		Series series = (inUse != null) ? inUse : (held == null) ? null : held.hrvSeries();
		boolean sameHrv = held != null && hrv != null && series != null && series.equals(held.hrvSeries());
		return new MorningEntry(day, recorded(day, 6), (series == null) ? null : series.method(),
				(series == null) ? null : series.posture(), (series == null) ? null : calm(state, rhr, fold),
				(sameHrv && hrv != null) ? Math.exp(hrv.mean()) : null, false, null, List.of(), false,
				FeverMedicine.NONE, true, Feels.WELL, null, List.of(), null, Meanwhile.NO);
	}

	/**
	 * The reading of a good morning: the baseline; without one it is only there where a
	 * pulse too fast would be kept else, and then one that nobody is asked about.
	 */
	private static @Nullable Double calm(State state, @Nullable RhrBaseline rhr, DayFold fold) {
		if (rhr != null) {
			return rhr.median();
		}
		return (state.tooFastOn() == null) ? null : Double.valueOf(fold.rules.flags().askBpm() - 1);
	}

	private static SessionLog run(LocalDate day) {
		return new SessionLog("forecast " + day, day, recorded(day, 18), Activity.RUN, 20, null, Intensity.EASY,
				List.of(), false, null);
	}

	private static Recorded recorded(LocalDate day, int hour) {
		Instant at = day.atTime(hour, 0).toInstant(ZoneOffset.UTC);
		return new Recorded(at, day);
	}

}
