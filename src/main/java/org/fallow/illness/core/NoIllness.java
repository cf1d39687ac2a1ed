package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.SessionLog;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A physician's word that a red flag was no illness: from the next morning on it closes
 * an episode that so far holds nothing but red flags of the sort that can be none.
 */
final class NoIllness {

	private NoIllness() {
	}

	/** Whether the episode closes this morning. */
	static boolean ends(DayFold fold, Draft open) {
		IllnessEvent.Cleared said = said(fold);
		return said != null && fold.day.isAfter(said.day()) && against(fold, open, said) == null;
	}

	/** What to tell where it was said; null where it was not. */
	static @Nullable Message told(DayFold fold, Draft open) {
		IllnessEvent.Cleared said = said(fold);
		if (said == null) {
			return null;
		}
		String against = against(fold, open, said);
		return (against == null) ? Message.of("advised.no-illness", fold.day.plusDays(1))
				: Message.of("advised.no-illness-" + against);
	}

	/** The clearance in force, if it says so. */
	private static IllnessEvent.@Nullable Cleared said(DayFold fold) {
		IllnessEvent.Cleared cleared = Holds.inForce(fold.known.events(), fold.day);
		return (cleared != null && cleared.word().noIllness()) ? cleared : null;
	}

	private static @Nullable String against(DayFold fold, Draft open, IllnessEvent.Cleared said) {
		if (!fold.standing.isEmpty()) {
			return "hold";
		}
		for (HoldState hold : fold.holds) {
			if (isOf(hold, open, fold)) {
				if (!Holds.canBeNoIllness(hold)) {
					return "never";
				}
				LocalDate examined = said.word().examinedOn();
				if (examined == null || examined.isBefore(hold.day())) {
					return "not-examined";
				}
			}
		}
		return isIll(fold, open) ? "ill" : null;
	}

	/** Whether a hold was opened in the episode or stood on one of its days. */
	private static boolean isOf(HoldState hold, Draft open, DayFold fold) {
		boolean opened = !hold.recorded().on().isBefore(open.openedOn);
		List<IllnessEvent> events = fold.known.events();
		for (LocalDate day = open.openedOn; !opened && day.isBefore(fold.day); day = day.plusDays(1)) {
			opened = Holds.stands(hold, events, day);
		}
		return opened;
	}

	/**
	 * Whether the episode holds a report, or in any revision an illness symptom that is
	 * no red flag, fever or fever medicine. Loss of smell, and a yes after a session that
	 * symptoms came back, count here (the safer readings).
	 */
	private static boolean isIll(DayFold fold, Draft open) {
		for (IllnessEvent.Report report : fold.known.events(IllnessEvent.Report.class)) {
			if (!report.day().isBefore(open.firstOnset) || !report.recorded().on().isBefore(open.openedOn)) {
				return true;
			}
		}
		for (Morning morning : fold.known.mornings(open.firstOnset, fold.day.plusDays(1))) {
			for (MorningEntry entry : morning.revisions()) {
				Sickness sick = fold.sickness(entry);
				if (sick.aboveTheNeck() || sick.opens() || sick.smell() || sick.medicine()) {
					return true;
				}
			}
		}
		for (SessionLog session : fold.known.sessions(open.firstOnset, fold.day)) {
			if (session.after().contains(AfterSession.SYMPTOMS_RETURNED)) {
				return true;
			}
		}
		return false;
	}

}
