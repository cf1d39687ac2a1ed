package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.entry.Recorded;
import org.fallow.entry.Recording;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Component;

/**
 * Says beforehand why a withdrawal would do nothing. It asks the fold itself, so that
 * there is one rule only.
 */
@Component
class WithdrawalCheck {

	private final Replays replays;

	private final Recording recording;

	WithdrawalCheck(Replays replays, Recording recording) {
		this.replays = replays;
		this.recording = recording;
	}

	void check(List<Problem> problems, Athlete athlete, LocalDate day) {
		List<DayAssessment> present = this.replays.replay(athlete, day, day, List.of());
		DayAssessment now = present.isEmpty() ? null : present.get(present.size() - 1);
		Episode episode = (now == null) ? null : now.state().episode();
		if (now == null || episode == null) {
			problems.add(Problem.of("reason", "withdraw.no-episode"));
		}
		else if (now.holding()) {
			problems.add(Problem.of("reason", "withdraw.hold"));
		}
		else if (!withdraws(athlete, day)) {
			problems.add(Problem.of("reason", "withdraw.fever"));
		}
	}

	private boolean withdraws(Athlete athlete, LocalDate day) {
		List<Fact> trial = new ArrayList<>();
		trial.add(new IllnessEvent.Withdrawal(day, new Recorded(this.recording.now(), day), ""));
		List<DayAssessment> days = this.replays.replay(athlete, day, day, trial);
		return days.get(days.size() - 1)
			.decisions()
			.stream()
			.anyMatch((decision) -> decision.kind() == Decision.Kind.WITHDRAWN);
	}

}
