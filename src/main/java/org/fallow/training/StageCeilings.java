package org.fallow.training;

import java.util.List;

import org.fallow.entry.EffortCeilings;
import org.fallow.entry.Recording;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.core.Episode;
import org.fallow.access.PersonId;
import org.fallow.rules.RuleSet;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/** The effort ceiling of the stage that an athlete is in. */
@Component
class StageCeilings implements EffortCeilings {

	private final Assessments assessments;

	private final RuleSets ruleSets;

	private final Recording recording;

	StageCeilings(Assessments assessments, RuleSets ruleSets, Recording recording) {
		this.assessments = assessments;
		this.ruleSets = ruleSets;
		this.recording = recording;
	}

	@Override
	public @Nullable Double today(Athlete athlete) {
		List<PersonId> id = List.of(athlete.id());
		this.assessments.bringUpTo(id, this.recording.today(athlete));
		AthleteStatus status = this.assessments.status(id).get(athlete.id());
		AssessedDay latest = (status == null) ? null : status.latest();
		Episode episode = (latest == null || !latest.inEpisode()) ? null
				: this.assessments.episodes(id).get(athlete.id());
		RuleSet.Stage stage = (episode == null) ? null
				: Standings.back(episode, this.ruleSets.bookOf(athlete.teamId())).now();
		return (stage == null) ? null : stage.effortCeiling();
	}

}
