package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.DayAssessment.Decision;
import org.jspecify.annotations.Nullable;

/**
 * Symptoms that come back after Stage 1 was first reached. A red flag is taken as a
 * symptom of illness here (the safer reading).
 */
final class BackBySymptoms {

	private BackBySymptoms() {
	}

	static void apply(DayFold fold) {
		Draft episode = fold.episode;
		if (episode == null || episode.stage1First == null) {
			return;
		}
		LocalDate relapse = latest(fold, episode.stage1First, true);
		if (relapse != null) {
			relapse(fold, episode, relapse);
		}
		else if (latest(fold, episode.stage1First, false) != null) {
			oneStageBack(fold, episode);
		}
		if (fold.entry != null) {
			episode.relapseRunning = fold.sickness(fold.entry).relapses();
		}
	}

	private static void relapse(DayFold fold, Draft episode, LocalDate onset) {
		if (episode.stage == 0 && episode.relapseRunning) {
			episode.latestOnset = Draft.later(episode.latestOnset, onset);
			return;
		}
		fold.decisions.add(new Decision(Decision.Kind.RELAPSE, episode.stage, 0));
		episode.relapse(onset, fold.day);
		episode.relapseRunning = true;
	}

	private static void oneStageBack(DayFold fold, Draft episode) {
		LocalDate last = episode.steppedBySymptoms;
		boolean rests = last != null
				&& fold.day.toEpochDay() - last.toEpochDay() < fold.rules.gates().symptomStepEvery();
		if (episode.stage > 0 && !rests) {
			fold.decisions.add(new Decision(Decision.Kind.BACK_BY_SYMPTOMS, episode.stage, episode.stage - 1));
			episode.enter(episode.stage - 1, fold.day);
			episode.steppedBySymptoms = fold.day;
		}
	}

	/**
	 * The latest day, of what was recorded today, with symptoms of the sort asked for.
	 */
	private static @Nullable LocalDate latest(DayFold fold, LocalDate since, boolean relapsing) {
		LocalDate latest = null;
		for (Fact fact : fold.known.fresh()) {
			boolean morning = fact instanceof MorningEntry;
			boolean counts = isOfTheSort(fold, fact, relapsing) && !(morning && fact.day().isBefore(since));
			LocalDate day = Draft.later(fact.day(), since);
			if (counts && !day.isAfter(fold.day)) {
				latest = (latest == null) ? day : Draft.later(latest, day);
			}
		}
		return latest;
	}

	private static boolean isOfTheSort(DayFold fold, Fact fact, boolean relapsing) {
		if (fact instanceof MorningEntry entry) {
			Sickness sick = fold.sickness(entry);
			return relapsing ? sick.relapses() : sick.aboveTheNeck();
		}
		boolean reported = fact instanceof IllnessEvent.Report report
				&& relapsing == (report.kind() != ReportKind.ABOVE_NECK);
		return reported || (relapsing && fold.opensHold(fact));
	}

}
