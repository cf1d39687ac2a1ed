package org.fallow.training;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.EffortCeilings;
import org.fallow.entry.Recording;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.rules.RuleSet;
import org.fallow.team.Athlete;
import org.fallow.training.core.Position;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/** The effort ceiling of the stage that an athlete is in. */
@Component
class StageCeilings implements EffortCeilings {

	private final Assessments assessments;

	private final Standings standings;

	private final Recording recording;

	StageCeilings(Assessments assessments, Standings standings, Recording recording) {
		this.assessments = assessments;
		this.standings = standings;
		this.recording = recording;
	}

	@Override
	public @Nullable Double today(Athlete athlete) {
		LocalDate today = this.recording.today(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		AthleteStatus status = this.assessments.status(List.of(athlete.id())).get(athlete.id());
		Position.Return back = this.standings.position(athlete, today, (status == null) ? null : status.latest())
			.back();
		RuleSet.Stage stage = (back == null) ? null : back.now();
		return (stage == null) ? null : stage.effortCeiling();
	}

}
