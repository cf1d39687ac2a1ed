package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.PathName;
import org.jspecify.annotations.Nullable;

/**
 * An open illness episode as it stands after a day.
 *
 * @param ruleHash the rule set it keeps
 * @param openedOn the day it opened
 * @param firstOnset onset of the illness
 * @param latestOnset onset of the latest relapse, or the first onset
 * @param lengthFrom the day from which lengths of symptoms run: the first onset, or the
 * first morning of the latest relapse
 * @param path the return path
 * @param floor the shortest path allowed, set by holds and relapses
 * @param stage 0 while ill, else the stage's number
 * @param stageSince first day in the stage
 * @param counted days counted in the stage
 * @param tracked whether resting heart rate was tracked when it opened
 * @param symptomsOnly whether a coach lets it go on by symptoms alone
 * @param held its baselines
 * @param stage1First the day Stage 1 was first reached; absent before
 * @param stage1On the day Stage 1 was first reached after the latest onset; absent before
 * @param relapseRunning whether the latest entered morning belongs to a relapse
 * @param badRun bad mornings with no good one between
 * @param steppedBySymptoms latest day of a step back by symptoms; absent if none
 * @param free its latest symptom-free mornings since the latest onset, oldest first
 * @param standing since when the criteria of the next gate stand as they do
 */
public record Episode(String ruleHash, LocalDate openedOn, LocalDate firstOnset, LocalDate latestOnset,
		LocalDate lengthFrom, PathName path, PathName floor, int stage, LocalDate stageSince, int counted,
		boolean tracked, boolean symptomsOnly, Held held, @Nullable LocalDate stage1First, @Nullable LocalDate stage1On,
		boolean relapseRunning, int badRun, @Nullable LocalDate steppedBySymptoms, List<FreeMorning> free,
		List<Standing> standing) {

	/** Copies the lists. */
	public Episode {
		free = List.copyOf(free);
		standing = List.copyOf(standing);
	}

	/** The same under another rule set. */
	Episode under(String hash) {
		return new Episode(hash, this.openedOn, this.firstOnset, this.latestOnset, this.lengthFrom, this.path,
				this.floor, this.stage, this.stageSince, this.counted, this.tracked, this.symptomsOnly, this.held,
				this.stage1First, this.stage1On, this.relapseRunning, this.badRun, this.steppedBySymptoms, this.free,
				this.standing);
	}

}
