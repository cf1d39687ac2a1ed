package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.RhrFlag;
import org.fallow.baseline.Series;
import org.jspecify.annotations.Nullable;

/**
 * All that the fold carries from one day to the next, besides the facts themselves. It is
 * stored with each day's assessment, so that the fold can go on from any day.
 *
 * @param day the day it stands after
 * @param above since when it stands above the line; absent if it does not
 * @param deviations deviations of the last mornings that had one, oldest first
 * @param kept the latest morning with a deviation; absent before the first
 * @param tooFastOn the latest morning whose reading was too fast for anybody at rest,
 * without a baseline to hold it against; absent once a lower one came
 * @param marks marks of the last mornings, oldest first
 * @param restOn latest day whose clearance was Rest on its own account; absent if none
 * @param episode the open episode; absent if none
 * @param holds all holds so far, in the order recorded
 * @param out days that never enter a baseline
 * @param afterClose baselines held since the last close; absent once released
 * @param closedOn the day of the last close; absent before the first
 * @param withdrawnAt instant of the latest withdrawal: facts recorded up to it open
 * nothing again; absent if none
 * @param silence mornings without an entry, and what is to be told about them; absent in
 * what was stored before they were asked about
 * @param slipEntries mornings entered without a red flag since the last red-flag slip
 * that no coach was there for; absent before the first
 */
public record State(LocalDate day, @Nullable LocalDate above, List<PastDeviation> deviations, @Nullable Kept kept,
		@Nullable LocalDate tooFastOn, List<PastMark> marks, @Nullable LocalDate restOn, @Nullable Episode episode,
		List<HoldState> holds, List<DayRange> out, @Nullable Held afterClose, @Nullable LocalDate closedOn,
		@Nullable Instant withdrawnAt, @Nullable Silence silence, @Nullable Integer slipEntries) {

	private static final int LOOK_BACK_DAYS = 200;

	private static final int BEFORE_HELD_DAYS = 130;

	/** Copies the lists. */
	public State {
		deviations = List.copyOf(deviations);
		marks = List.copyOf(marks);
		holds = List.copyOf(holds);
		out = List.copyOf(out);
	}

	/**
	 * The state of an athlete of whom nothing is known yet.
	 * @param day the day before the first one
	 * @return an empty state
	 */
	public static State before(LocalDate day) {
		return new State(day.minusDays(1), null, List.of(), null, null, List.of(), null, null, List.of(), List.of(),
				null, null, null, Silence.NONE, null);
	}

	/**
	 * The first day whose mornings and sessions the fold may still look at when it goes
	 * on from here: those in every window, and the baseline of an episode that is held.
	 * @return the day, inclusive
	 */
	public LocalDate factsFrom() {
		LocalDate oldest = this.day.minusDays(LOOK_BACK_DAYS);
		if (this.episode != null) {
			oldest = earlier(oldest, this.episode.firstOnset().minusDays(BEFORE_HELD_DAYS));
		}
		return (this.afterClose == null) ? oldest : earlier(oldest, this.afterClose.asOf().minusDays(BEFORE_HELD_DAYS));
	}

	private static LocalDate earlier(LocalDate one, LocalDate other) {
		return one.isBefore(other) ? one : other;
	}

	/**
	 * The same, going on from what an earlier rule text left: a signal that stood is a
	 * stand, an open episode goes on as it was, and what kept days out or at rest does.
	 * @param standing since when a signal stood; absent if none did
	 * @param open the episode; absent if none was open
	 * @param alsoOut days that never enter a baseline
	 * @param rest latest day of a Rest on its own account; absent if none
	 * @return a state no looser than this one but for the stage of an open episode
	 */
	public State goingOn(@Nullable LocalDate standing, @Nullable Episode open, List<DayRange> alsoOut,
			@Nullable LocalDate rest) {
		List<DayRange> all = new ArrayList<>(this.out);
		alsoOut.stream().filter((range) -> !all.contains(range)).forEach(all::add);
		return new State(this.day, (this.above == null) ? standing : this.above, this.deviations, this.kept,
				this.tooFastOn, this.marks, (this.restOn == null) ? rest : this.restOn,
				(open == null) ? this.episode : open, this.holds, all, this.afterClose, this.closedOn, this.withdrawnAt,
				this.silence, this.slipEntries);
	}

	/** The same with other baselines held since the last close. */
	State holding(@Nullable Held held) {
		return new State(this.day, this.above, this.deviations, this.kept, this.tooFastOn, this.marks, this.restOn,
				this.episode, this.holds, this.out, held, this.closedOn, this.withdrawnAt, this.silence,
				this.slipEntries);
	}

	/**
	 * A past morning's deviation.
	 *
	 * @param day the morning
	 * @param dev deviation as decided on the day, bpm; as known now where the morning was
	 * entered or corrected since
	 * @param series its series
	 * @param late whether the reading was entered after its day: such a one may help to
	 * start, and never comes between
	 */
	public record PastDeviation(LocalDate day, double dev, Series series, boolean late) {
	}

	/**
	 * A past morning's mark.
	 *
	 * @param day the morning
	 * @param mark what it was
	 */
	public record PastMark(LocalDate day, Mark mark) {
	}

	/**
	 * The latest morning with a deviation: its flag is kept when readings are left out.
	 *
	 * @param day the morning
	 * @param flag its flag
	 * @param lowAgain whether it was the second low morning
	 * @param series its series
	 */
	public record Kept(LocalDate day, RhrFlag flag, boolean lowAgain, Series series) {
	}

}
