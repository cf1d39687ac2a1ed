package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.fallow.illness.core.Carry;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.HoldState;
import org.fallow.illness.core.Silence;
import org.fallow.illness.core.State;
import org.fallow.rules.Clearance;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What was stricter in entries before they were made one than in what their facts decide
 * together: holds, open episodes, a clinician's ceiling and, last, the day's clearance.
 *
 * @param holds causes of holds that stood in one and do not stand in the union
 * @param episodes states whose episodes are stricter than the union's
 * @param clinician the ceiling of a clinician in force in one; absent if the union's is
 * no looser
 * @param clinicianUntil its last day; absent without one
 * @param slip day of a slip of a red flag that nobody asked about in one; absent if the
 * union waits as long
 * @param owed whether one owed a report that the union does not
 */
record StricterState(List<String> holds, List<State> episodes, @Nullable Clearance clinician,
		@Nullable LocalDate clinicianUntil, @Nullable LocalDate slip, boolean owed) {

	/** An open clearance of a clinician has no last day: as good as for ever. */
	private static final int OPEN_YEARS = 100;

	/** What was stricter in any of the parts, all as decided on the same day. */
	static StricterState of(List<DayAssessment> parts, DayAssessment union) {
		List<String> holds = new ArrayList<>();
		List<State> episodes = new ArrayList<>();
		Clearance clinician = null;
		LocalDate until = null;
		List<HoldKey> standing = standing(union);
		for (DayAssessment part : parts) {
			standing(part).stream().filter((hold) -> !standing.contains(hold)).map(HoldKey::cause).forEach(holds::add);
			Episode episode = part.state().episode();
			if (episode != null && Carry.isStricter(episode, union.state().episode())) {
				episodes.add(part.state());
			}
			Clearance ceiling = part.seen().clinicianCeiling();
			if (ceiling != null && isStricter(ceiling, union.seen().clinicianCeiling())
					&& isStricter(ceiling, clinician)) {
				clinician = ceiling;
				LocalDate last = part.seen().clearedUntil();
				until = (last == null) ? part.day().plusYears(OPEN_YEARS) : last;
			}
		}
		return new StricterState(holds, episodes, clinician, until, slip(parts, union),
				!owes(union) && parts.stream().anyMatch(StricterState::owes));
	}

	/** In doubt it is carried over: mornings of the other entry end no wait. */
	private static @Nullable LocalDate slip(List<DayAssessment> parts, DayAssessment union) {
		LocalDate last = null;
		for (DayAssessment part : parts) {
			LocalDate unasked = part.seen().unasked();
			if (unasked != null && !waitsAsLong(union, part, unasked)) {
				last = (last != null && last.isAfter(unasked)) ? last : unasked;
			}
		}
		return last;
	}

	private static boolean waitsAsLong(DayAssessment union, DayAssessment part, LocalDate unasked) {
		return unasked.equals(union.seen().unasked()) && part.seen().asking() == union.seen().asking()
				&& Objects.equals(part.state().slipEntries(), union.state().slipEntries());
	}

	private static boolean owes(DayAssessment day) {
		Silence silence = day.state().silence();
		return silence != null && silence.owedSince() != null;
	}

	private static boolean isStricter(Clearance one, @Nullable Clearance other) {
		return one.compareTo((other == null) ? Clearance.FULL_TRAINING : other) < 0;
	}

	/**
	 * The strictest clearance of the parts that the union is looser than. That nothing
	 * was entered in one is no clearance where the other has an entry.
	 */
	static @Nullable Clearance ceiling(List<DayAssessment> parts, DayAssessment union) {
		Clearance strictest = null;
		for (DayAssessment part : parts) {
			Clearance decided = part.clearance();
			if (decided != Clearance.NOT_ASSESSED && isStricter(decided, union.clearance())
					&& isStricter(decided, strictest)) {
				strictest = decided;
			}
		}
		return strictest;
	}

	/**
	 * The ceiling by numbers: what a reading meant to the union's baseline on the day the
	 * entries part.
	 */
	static @Nullable Clearance ceilingByNumbers(DayAssessment union, DayAssessment own) {
		Clearance strictest = null;
		for (Message reason : union.reasons()) {
			String code = reason.code();
			boolean high = code.startsWith("reason.rhr-high") || code.startsWith("reason.rhr-very-high");
			boolean number = high || code.startsWith("reason.rhr") || code.equals("reason.sustained-rise")
					|| code.equals("reason.hrv-suppressed");
			Clearance said = high ? Clearance.REST : Clearance.EASY_ONLY;
			if (number && isStricter(said, own.clearance()) && isStricter(said, strictest)) {
				strictest = said;
			}
		}
		return strictest;
	}

	private static List<HoldKey> standing(DayAssessment day) {
		return day.state().holds().stream().filter((hold) -> !hold.resumed()).map(HoldKey::of).toList();
	}

	private record HoldKey(LocalDate day, String cause) {

		static HoldKey of(HoldState hold) {
			return new HoldKey(hold.day(), hold.cause());
		}

	}

}
