package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.RuleBook;
import org.jspecify.annotations.Nullable;

/**
 * An episode's days that matter to people.
 *
 * @param opened the day it opened
 * @param firstStage the day Stage 1 first began; absent if it did not yet
 * @param fullTraining the day the watched full training began, the last time it did;
 * absent if it did not yet
 * @param closed the day it closed or was withdrawn; absent if it is open
 * @param last the last day it was seen open, or the day it ended
 */
public record Lived(LocalDate opened, @Nullable LocalDate firstStage, @Nullable LocalDate fullTraining,
		@Nullable LocalDate closed, LocalDate last) {

	/** The episodes of some days that were open on or after a day, in order. */
	static List<Lived> all(List<DayAssessment> days, RuleBook book, LocalDate from) {
		List<Lived> all = new ArrayList<>();
		Lived open = null;
		for (DayAssessment day : days) {
			for (Decision decision : day.decisions()) {
				if (decision.kind() == Decision.Kind.OPENED) {
					open = new Lived(day.day(), null, null, null, day.day());
				}
				else if (open != null) {
					open = open.after(day, decision, book);
				}
				if (open != null && open.closed() != null) {
					all.add(open);
					open = null;
				}
			}
			open = (open == null) ? null : open.seen(day.day());
		}
		if (open != null) {
			all.add(open);
		}
		return all.stream().filter((one) -> !one.last().isBefore(from)).toList();
	}

	private Lived after(DayAssessment day, Decision decision, RuleBook book) {
		return switch (decision.kind()) {
			case CLOSED, NO_ILLNESS, WITHDRAWN ->
				new Lived(this.opened, this.firstStage, this.fullTraining, day.day(), day.day());
			case GATE -> through(day, decision.toStage(), book);
			default -> this;
		};
	}

	private Lived through(DayAssessment day, int stage, RuleBook book) {
		Episode episode = day.state().episode();
		boolean last = episode != null
				&& stage == book.ofHash(episode.ruleHash()).rules().path(episode.path()).stages().size();
		LocalDate first = (stage == 1 && this.firstStage == null) ? day.day() : this.firstStage;
		return new Lived(this.opened, first, last ? day.day() : this.fullTraining, null, day.day());
	}

	private Lived seen(LocalDate day) {
		return new Lived(this.opened, this.firstStage, this.fullTraining, this.closed, day);
	}

	boolean overlaps(Lived other) {
		return !this.opened.isAfter(other.last) && !other.opened.isAfter(this.last);
	}

	/** The same but for the last day seen. */
	boolean isAs(Lived other) {
		return seen(this.opened).equals(other.seen(this.opened));
	}

}
