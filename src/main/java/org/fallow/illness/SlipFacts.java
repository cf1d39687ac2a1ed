package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Function;

import org.fallow.access.PersonId;
import org.fallow.entry.HistoryTime;
import org.fallow.entry.Recorded;
import org.fallow.entry.Saved;
import org.fallow.entry.SmallFacts;
import org.fallow.entry.Submission;
import org.fallow.entry.Words;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.SlipCase;
import org.fallow.illness.core.SlipCheck;
import org.fallow.illness.core.Tick;
import org.fallow.illness.core.TicksOfADay;
import org.fallow.team.Athlete;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Ticks that were slips of the finger, told by the athlete alone and checked before they
 * are stored, and what coaches say to them. All of it is only ever added.
 */
@Service
@Transactional
public class SlipFacts {

	private final SmallFacts facts;

	private final SlipCases cases;

	private final Squad squad;

	SlipFacts(SmallFacts facts, SlipCases cases, Squad squad) {
		this.facts = facts;
		this.cases = cases;
		this.squad = squad;
	}

	/**
	 * Tells that a tick of today was a slip. Told once more, it is stored once.
	 * @param id whose tick
	 * @param day the day whose entry or session it was
	 * @param tick what was ticked
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused with one sentence: why, and what stands
	 */
	@OfAthlete
	public Saved slip(PersonId id, LocalDate day, Tick tick, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(EventRows.TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		if (!submission.actor().equals(id)) {
			return refused(Message.of("slip.own"));
		}
		SlipCase slip = this.cases.of(athlete, day, tick, recorded(athlete, day, submission));
		if (TicksOfADay.slip(slip.timeline(), tick, slip.now().on()) != null) {
			return new Saved.Stored(submission.requestId().toString(), 1, true);
		}
		Message refusal = SlipCheck.refusal(slip);
		if (refusal != null) {
			return refused(refusal);
		}
		return add(athlete, new IllnessEvent.Slip(day, slip.now(), tick, SlipCheck.terms(slip)), submission);
	}

	private static Saved refused(Message why) {
		return new Saved.Refused(List.of(new Problem("", why)));
	}

	/**
	 * Accepts the slip that an athlete in an episode told today.
	 * @param id whose
	 * @param reason why
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused where none waits today
	 */
	@ByFullCoach
	public Saved accept(PersonId id, String reason, Submission submission) {
		return byCoach(id, reason, submission, "slip.accept.none", this.cases::isWaiting,
				(recorded) -> new IllnessEvent.SlipAccepted(recorded.on(), recorded, reason));
	}

	/**
	 * Notes that a coach has asked about a red flag told to be a slip.
	 * @param id whose
	 * @param words what the athlete said
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused where nothing is to be asked
	 */
	@ByFullCoach
	public Saved asked(PersonId id, String words, Submission submission) {
		return byCoach(id, words, submission, "slip.asked.none", this.cases::isUnasked,
				(recorded) -> new IllnessEvent.Asked(recorded.on(), recorded, words));
	}

	private Saved byCoach(PersonId id, String words, Submission submission, String none,
			BiPredicate<Athlete, LocalDate> possible, Function<Recorded, IllnessEvent> event) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(EventRows.TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = new ArrayList<>();
		Words.require(problems, "reason", words);
		LocalDate today = this.facts.today(athlete);
		if (submission.actor().equals(id)) {
			problems.add(Problem.of("reason", "slip.own-coach"));
		}
		else if (!possible.test(athlete, today)) {
			problems.add(Problem.of("reason", none));
		}
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		return add(athlete, event.apply(recorded(athlete, today, submission)), submission);
	}

	private Recorded recorded(Athlete athlete, LocalDate day, Submission submission) {
		return this.facts.recorded(athlete, day, null, submission, HistoryTime.EVENT);
	}

	private Saved add(Athlete athlete, IllnessEvent event, Submission submission) {
		return this.facts.add(EventRows.TABLE, athlete, null, event, submission, EventRows.COLUMNS,
				EventRows.values(event));
	}

	/**
	 * What was ticked today, red flags first, and what of it may be told to be a slip.
	 * @param id whose
	 * @return in the order of the lists
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<Ticked> today(PersonId id) {
		return this.cases.ticked(this.squad.athlete(id));
	}

}
