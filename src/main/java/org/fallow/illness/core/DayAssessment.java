package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.Clearance;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What Fallow made of an athlete's day, with the evidence it was computed from.
 *
 * @param day the day
 * @param ruleHash the rule set it was made under
 * @param clearance what the athlete may do
 * @param reasons why, strictest first; empty when nothing speaks against full training
 * @param notices what people should be told besides, without effect on the clearance
 * @param mark what the morning was for the return
 * @param marks marks of the mornings before that were looked at, oldest first
 * @param seen what people said
 * @param rhr resting heart rate
 * @param hrv heart-rate variability
 * @param during the episode as gate and clearance found it; absent without an open one
 * @param judgedFrom what the path was judged from; absent without an open episode
 * @param decisions what changed on the day: opened, stage reached, stepped back, closed
 * @param opened the gate that opened today; absent if none did
 * @param gate the next gate; absent without an open episode
 * @param level whether a coach may set a working level; absent where resting heart rate
 * is not tracked in an open episode
 * @param mayGoBySymptoms whether a coach may let the open episode go on by symptoms alone
 * @param holding whether a clinician hold stands
 * @param clinic what clinicians and coaches recorded
 * @param state what the fold carries on
 */
public record DayAssessment(LocalDate day, String ruleHash, Clearance clearance, List<Message> reasons,
		List<Message> notices, Mark mark, List<State.PastMark> marks, Seen seen, RhrEvidence rhr, HrvEvidence hrv,
		@Nullable Episode during, @Nullable PathEvidence judgedFrom, List<Decision> decisions,
		@Nullable GateSheet opened, @Nullable GateSheet gate, @Nullable LevelOffer level, boolean mayGoBySymptoms,
		boolean holding, ClinicEvidence clinic, State state) {

	/** Copies the lists. */
	public DayAssessment {
		reasons = List.copyOf(reasons);
		notices = List.copyOf(notices);
		marks = List.copyOf(marks);
		decisions = List.copyOf(decisions);
	}

	/**
	 * The day in the current stage, counting from 1.
	 * @return 0 without an open episode
	 */
	public int dayInStage() {
		Episode episode = this.state.episode();
		return (episode == null) ? 0 : (int) (this.day.toEpochDay() - episode.stageSince().toEpochDay()) + 1;
	}

	/**
	 * A change of the episode on a day.
	 *
	 * @param kind what happened
	 * @param fromStage stage before, 0 for ill, -1 for no episode
	 * @param toStage stage after, 0 for ill, -1 for no episode
	 */
	public record Decision(Kind kind, int fromStage, int toStage) {

		/** What can happen to an episode. */
		public enum Kind {

			/** It opened. */
			OPENED,
			/** A gate opened upwards. */
			GATE,
			/** A gate closed the episode. */
			CLOSED,
			/** Symptoms of illness came back. */
			RELAPSE,
			/** One stage back by symptoms. */
			BACK_BY_SYMPTOMS,
			/** One stage back by numbers. */
			BACK_BY_NUMBERS,
			/** A clinician's clearance resumed it in ill. */
			RESUMED,
			/** A physician's word that it was no illness closed it. */
			NO_ILLNESS,
			/** A coach withdrew it. */
			WITHDRAWN,
			/** A longer path was taken. */
			LONGER_PATH,
			/** A coach's working level was set. */
			WORKING_LEVEL

		}

	}

}
