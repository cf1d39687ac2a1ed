package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.fallow.entry.Fact;
import org.fallow.entry.Recorded;
import org.fallow.entry.Recording;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.SlipCase;
import org.fallow.illness.core.SlipCheck;
import org.fallow.illness.core.SlipTerms;
import org.fallow.illness.core.Tick;
import org.fallow.illness.core.TicksOfADay;
import org.fallow.illness.core.Timeline;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;
import org.fallow.wording.Message;

import org.springframework.stereotype.Component;

/**
 * Gathers what a slip is checked by. It asks the fold itself how the day stood before the
 * tick and how it would stand without it, so that there is one rule only.
 */
@Component
class SlipCases {

	private final Replays replays;

	private final RuleSets ruleSets;

	private final Squad squad;

	private final Recording recording;

	SlipCases(Replays replays, RuleSets ruleSets, Squad squad, Recording recording) {
		this.replays = replays;
		this.ruleSets = ruleSets;
		this.squad = squad;
		this.recording = recording;
	}

	SlipCase of(Athlete athlete, LocalDate day, Tick tick, Recorded now) {
		return of(athlete, day, tick, now, this.replays.lately(athlete, now.on()));
	}

	private SlipCase of(Athlete athlete, LocalDate day, Tick tick, Recorded now, Timeline known) {
		Recorded first = SlipCheck.firstRecorded(known, tick, now.on());
		DayAssessment before = (first == null) ? null : this.replays.changed(athlete, now.on(),
				(facts) -> facts.stream().filter((fact) -> fact.recorded().compareTo(first) < 0).toList());
		DayAssessment without = this.replays.changed(athlete, now.on(), (facts) -> {
			List<Fact> all = new ArrayList<>(facts);
			all.add(new IllnessEvent.Slip(now.on(), now, tick, SlipTerms.AT_ONCE));
			return all;
		});
		RuleBook book = this.ruleSets.bookOf(athlete.teamId());
		return new SlipCase(tick, day, now, known, before, without, book, this.squad.isFullyCoached(athlete.id()));
	}

	/** Everything ticked today, red flags first. */
	List<Ticked> ticked(Athlete athlete) {
		LocalDate today = this.recording.today(athlete);
		Recorded now = new Recorded(this.recording.now(), today);
		Timeline known = this.replays.lately(athlete, today);
		List<Ticked> ticked = new ArrayList<>();
		for (Tick tick : TicksOfADay.of(known, today)) {
			ticked.add(ticked(athlete, tick, now, known));
		}
		for (String code : TicksOfADay.reported(known, today)) {
			ticked.add(new Ticked(code, today, null, true, false, false, Message.of("slip.red-flag.report")));
		}
		ticked.sort(Comparator.comparing((Ticked one) -> !one.redFlag()));
		return List.copyOf(ticked);
	}

	private Ticked ticked(Athlete athlete, Tick tick, Recorded now, Timeline known) {
		IllnessEvent.Slip slip = TicksOfADay.slip(known, tick, now.on());
		boolean waits = slip != null && TicksOfADay.isWaiting(known, slip);
		LocalDate day = TicksOfADay.dayOf(known, tick, now.on());
		Message refusal = (slip != null) ? null : SlipCheck.refusal(of(athlete, day, tick, now, known));
		return new Ticked(tick.code(), day, tick, tick.isRedFlag(), slip != null, waits, refusal);
	}

	boolean isWaiting(Athlete athlete, LocalDate today) {
		return TicksOfADay.isAnyWaiting(this.replays.lately(athlete, today), today);
	}

	/**
	 * Whether a red flag was told to be a slip and a coach's question is still missing.
	 */
	boolean isUnasked(Athlete athlete, LocalDate today) {
		DayAssessment day = this.replays.changed(athlete, today, (facts) -> facts);
		return day != null && day.seen().unasked() != null;
	}

}
