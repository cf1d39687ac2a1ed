package org.fallow.illness.core;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

import org.fallow.baseline.RhrFlag;
import org.fallow.entry.AfterSession;
import org.fallow.entry.ContextTag;
import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.fallow.entry.SymptomClass;
import org.fallow.entry.Vaccination;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Whether a tick may be told to be a slip: every bound of the decision text, checked when
 * it is recorded; the fold trusts it from then on.
 */
public final class SlipCheck {

	private SlipCheck() {
	}

	/**
	 * Why a tick is no slip, and what stands.
	 * @param slip the tick and all it is checked by
	 * @return one sentence; null if it may be a slip
	 */
	public static @Nullable Message refusal(SlipCase slip) {
		Symptom symptom = slip.tick().symptom();
		if (symptom != null && symptom.isInOwnWords()) {
			return Message.of("slip.words");
		}
		if (!slip.day().equals(slip.now().on()) || slip.carrying().isEmpty()) {
			return Message.of(slip.day().equals(slip.now().on()) ? "slip.not-ticked" : "slip.another-day");
		}
		return slip.tick().isRedFlag() ? ofARedFlag(slip) : ofAnother(slip, symptom);
	}

	/**
	 * When a tick of a day became known first: the server's record of the first revision
	 * that carried it.
	 * @param timeline what is known
	 * @param tick what was ticked
	 * @param day the day of the entry or session
	 * @return absent if nothing of the day carries it
	 */
	public static @Nullable Recorded firstRecorded(Timeline timeline, Tick tick, LocalDate day) {
		return timeline.facts()
			.stream()
			.filter((fact) -> fact.day().equals(day) && tick.isOf(fact))
			.map(Fact::recorded)
			.findFirst()
			.orElse(null);
	}

	/**
	 * Under which terms a slip that is not refused works.
	 * @param slip the tick and all it is checked by
	 * @return the terms
	 */
	public static SlipTerms terms(SlipCase slip) {
		if (slip.tick().isRedFlag()) {
			return slip.coached() ? SlipTerms.UNTIL_ASKED : SlipTerms.UNTIL_ENTRIES;
		}
		return slip.wasInEpisode() ? SlipTerms.IF_ACCEPTED : SlipTerms.AT_ONCE;
	}

	private static @Nullable Message ofAnother(SlipCase slip, @Nullable Symptom symptom) {
		if (symptom == null) {
			return Message.of("slip.session");
		}
		boolean fever = slip.carrying()
			.stream()
			.flatMap((fact) -> ((MorningEntry) fact).symptoms().stream())
			.anyMatch((felt) -> felt.symptom() == symptom && felt.symptomClass() == SymptomClass.FEVER);
		if (fever) {
			return Message.of("slip.fever");
		}
		if (symptom == Symptom.WHEEZE && isVaccinated(slip)) {
			return Message.of("slip.red-flag.vaccination", slip.numbers().afterDays());
		}
		if (isAgain(slip, false, slip.numbers().otherEveryDays())) {
			return Message.of("slip.again", slip.numbers().otherEveryDays());
		}
		return (slip.wasInEpisode() && !slip.coached()) ? Message.of("slip.no-coach") : null;
	}

	private static @Nullable Message ofARedFlag(SlipCase slip) {
		Duration since = Duration.between(slip.carrying().get(0).recorded().at(), slip.now().at());
		int minutes = slip.numbers().redFlagMinutes();
		if (since.compareTo(Duration.ofMinutes(minutes)) > 0) {
			return Message.of("slip.red-flag.late", minutes);
		}
		LocalDate adult = slip.timeline().adultFrom();
		if (adult == null || slip.now().on().isBefore(adult)) {
			return Message.of("slip.red-flag.minor");
		}
		if (hasMore(slip)) {
			return Message.of("slip.red-flag.more");
		}
		if (isAgain(slip, true, slip.numbers().redFlagEveryDays())) {
			return Message.of("slip.red-flag.again", slip.numbers().redFlagEveryDays());
		}
		return ofARedFlagAsDecided(slip);
	}

	private static @Nullable Message ofARedFlagAsDecided(SlipCase slip) {
		DayAssessment without = slip.without();
		boolean open = without != null && (without.holding() || without.during() != null);
		if (slip.wasInEpisode() || open) {
			return Message.of("slip.red-flag.episode");
		}
		if (without != null && without.state()
			.out()
			.stream()
			.anyMatch((gone) -> slip.isWithin(gone.to(), slip.numbers().afterDays()))) {
			return Message.of("slip.red-flag.closed", slip.numbers().afterDays());
		}
		if (isVaccinated(slip)) {
			return Message.of("slip.red-flag.vaccination", slip.numbers().afterDays());
		}
		return (without != null && isAboveTheLine(without.rhr())) ? Message.of("slip.red-flag.rhr") : null;
	}

	/**
	 * The one place that asks whether resting heart rate speaks of illness: above the
	 * line, started or standing, or High, measured or kept.
	 */
	private static boolean isAboveTheLine(RhrEvidence rhr) {
		RhrFlag flag = rhr.flag();
		RhrFlag kept = rhr.keptFlag();
		return rhr.above() != null || (flag != null && flag.isHigh()) || (kept != null && kept.isHigh());
	}

	private static boolean isAgain(SlipCase slip, boolean redFlag, int days) {
		return slip.told(redFlag).stream().anyMatch((told) -> slip.isWithin(told.day(), days));
	}

	/**
	 * Another illness symptom, fever, fever medicine or report of today, in any revision;
	 * on an after-session list of today any other tick (the safer reading).
	 */
	private static boolean hasMore(SlipCase slip) {
		Known known = new Known(slip.timeline().adultFrom(), slip.book());
		slip.timeline().facts().forEach(known::add);
		return slip.timeline().facts().stream().anyMatch((fact) -> {
			boolean today = fact.day().equals(slip.now().on()) || fact.recorded().on().equals(slip.now().on());
			return today && isMore(slip.tick().isOf(fact) ? slip.tick().takenOff(fact) : fact, known, slip);
		});
	}

	private static boolean isMore(Fact fact, Known known, SlipCase slip) {
		if (fact instanceof MorningEntry entry) {
			Sickness sick = known.sickness(entry, slip.rules());
			return sick.isSick() || sick.medicine();
		}
		if (fact instanceof SessionLog log) {
			List<AfterSession> noticed = log.after();
			return noticed.stream().anyMatch(AfterSession::isRedFlag)
					|| (!noticed.isEmpty() && Objects.equals(log.key(), slip.tick().session()));
		}
		return fact instanceof IllnessEvent.Report;
	}

	private static boolean isVaccinated(SlipCase slip) {
		return slip.timeline()
			.facts()
			.stream()
			.anyMatch((fact) -> (fact instanceof Vaccination
					|| (fact instanceof MorningEntry entry && entry.tags().contains(ContextTag.VACCINATION)))
					&& slip.isWithin(fact.day(), slip.numbers().afterDays()));
	}

}
