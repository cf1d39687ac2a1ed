package org.fallow.illness.core;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * What a day's decision used of what people said besides illness: complaints, and what is
 * still to be told about mornings without an entry.
 *
 * @param complaint a complaint that is moderate or severe, or comes with feeling unwell
 * @param severe a severe complaint
 * @param limb whether a limb's pain is what that complaint is
 * @param ownWords a complaint in the athlete's own words on a morning that could be an
 * illness: in an open episode, above the line or with a high resting heart rate
 * @param askedFrom first of the silent mornings that are asked about; absent when nothing
 * is asked
 * @param owedSince the day since which more is owed about an illness meanwhile; absent
 * when nothing is owed
 */
public record Besides(boolean complaint, boolean severe, boolean limb, boolean ownWords, @Nullable LocalDate askedFrom,
		@Nullable LocalDate owedSince) {

	static Besides of(DayFold fold, Sickness sick) {
		Complaints complaints = sick.complaints();
		return new Besides(complaints.acts(), complaints.severe(), complaints.limb(),
				complaints.inOwnWords() && isInDoubt(fold), fold.silence.askedFrom(), fold.silence.owedSince());
	}

	/** Whether the morning could be one of an illness, whatever the athlete says. */
	private static boolean isInDoubt(DayFold fold) {
		RhrEvidence rhr = fold.rhr;
		boolean high = (rhr.flag() != null && rhr.flag().isHigh())
				|| (rhr.keptFlag() != null && rhr.keptFlag().isHigh());
		return fold.episode != null || high || rhr.above() != null;
	}

	/** A good morning is none as long as it is in doubt what it was. */
	Mark mark(Mark marked) {
		return (marked == Mark.GOOD && (this.ownWords || this.askedFrom != null)) ? Mark.NEITHER : marked;
	}

}
