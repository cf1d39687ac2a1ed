package org.fallow.illness.core;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.fallow.entry.Activity;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;

/**
 * Facts that make a combination of the clearance table's conditions true on day 0, lived
 * by the fold. Baseline 50 bpm, MAD 3: L is 5.5, High from about 11. Histories up to
 * yesterday are the same for many combinations and lived once.
 */
final class TableHistory {

	private static final RuleBook BOOK = RuleBook.of(DefaultRules.ruleSet());

	private static final Map<Character, Double> BEATS = Map.of('W', 50.0, 'S', 54.5, 'R', 60.0, 'H', 66.0, 'V', 76.0,
			'L', 39.0);

	private static final double[] PATTERN = { 46, 53, 47, 50, 54, 47, 53 };

	/** First day of a history with an episode; without one it begins 45 days later. */
	private static final int FIRST = -75;

	private static final int ONSET = -45;

	private final Map<Past, Lived> pasts = new HashMap<>();

	/** What a day's answer depends on of the days before it. */
	private record Past(int stage, String mornings, boolean colds, boolean tracked, String hrv, int restOn,
			boolean heldAgain, String clinician) {

		static Past of(TableDay day) {
			int restOn = switch (day.entry()) {
				case "missing-after-rest" -> -1;
				case "missing-after-carried" -> -2;
				default -> 0;
			};
			boolean heldAgain = day.held() && day.inAStage();
			return new Past(day.stageBefore(), day.past(), day.above().equals("third"), day.tracked(), day.hrv(),
					restOn, heldAgain, heldAgain ? day.clinician() : "none");
		}

		Double rmssd(int day) {
			return switch (this.hrv) {
				case "none" -> null;
				case "suppressed" -> (day > -10) ? 30.0 : quietRmssd(day);
				default -> quietRmssd(day);
			};
		}

		private static Double quietRmssd(int day) {
			return (day % 2 == 0) ? 60.0 : 70.0;
		}

	}

	/** An athlete's state and facts after a day. */
	private record Lived(State state, Known known) {

		DayFold fold(int day, List<Fact> facts) {
			Known grown = this.known.from(Story.day(-200));
			grown.newDay();
			facts.forEach(grown::add);
			return new DayFold(this.state, grown, BOOK, Story.day(day));
		}

		Lived lives(int day, List<Fact> facts) {
			DayFold fold = fold(day, facts);
			return new Lived(fold.decide(BOOK, false).state(), fold.known);
		}

	}

	/** Day 0 of the combination. */
	DayAssessment assess(TableDay day) {
		Past past = Past.of(day);
		return this.pasts.computeIfAbsent(past, TableHistory::live)
			.fold(0, today(day, past).timeline().facts())
			.decide(BOOK, false);
	}

	private static Lived live(Past past) {
		boolean arrived = past.stage() == 0;
		int first = arrived ? FIRST - ONSET : FIRST;
		Lived lived = new Lived(State.before(Story.day(first)), new Known(new Timeline(List.of()).adultFrom(), BOOK));
		int last = -past.mornings().length();
		for (int day = first; day < 0; day++) {
			boolean silent = past.stage() > 0 && arrived && day < last;
			lived = lived.lives(day, silent ? List.of() : facts(past, day, last, arrived).timeline().facts());
			Episode episode = lived.state().episode();
			arrived |= day > ONSET && episode != null && episode.stage() == past.stage();
		}
		return lived;
	}

	private static Story facts(Past past, int day, int last, boolean arrived) {
		Story story = Story.ofANewcomer();
		if (past.stage() > 0 && day == ONSET) {
			fallIll(story, past);
		}
		if (day == past.restOn()) {
			story.stricter(day, day, Clearance.REST);
		}
		if (day >= last) {
			told(story, past, day);
			return story;
		}
		double bpm = (day < ONSET || past.stage() == 0) ? PATTERN[Math.floorMod(day, PATTERN.length)] : 50;
		story.morning(day, (e) -> e.rhr(past.tracked() ? bpm : null).rmssd(past.rmssd(day)));
		return arrived ? story : story.add(runOn(story, day));
	}

	/** Ill, or under a hold that a clearance lifts for the days up to yesterday. */
	private static void fallIll(Story story, Past past) {
		if (!past.heldAgain()) {
			story.report(ONSET, ONSET, ReportKind.OTHER, 5);
			return;
		}
		if (!past.clinician().equals("none")) {
			story.cleared(ONSET, null, ceiling(past.clinician()));
		}
		story.add(new IllnessEvent.Hold(Story.day(ONSET), story.recorded(ONSET, 16), "test"));
		story.add(new IllnessEvent.Cleared(Story.day(ONSET), Story.day(-1), story.recorded(ONSET, 18),
				Clearance.FULL_TRAINING, "a clinician", "physician", null));
	}

	private static Fact runOn(Story story, int day) {
		return new SessionLog("s" + day, Story.day(day), story.recorded(day, 19), Activity.RUN, 30, 3.0, Intensity.EASY,
				List.of(), false, null);
	}

	private static void told(Story story, Past past, int day) {
		char letter = past.mornings().charAt(past.mornings().length() + day);
		String onward = past.mornings().substring(past.mornings().length() + day).replace("-", "");
		boolean cold = past.colds() && onward.length() <= 2;
		if (letter != '-') {
			story.morning(day, (e) -> {
				e.rhr(BEATS.get(letter)).rmssd(past.rmssd(day));
				return cold ? e.symptom(Symptom.SNEEZING, Severity.MILD) : e;
			});
		}
	}

	private static Story today(TableDay day, Past past) {
		Story story = Story.ofANewcomer();
		if (day.given()) {
			known(story, day);
			story.morning(0, (e) -> said(e.rhr(BEATS.get(day.today())).rmssd(past.rmssd(0)), day));
		}
		if (day.stage().equals("ill") || day.stage().equals("withdrawn")) {
			story.report(0, 0, ReportKind.OTHER, 5);
		}
		if (day.stage().equals("withdrawn")) {
			story.withdrawn(0);
		}
		if (day.injury().equals("yes")) {
			story.injured(0, 3);
		}
		if (!day.coach().equals("none")) {
			story.stricter(0, 0, ceiling(day.coach()));
		}
		if (!past.heldAgain()) {
			people(story, day);
		}
		return story;
	}

	private static void people(Story story, TableDay day) {
		if (!day.clinician().equals("none")) {
			story.cleared(0, null, ceiling(day.clinician()));
		}
		if (day.held()) {
			story.add(new IllnessEvent.Hold(Story.day(0), story.recorded(0, 16), "test"));
		}
	}

	/** Noted before any illness began: during one it would not count for it. */
	private static void known(Story story, TableDay day) {
		if (day.above().equals("known")) {
			story.add(known(story, Symptom.SNEEZING, Severity.MODERATE));
		}
		if (day.body().equals("known")) {
			story.add(known(story, Symptom.WHEEZE, Severity.MILD));
		}
	}

	private static KnownSymptom known(Story story, Symptom symptom, Severity severity) {
		return new KnownSymptom(Story.day(ONSET - 5), Story.day(1), story.recorded(ONSET - 5, 5), symptom, severity);
	}

	private static Story.Entry said(Story.Entry entry, TableDay day) {
		if (day.fever().equals("yes")) {
			entry.fever();
		}
		switch (day.body()) {
			case "known" -> entry.symptom(Symptom.WHEEZE, Severity.MILD);
			case "yes" -> entry.symptom(Symptom.FATIGUE, Severity.MILD);
			default -> {
			}
		}
		switch (day.above()) {
			case "known", "yes", "third" -> entry.symptom(Symptom.SNEEZING, Severity.MILD);
			case "smell" -> entry.symptom(Symptom.SMELL_LOSS, Severity.MODERATE);
			default -> {
			}
		}
		Feels feels = day.feels().equals("unanswered") ? null : Feels.valueOf(upper(day.feels()));
		return entry.medicine(FeverMedicine.valueOf(upper(day.medicine()))).feels(feels);
	}

	private static Clearance ceiling(String word) {
		return switch (word) {
			case "rest" -> Clearance.REST;
			case "easy" -> Clearance.EASY_ONLY;
			default -> Clearance.FULL_TRAINING;
		};
	}

	private static String upper(String word) {
		return word.toUpperCase(Locale.ROOT);
	}

}
