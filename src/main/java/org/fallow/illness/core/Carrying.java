package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.fallow.baseline.RhrFlag;
import org.fallow.illness.core.State.Kept;
import org.fallow.illness.core.State.PastDeviation;
import org.fallow.illness.core.State.PastMark;
import org.jspecify.annotations.Nullable;

/**
 * What a decided day carries over to the next one.
 */
final class Carrying {

	private static final int NEAR_DAYS = 2;

	private static final int OUT_DAYS = 200;

	private Carrying() {
	}

	static State over(DayFold fold, Verdict verdict) {
		List<PastMark> marks = new ArrayList<>();
		for (PastMark past : fold.marks) {
			if (fold.day.toEpochDay() - past.day().toEpochDay() < NEAR_DAYS) {
				marks.add(past);
			}
		}
		marks.add(new PastMark(fold.day, fold.mark));
		Draft open = fold.episode;
		return new State(fold.day, fold.rhr.above(), deviations(fold), kept(fold), tooFastOn(fold), marks,
				verdict.ownRest() ? fold.day : fold.before.restOn(), (open == null) ? null : open.toEpisode(),
				fold.holds, since(fold.out, fold.day), fold.afterClose, fold.closedOn, fold.withdrawnAt, fold.silence,
				Slips.entries(fold));
	}

	/** As many as the rules look back over for the reading before. */
	private static List<PastDeviation> deviations(DayFold fold) {
		int days = fold.rules.line().apartDays();
		List<PastDeviation> deviations = new ArrayList<>();
		for (PastDeviation past : fold.rhr.before()) {
			if (fold.day.toEpochDay() - past.day().toEpochDay() < days) {
				deviations.add(past);
			}
		}
		Double dev = fold.rhr.dev();
		if (dev != null) {
			deviations.add(new PastDeviation(fold.day, dev, Objects.requireNonNull(fold.rhr.series()), false));
		}
		return deviations;
	}

	private static List<DayRange> since(List<DayRange> out, LocalDate day) {
		return out.isEmpty() ? List.of()
				: out.stream().filter((range) -> range.to().isAfter(day.minusDays(OUT_DAYS))).toList();
	}

	private static @Nullable Kept kept(DayFold fold) {
		RhrFlag flag = fold.rhr.flag();
		if (flag != null && fold.rhr.dev() != null) {
			return new Kept(fold.day, flag, fold.rhr.lowAgain(), Objects.requireNonNull(fold.rhr.series()));
		}
		boolean dropped = fold.episode != null && fold.episode.symptomsOnly
				&& !fold.known.fresh(IllnessEvent.SymptomsOnly.class).isEmpty();
		return dropped ? null : fold.before.kept();
	}

	/** Too fast without a baseline: until a lower reading, whatever its series. */
	private static @Nullable LocalDate tooFastOn(DayFold fold) {
		if (fold.rhr.reading() == null) {
			return fold.before.tooFastOn();
		}
		return (fold.rhr.dev() == null && fold.rhr.flag() == RhrFlag.VERY_HIGH) ? fold.day : null;
	}

}
