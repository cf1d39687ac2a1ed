package org.fallow.board.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.entry.IocConsensus;
import org.fallow.entry.Symptom;
import org.fallow.illness.EnteredAfterLink;
import org.fallow.illness.StageDecision;
import org.fallow.entry.Method;
import org.fallow.illness.StoredEvent;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.OwnFigure;
import org.fallow.illness.core.OwnFigureEnded;
import org.fallow.illness.core.Spoken;
import org.fallow.illness.view.Said;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What was decided about an athlete, by the rules or by people; shown for ever.
 *
 * @param day the day it is about
 * @param recorded when; absent where the rules decided with the morning
 * @param what what was decided
 * @param by who; absent where the rules decided
 * @param reason why, in people's words; absent where the rules decided or a red flag says
 * it
 * @param linkBy who had made a link to the account before it was told there; absent for
 * most
 */
public record DecisionRow(LocalDate day, @Nullable LocalDateTime recorded, Message what, @Nullable String by,
		@Nullable String reason, @Nullable String linkBy) {

	static List<DecisionRow> of(List<StageDecision> decisions, List<StoredEvent> events, ZoneId zone,
			Function<PersonId, String> names, EnteredAfterLink after) {
		List<DecisionRow> rows = new ArrayList<>();
		for (StageDecision stored : decisions) {
			Message what = Message.of("decided." + stored.decision().kind(), stored.decision().fromStage(),
					stored.decision().toStage());
			rows.add(new DecisionRow(stored.day(), null, what, null, null, null));
		}
		for (StoredEvent stored : events) {
			IllnessEvent event = stored.event();
			rows.add(new DecisionRow(event.day(), LocalDateTime.ofInstant(event.recorded().at(), zone),
					Said.of(what(event)), names.apply(stored.actor()), reason(event),
					after.by(TraceSubject.ILLNESS, event.recorded().at())));
		}
		rows.sort(Comparator.comparing(DecisionRow::day).reversed());
		return rows;
	}

	private static Message what(IllnessEvent event) {
		if (event instanceof IllnessEvent.Report report) {
			return reported(report);
		}
		if (event instanceof IllnessEvent.Hold hold) {
			return isRedFlag(hold) ? Message.of("decided.HOLD.red-flag", hold.reason()) : Message.of("decided.HOLD");
		}
		if (event instanceof IllnessEvent.Cleared cleared) {
			boolean told = cleared.word().by() == ClinicianWord.By.ATHLETE;
			String code = told ? "decided.TOLD" : cleared.word().noIllness() ? "decided.CLEARED.no-illness"
					: cleared.word().examined().isEmpty() ? "decided.CLEARED" : "decided.CLEARED.examined";
			return Message.of(code, cleared.ceiling().name());
		}
		if (event instanceof IllnessEvent.Stricter stricter) {
			return Message.of("decided.STRICTER", stricter.ceiling().name(), stricter.until());
		}
		if (event instanceof IllnessEvent.Lifted) {
			return Message.of("decided.LIFTED");
		}
		if (event instanceof IllnessEvent.SaidToday said) {
			return Message.of((said.able() && said.eating()) ? "decided.SAID_TODAY"
					: said.able() ? "decided.SAID_TODAY.able" : "decided.SAID_TODAY.eating");
		}
		if (event instanceof IllnessEvent.WorkingLevel) {
			return Message.of("decided.LEVEL_SET");
		}
		if (event instanceof IllnessEvent.Slip slip) {
			return Message.of("decided.SLIP", slip.tick().code());
		}
		if (event instanceof OwnFigure figure) {
			return (figure.method() == Method.OTHER)
					? Message.of("decided.OWN_FIGURE.other", figure.bpm(), figure.posture().name())
					: Message.of("decided.OWN_FIGURE", figure.bpm(), figure.method().name(), figure.posture().name());
		}
		if (event instanceof OwnFigureEnded ended) {
			return (ended.method() == Method.OTHER)
					? Message.of("decided.OWN_FIGURE_ENDED.other", ended.posture().name())
					: Message.of("decided.OWN_FIGURE_ENDED", ended.method().name(), ended.posture().name());
		}
		if (event instanceof IllnessEvent.SlipAccepted || event instanceof IllnessEvent.Asked) {
			return Message.of((event instanceof IllnessEvent.Asked) ? "decided.ASKED" : "decided.SLIP_ACCEPTED");
		}
		return Message.of((event instanceof IllnessEvent.Withdrawal) ? "decided.WITHDRAWAL" : "decided.SYMPTOMS_ONLY");
	}

	private static Message reported(IllnessEvent.Report report) {
		Integer worst = report.worst();
		if (worst == null) {
			return Message.of("decided.REPORT", report.kind().name());
		}
		return Message.of("decided.REPORT.worst", report.kind().name(), worst, IocConsensus.severity(worst).name());
	}

	/** Whether a hold came of a red flag, whose code stands for the reason. */
	private static boolean isRedFlag(IllnessEvent.Hold hold) {
		return Arrays.stream(Symptom.values()).map(Symptom::name).anyMatch(hold.reason()::equals);
	}

	private static String said(String reason, @Nullable Spoken word) {
		return (word == null) ? reason : reason + " – " + word.who();
	}

	private static @Nullable String reason(IllnessEvent event) {
		if (event instanceof IllnessEvent.Report report) {
			return report.note();
		}
		if (event instanceof IllnessEvent.Hold hold) {
			return isRedFlag(hold) ? null : hold.reason();
		}
		if (event instanceof IllnessEvent.Cleared cleared) {
			String note = (cleared.note() == null) ? "" : " – " + cleared.note();
			return cleared.who() + ", " + cleared.role() + note;
		}
		if (event instanceof IllnessEvent.Stricter stricter) {
			return said(stricter.reason(), stricter.word());
		}
		if (event instanceof IllnessEvent.Lifted lifted) {
			return said(lifted.reason(), lifted.word());
		}
		if (event instanceof IllnessEvent.SaidToday today) {
			return today.reason();
		}
		if (event instanceof IllnessEvent.Withdrawal withdrawal) {
			return withdrawal.reason();
		}
		if (event instanceof IllnessEvent.WorkingLevel level) {
			return level.reason() + " – " + level.who() + ", " + level.role() + ": " + level.word();
		}
		if (event instanceof IllnessEvent.SlipAccepted accepted) {
			return accepted.reason();
		}
		if (event instanceof OwnFigure figure) {
			return figure.who() + ", " + figure.role() + ((figure.note() == null) ? "" : " – " + figure.note());
		}
		if (event instanceof OwnFigureEnded ended) {
			return ended.reason();
		}
		if (event instanceof IllnessEvent.Asked asked) {
			return asked.words();
		}
		return (event instanceof IllnessEvent.SymptomsOnly only) ? only.reason() : null;
	}

}
