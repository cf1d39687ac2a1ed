package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

import org.fallow.baseline.RhrBaseline;
import org.fallow.baseline.Series;
import org.fallow.baseline.Statistics;
import org.fallow.entry.MorningEntry;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * The way out where a resting heart rate does not come back: a coach may set a working
 * level on a clinician's word. Of the numbers only resting heart rate has one (the safer
 * reading); a suppressed variability ends no later than seven mornings without it.
 */
final class WorkingLevels {

	/** Criteria that numbers alone, and the time they cost, can keep shut. */
	private static final Set<String> NUMBERS = Set.of("quiet", "hrv", "good-morning", "no-bad-morning", "counted");

	private static final Set<String> BY_RHR = Set.of("quiet", "good-morning");

	private WorkingLevels() {
	}

	/**
	 * A working level ends with a hold, with fever and with medicine for the illness,
	 * held after the close as well.
	 */
	static void endOn(DayFold fold) {
		Draft open = fold.episode;
		Held after = fold.afterClose;
		if (open == null && after == null) {
			return;
		}
		boolean ends = fold.raisedHoldToday || !fold.standing.isEmpty()
				|| fold.known.fresh(MorningEntry.class)
					.stream()
					.map(fold::sickness)
					.anyMatch((sick) -> sick.fever() || sick.medicineForIllness() || sick.redFlag())
				|| fold.isFeverReported(fold.day);
		if (open != null && ends) {
			open.held = open.held.with(null);
		}
		if (after != null && ends) {
			fold.afterClose = after.with(null);
		}
	}

	/**
	 * Notes today's morning, says whether a level may be set, and sets the one that was
	 * recorded today: it works from tomorrow on.
	 */
	static @Nullable LevelOffer after(DayFold fold, Draft open, @Nullable GateSheet shut) {
		note(fold, open, shut);
		RhrBaseline own = open.held.rhr();
		if (!open.tracksNow() || own == null) {
			return null;
		}
		LevelOffer offer = offer(fold, open, own);
		Double bpm = offer.bpm();
		if (offer.possible() && bpm != null && !fold.known.fresh(IllnessEvent.WorkingLevel.class).isEmpty()) {
			open.held = open.held.with(new Working(fold.day.plusDays(1), bpm));
			fold.decisions
				.add(new DayAssessment.Decision(DayAssessment.Decision.Kind.WORKING_LEVEL, open.stage, open.stage));
			return new LevelOffer(offer.shut(), offer.of(), bpm, offer.own(), offer.rules(), List.of("in-force"));
		}
		return offer;
	}

	private static void note(DayFold fold, Draft open, @Nullable GateSheet sheet) {
		if (!fold.seen.entered() || fold.seen.isSick() || fold.seen.reported() || sheet == null) {
			return;
		}
		List<String> shutting = new ArrayList<>();
		for (Criterion criterion : sheet.criteria()) {
			if (criterion.shuts()) {
				shutting.add(criterion.code());
			}
		}
		boolean byRhr = fold.rhr.dev() != null && !Marking.isQuiet(fold) && shutting.stream().anyMatch(BY_RHR::contains)
				&& NUMBERS.containsAll(shutting) && !isTooEarly(fold, open);
		List<FreeMorning> free = new ArrayList<>(open.free);
		free.add(new FreeMorning(fold.day, byRhr));
		int most = fold.rules.workingLevel().ofMornings();
		open.free = List.copyOf(free.subList(Math.max(0, free.size() - most), free.size()));
	}

	/**
	 * Whether the stage's days would be missing with quiet mornings too: then time keeps
	 * the gate shut, not the numbers (the safer reading).
	 */
	private static boolean isTooEarly(DayFold fold, Draft open) {
		List<RuleSet.Stage> stages = open.path(fold.rules).stages();
		return open.stage > 0 && fold.day.toEpochDay()
				- open.stageSince.toEpochDay() < stages.get(Math.min(open.stage, stages.size()) - 1).days();
	}

	private static LevelOffer offer(DayFold fold, Draft open, RhrBaseline own) {
		RuleSet.WorkingLevel rules = fold.rules.workingLevel();
		int shut = 0;
		for (FreeMorning morning : open.free) {
			shut += morning.shut() ? 1 : 0;
		}
		Double bpm = level(fold, open, rules.medianMornings());
		List<String> against = new ArrayList<>();
		add(against, "in-force", open.held.working() != null);
		add(against, "minor", fold.seen.minor());
		add(against, "hold", !fold.standing.isEmpty());
		add(against, "fever", Gates.isNearFever(fold));
		add(against, "not-free", !fold.seen.entered() || fold.seen.isSick() || fold.seen.reported());
		add(against, "too-few", shut < rules.shutMornings() || open.free.size() < rules.ofMornings());
		add(against, "no-level", bpm == null);
		Double today = fold.rhr.reading();
		boolean far = (bpm != null && bpm - own.median() >= rules.mostDeviation())
				|| (today != null && today - own.median() >= rules.mostDeviation());
		add(against, "too-far", far);
		add(against, "not-above", bpm != null && bpm <= own.median());
		return new LevelOffer(shut, open.free.size(), bpm, own.median(), rules, against);
	}

	private static void add(List<String> against, String code, boolean holds) {
		if (holds) {
			against.add(code);
		}
	}

	/** Median of the latest symptom-free readings of the series; null if too few. */
	private static @Nullable Double level(DayFold fold, Draft open, int mornings) {
		Windows windows = new Windows(fold.known, List.of(), fold.rules);
		List<Double> readings = new ArrayList<>();
		for (Morning morning : fold.known.backFrom(fold.day)) {
			LocalDate date = morning.day();
			MorningEntry entry = morning.effective();
			Double reading = morning.rhr();
			if (readings.size() == mornings || !date.isAfter(open.latestOnset)) {
				break;
			}
			boolean free = !fold.sickness(entry).isSick() && !fold.isReported(date);
			Series series = windows.series(morning.measured());
			if (free && reading != null && series != null && series.equals(open.held.series())) {
				readings.add(reading);
			}
		}
		return (readings.size() < mornings) ? null
				: Statistics.median(readings.stream().mapToDouble(Double::doubleValue).toArray());
	}

}
