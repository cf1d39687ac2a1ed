package org.fallow.illness.core;

import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.PathName;
import org.jspecify.annotations.Nullable;

/**
 * Keeps an episode from being looser than one carried over when two entries of a person
 * were made one. It is asked last, so that what the day counted is not counted twice, and
 * no gate opens that day (the safer reading). It goes on under the rule set in force, for
 * the entry it comes from may have been of another team.
 */
public final class Carry {

	private Carry() {
	}

	/**
	 * Whether an episode is stricter than another: any than none, the earlier stage, the
	 * longer path, the fewer days counted.
	 * @param one the one
	 * @param other the other; absent for no episode
	 * @return false where they are equally strict
	 */
	public static boolean isStricter(Episode one, @Nullable Episode other) {
		if (other == null) {
			return true;
		}
		if (one.stage() != other.stage()) {
			return one.stage() < other.stage();
		}
		int path = one.path().compareTo(other.path());
		return (path != 0) ? path > 0 : one.counted() < other.counted();
	}

	static void apply(DayFold fold) {
		for (IllnessEvent.Carried carried : fold.known.fresh(IllnessEvent.Carried.class)) {
			Draft open = fold.episode;
			Episode own = (open == null) ? null : open.toEpisode();
			if (own == null) {
				fold.decisions.add(new Decision(Decision.Kind.OPENED, -1, carried.episode().stage()));
			}
			if (isStricter(carried.episode(), own)) {
				Draft draft = stricter(carried.episode().under(fold.ruleHash), own);
				draft.stage = Math.min(draft.stage, draft.path(fold.rules).stages().size());
				fold.episode = draft;
			}
			else if (open != null) {
				keepLonger(open, carried.episode());
			}
		}
	}

	/** Whether anything was carried over on the day. */
	static boolean isOf(DayFold fold) {
		return !fold.known.fresh(IllnessEvent.Carried.class).isEmpty();
	}

	private static Draft stricter(Episode carried, @Nullable Episode own) {
		Draft draft = new Draft(carried);
		if (own != null) {
			keepLonger(draft, own);
			draft.symptomsOnly &= own.symptomsOnly();
			draft.steppedBySymptoms = own.steppedBySymptoms();
		}
		return draft;
	}

	private static void keepLonger(Draft draft, Episode other) {
		draft.floor = longer(longer(draft.floor, other.floor()), other.path());
		draft.path = longer(draft.path, other.path());
		draft.latestOnset = Draft.later(draft.latestOnset, other.latestOnset());
		draft.badRun = Math.max(draft.badRun, other.badRun());
	}

	private static PathName longer(PathName one, PathName other) {
		return (one.compareTo(other) >= 0) ? one : other;
	}

}
