package org.fallow.illness;

import java.time.LocalDate;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrFlag;
import org.fallow.illness.core.Mark;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A day as it was decided, in short: what boards, charts and time lines show. All
 * evidence of the day is {@link Assessments#day}.
 *
 * @param athlete whose
 * @param day the day
 * @param clearance what the athlete may do
 * @param reasons why, strictest first
 * @param notices what people should be told besides
 * @param holding whether a clinician hold stands
 * @param stage 0 while ill, else the stage's number; absent without an episode and under
 * a hold
 * @param dayInStage counting from 1; absent likewise
 * @param path the return path; absent without an episode
 * @param mark what the morning was for the return
 * @param rhrBpm the day's usable reading, bpm; absent if none
 * @param rhrReadings eligible readings of the baseline
 * @param rhrBaseline median, bpm; absent without a baseline
 * @param rhrSpread bpm; absent without a baseline
 * @param rhrDeviation bpm; absent without reading or baseline
 * @param rhrLine L, bpm above the baseline; absent without a baseline
 * @param rhrFlag absent without reading or baseline, unless the reading is too fast for
 * anybody at rest
 * @param aboveTheLine whether it stands above the line
 * @param hrvReadings eligible readings of the baseline
 * @param hrvMean baseline mean of ln RMSSD; absent without a baseline
 * @param hrvSd baseline SD of ln RMSSD; absent without a baseline
 * @param hrvRecent mean ln RMSSD of the last mornings; absent if there are too few
 * @param hrvFlag absent if it cannot be told
 * @param nextGate stage after the next gate, one more than there are stages for the
 * close; absent without an episode
 * @param nextGateEarliest earliest day it could open; absent where no good morning alone
 * can open it
 * @param ruleHash the rule set it was decided under
 */
public record AssessedDay(PersonId athlete, LocalDate day, Clearance clearance, List<Message> reasons,
		List<Message> notices, boolean holding, @Nullable Integer stage, @Nullable Integer dayInStage,
		@Nullable PathName path, Mark mark, @Nullable Double rhrBpm, int rhrReadings, @Nullable Double rhrBaseline,
		@Nullable Double rhrSpread, @Nullable Double rhrDeviation, @Nullable Double rhrLine, @Nullable RhrFlag rhrFlag,
		boolean aboveTheLine, int hrvReadings, @Nullable Double hrvMean, @Nullable Double hrvSd,
		@Nullable Double hrvRecent, @Nullable HrvFlag hrvFlag, @Nullable Integer nextGate,
		@Nullable LocalDate nextGateEarliest, String ruleHash) {

	/** Copies the lists. */
	public AssessedDay {
		reasons = List.copyOf(reasons);
		notices = List.copyOf(notices);
	}

	/**
	 * Whether an episode is open.
	 * @return true in ill, in every stage and under a hold
	 */
	public boolean inEpisode() {
		return this.path != null;
	}

}
