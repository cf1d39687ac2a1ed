package org.fallow.illness;

import java.time.LocalDate;
import java.util.List;

import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.LevelOffer;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;
import org.springframework.stereotype.Component;

/**
 * Says beforehand what speaks against a working level. It asks the fold itself, so that
 * there is one rule only.
 */
@Component
class LevelCheck {

	private final Replays replays;

	LevelCheck(Replays replays) {
		this.replays = replays;
	}

	void check(List<Problem> problems, Athlete athlete, LocalDate day) {
		List<DayAssessment> days = this.replays.replay(athlete, day, day, List.of());
		LevelOffer offer = days.isEmpty() ? null : days.get(days.size() - 1).level();
		if (offer == null) {
			problems.add(Problem.of("reason", "level.no-episode"));
			return;
		}
		offer.refusals().forEach((refusal) -> problems.add(new Problem("reason", refusal)));
	}

	void checkSymptomsOnly(List<Problem> problems, Athlete athlete, LocalDate day) {
		List<DayAssessment> days = this.replays.replay(athlete, day, day, List.of());
		if (days.isEmpty() || !days.get(days.size() - 1).mayGoBySymptoms()) {
			problems.add(Problem.of("reason", "symptoms-only.not-now"));
		}
	}

}
