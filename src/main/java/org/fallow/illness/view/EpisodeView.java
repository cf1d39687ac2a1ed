package org.fallow.illness.view;

import java.time.LocalDate;

import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.rules.PathName;
import org.jspecify.annotations.Nullable;

/**
 * Where an athlete stands on the return path.
 *
 * @param stage {@code ILL} or the stage's number
 * @param dayInStage counting from 1
 * @param onset onset of the illness
 * @param path which path
 * @param symptomsOnly whether it goes by symptoms alone
 */
public record EpisodeView(String stage, int dayInStage, LocalDate onset, PathName path, boolean symptomsOnly) {

	/**
	 * The view of an assessment's episode.
	 * @param assessment the day's
	 * @return its view; null without an open episode
	 */
	public static @Nullable EpisodeView of(DayAssessment assessment) {
		Episode episode = assessment.state().episode();
		if (episode == null) {
			return null;
		}
		return new EpisodeView(stage(episode.stage()), assessment.dayInStage(), episode.firstOnset(), episode.path(),
				episode.symptomsOnly());
	}

	/**
	 * The name of a stage's number.
	 * @param stage 0 for ill
	 * @return {@code ILL} or the number
	 */
	public static String stage(int stage) {
		return (stage == 0) ? "ILL" : String.valueOf(stage);
	}

}
