package org.fallow.illness.view;

import java.time.LocalDate;
import java.util.List;

import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Where an athlete stands on the return path.
 *
 * @param stage ill, a stage, or a clinician hold over it
 * @param dayInStage counting from 1; absent under a hold, where nothing is counted
 * @param onset onset of the illness
 * @param path which path
 * @param protocol who wrote its definition
 * @param stages all stages of the path
 * @param symptomsOnly whether it goes by symptoms alone
 */
public record EpisodeView(StageView stage, @Nullable Integer dayInStage, LocalDate onset, PathName path,
		Protocol protocol, List<StageView> stages, boolean symptomsOnly) {

	/**
	 * The view of an assessment's episode.
	 * @param assessment the day's
	 * @param book the team's rule sets
	 * @return its view; null without an open episode
	 */
	public static @Nullable EpisodeView of(DayAssessment assessment, RuleBook book) {
		Episode episode = assessment.state().episode();
		RuleSet.Path path = StageView.path(assessment, book);
		if (episode == null || path == null) {
			return null;
		}
		StageView stage = assessment.holding() ? StageView.HOLD : StageView.of(path, episode.stage());
		Integer day = assessment.holding() ? null : Integer.valueOf(assessment.dayInStage());
		return new EpisodeView(stage, day, episode.firstOnset(), episode.path(), path.definedBy(), StageView.all(path),
				episode.symptomsOnly());
	}

}
