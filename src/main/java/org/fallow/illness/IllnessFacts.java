package org.fallow.illness;

import org.fallow.team.OfAthlete;
import org.fallow.team.ByFullCoach;
import org.fallow.team.ByCoach;
import java.time.LocalDate;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Days;
import org.fallow.entry.HistoryTime;
import org.fallow.entry.Recorded;
import org.fallow.entry.Saved;
import org.fallow.entry.SmallFacts;
import org.fallow.entry.Source;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.entry.Words;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.rules.Clearance;
import org.fallow.team.Athlete;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What people say and decide about an illness, each an event that is only ever added. An
 * athlete may report; all else is for coaches, and what can loosen a clearance not for a
 * deputy.
 */
@Service
@Transactional
public class IllnessFacts {

	private final SmallFacts facts;

	private final EventRows rows;

	private final WithdrawalCheck withdrawalCheck;

	private final LevelCheck levelCheck;

	IllnessFacts(SmallFacts facts, EventRows rows, WithdrawalCheck withdrawalCheck, LevelCheck levelCheck) {
		this.facts = facts;
		this.rows = rows;
		this.withdrawalCheck = withdrawalCheck;
		this.levelCheck = levelCheck;
	}

	/**
	 * Reports an illness: an episode opens, whatever its kind.
	 * @param id who is ill
	 * @param report what is reported
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@OfAthlete
	public Saved report(PersonId id, NewReport report, Submission submission) {
		return add(id, submission, report.onset(), report.recordedOn(), (problems, athlete) -> {
			Days.check(problems, "onset", report.onset(), this.facts.today(athlete), submission.source());
			Integer worst = report.worst();
			if (worst != null && (worst < 0 || worst > 10)) {
				problems.add(Problem.of("worst", "report.worst.range", 0, 10));
			}
			Words.check(problems, "note", report.note());
		}, (recorded) -> new IllnessEvent.Report(report.onset(), recorded, report.kind(), report.worst(),
				report.note()));
	}

	/**
	 * Reports an illness with red flags: a hold opens for each, then the report is
	 * stored, all or none.
	 * @param id who is ill
	 * @param report what is reported
	 * @param redFlags the red flags ticked, at least one
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@OfAthlete
	public Saved reportWithRedFlags(PersonId id, NewReport report, List<Symptom> redFlags, Submission submission) {
		Saved saved = report(id, report, submission);
		if (saved instanceof Saved.Stored) {
			redFlags(id, report.onset(), redFlags, submission);
		}
		return saved;
	}

	/**
	 * Red flags ticked in a report that is not to be stored yet: the holds open all the
	 * same. The same sending opens each once.
	 * @param id who is ill
	 * @param day the day they speak of
	 * @param redFlags the red flags ticked
	 * @param submission who sends it, and which sending it is
	 */
	@OfAthlete
	public void redFlags(PersonId id, LocalDate day, List<Symptom> redFlags, Submission submission) {
		for (Symptom redFlag : redFlags) {
			byte[] name = (submission.requestId() + redFlag.name()).getBytes(StandardCharsets.UTF_8);
			Submission own = new Submission(submission.actor(), submission.role(), submission.source(),
					UUID.nameUUIDFromBytes(name));
			hold(id, day, redFlag.name(), own);
		}
	}

	/**
	 * Sets a hold by hand: Refer until a clinician's clearance.
	 * @param id whose
	 * @param day the day it speaks of, not in the future
	 * @param reason why
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@ByCoach
	public Saved hold(PersonId id, LocalDate day, String reason, Submission submission) {
		return add(id, submission, day, null, (problems, athlete) -> {
			Days.check(problems, "day", day, this.facts.today(athlete), submission.source());
			Words.require(problems, "reason", reason);
		}, (recorded) -> new IllnessEvent.Hold(day, recorded, reason));
	}

	/**
	 * Records a clinician's clearance, the only way out of a hold.
	 * @param id whose
	 * @param clearance what the clinician allows
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused if it is back-dated or incomplete
	 */
	@ByFullCoach
	public Saved clear(PersonId id, NewClearance clearance, Submission submission) {
		return add(id, submission, clearance.from(), null,
				(problems, athlete) -> clearance(problems, clearance, earliest(athlete, clearance.from(), submission)),
				(recorded) -> new IllnessEvent.Cleared(clearance.from(), clearance.until(), recorded,
						clearance.ceiling(), clearance.who(), clearance.role(), clearance.note()));
	}

	private static void clearance(List<Problem> problems, NewClearance clearance, LocalDate earliest) {
		LocalDate until = clearance.until();
		if (clearance.from().isBefore(earliest)) {
			problems.add(Problem.of("from", "clearance.back-dated", earliest));
		}
		if (until != null && until.isBefore(clearance.from())) {
			problems.add(Problem.of("until", "entry.until.order"));
		}
		if (clearance.ceiling() == Clearance.REFER || clearance.ceiling() == Clearance.NOT_ASSESSED) {
			problems.add(Problem.of("scope", "clearance.scope"));
		}
		Words.require(problems, "who", clearance.who());
		Words.require(problems, "role", clearance.role());
		Words.check(problems, "note", clearance.note());
	}

	/**
	 * Withdraws the open episode.
	 * @param id whose
	 * @param reason why
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused without an episode, within 24 hours of fever, or under a
	 * hold
	 */
	@ByFullCoach
	public Saved withdraw(PersonId id, String reason, Submission submission) {
		LocalDate day = this.facts.today(this.facts.begin(id));
		return add(id, submission, day, null, (problems, athlete) -> {
			Words.require(problems, "reason", reason);
			this.withdrawalCheck.check(problems, athlete, day);
		}, (recorded) -> new IllnessEvent.Withdrawal(day, recorded, reason));
	}

	/**
	 * Is stricter than the rules.
	 * @param id whose
	 * @param stricter the most allowed, and how long
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@ByCoach
	public Saved stricter(PersonId id, NewStricter stricter, Submission submission) {
		return add(id, submission, stricter.from(), null, (problems, athlete) -> {
			LocalDate earliest = earliest(athlete, stricter.from(), submission);
			if (stricter.from().isBefore(earliest)) {
				problems.add(Problem.of("from", "stricter.back-dated", earliest));
			}
			if (stricter.until().isBefore(stricter.from())) {
				problems.add(Problem.of("until", "entry.until.order"));
			}
			if (stricter.ceiling() != Clearance.REST && stricter.ceiling() != Clearance.EASY_ONLY) {
				problems.add(Problem.of("ceiling", "stricter.ceiling"));
			}
			Words.require(problems, "reason", stricter.reason());
		}, (recorded) -> new IllnessEvent.Stricter(stricter.from(), stricter.until(), recorded, stricter.ceiling(),
				stricter.reason()));
	}

	/**
	 * Lets the open episode go on by symptoms alone.
	 * @param id whose
	 * @param reason why
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@ByFullCoach
	public Saved symptomsOnly(PersonId id, String reason, Submission submission) {
		LocalDate day = this.facts.today(this.facts.begin(id));
		return add(id, submission, day, null, (problems, athlete) -> {
			Words.require(problems, "reason", reason);
			this.levelCheck.checkSymptomsOnly(problems, athlete, day);
		}, (recorded) -> new IllnessEvent.SymptomsOnly(day, recorded, reason));
	}

	/**
	 * Sets a working level for the open episode, from the next morning on.
	 * @param id whose
	 * @param level the clinician's word and the coach's reason
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused while anything speaks against it
	 */
	@ByFullCoach
	public Saved workingLevel(PersonId id, NewWorkingLevel level, Submission submission) {
		LocalDate day = this.facts.today(this.facts.begin(id));
		return add(id, submission, day, null, (problems, athlete) -> {
			Words.require(problems, "who", level.who());
			Words.require(problems, "role", level.role());
			Words.require(problems, "word", level.word());
			Words.require(problems, "reason", level.reason());
			this.levelCheck.check(problems, athlete, day);
		}, (recorded) -> new IllnessEvent.WorkingLevel(day, recorded, level.who(), level.role(), level.word(),
				level.reason()));
	}

	/**
	 * All events of an athlete.
	 * @param athlete whose
	 * @return in the order recorded
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<StoredEvent> of(PersonId athlete) {
		return this.rows.of(athlete);
	}

	/** The day an event counts as recorded: nothing it decides may lie before. */
	private LocalDate earliest(Athlete athlete, LocalDate day, Submission submission) {
		return (submission.source() == Source.IMPORT)
				? this.facts.recorded(athlete, day, null, submission, HistoryTime.EVENT).on()
				: this.facts.today(athlete);
	}

	private Saved add(PersonId id, Submission submission, LocalDate day, @Nullable LocalDate claimed, Check check,
			Event event) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(EventRows.TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		List<Problem> problems = new ArrayList<>();
		check.on(problems, athlete);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		Recorded recorded = this.facts.recorded(athlete, day, claimed, submission, HistoryTime.EVENT);
		IllnessEvent fact = event.recorded(recorded);
		return this.facts.add(EventRows.TABLE, athlete, null, fact, submission, EventRows.COLUMNS,
				EventRows.values(fact));
	}

	private interface Check {

		void on(List<Problem> problems, Athlete athlete);

	}

	private interface Event {

		IllnessEvent recorded(Recorded recorded);

	}

}
