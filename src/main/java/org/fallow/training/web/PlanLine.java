package org.fallow.training.web;

import java.util.List;

import org.fallow.training.Ceilings;
import org.fallow.training.core.HeartRateCeiling;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Version;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A coming session of an athlete as pages show it.
 *
 * @param session as programmed
 * @param version what becomes of it
 * @param programmed the programmed parts in one line
 * @param instead what the athlete does, in one line; absent for nothing
 * @param minutes how long the athlete runs
 * @param reasons why
 * @param effortCeiling greatest session RPE; absent where as programmed
 * @param ceilingBpm heart rate to stay below, whole bpm, rounded down; absent where none
 * holds
 * @param estimated whether that rests on an estimated maximum
 * @param sum small sums that matter for it
 */
public record PlanLine(PlannedSession session, Version version, String programmed, @Nullable String instead,
		int minutes, List<Message> reasons, @Nullable Double effortCeiling, @Nullable Integer ceilingBpm,
		boolean estimated, boolean sum) {

	/**
	 * From so many minutes on eating and drinking are worth a word (common practice, no
	 * source).
	 */
	private static final int FUEL_MINUTES = 90;

	static PlanLine of(ModifiedSession modified, Ceilings ceilings) {
		HeartRateCeiling ceiling = ceilings.of(modified.heartRateShare());
		return new PlanLine(modified.programmed(), modified.version(),
				String.valueOf(PartView.line(modified.programmed())), PartView.line(modified.instead()),
				modified.minutes(), modified.reasons(), modified.effortCeiling(),
				(ceiling == null) ? null : Integer.valueOf((int) Math.floor(ceiling.bpm())),
				ceiling != null && ceiling.estimated(), modified.minutes() > FUEL_MINUTES);
	}

}
