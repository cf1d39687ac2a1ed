package org.fallow.illness;

import org.fallow.team.OfAthlete;
import org.fallow.team.ByFullCoach;
import org.fallow.team.ByCoach;
import java.time.LocalDate;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Days;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.entry.Words;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What people say and decide about an illness, each an event that is only ever added. An
 * athlete may report; all else is for coaches, and what can loosen a clearance not for a
 * deputy. Clearances are {@link ClearanceFacts}, ceilings {@link CeilingFacts}.
 */
@Service
@Transactional
public class IllnessFacts {

	private final EventStore store;

	private final EventRows rows;

	private final WithdrawalCheck withdrawalCheck;

	private final LevelCheck levelCheck;

	IllnessFacts(EventStore store, EventRows rows, WithdrawalCheck withdrawalCheck, LevelCheck levelCheck) {
		this.store = store;
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
		return this.store.add(id, submission, report.onset(), report.recordedOn(), (problems, athlete) -> {
			Days.check(problems, "onset", report.onset(), this.store.today(athlete), submission.source());
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
		return this.store.add(id, submission, day, null, (problems, athlete) -> {
			Days.check(problems, "day", day, this.store.today(athlete), submission.source());
			Words.require(problems, "reason", reason);
		}, (recorded) -> new IllnessEvent.Hold(day, recorded, reason));
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
		LocalDate day = this.store.today(id);
		return this.store.add(id, submission, day, null, (problems, athlete) -> {
			Words.require(problems, "reason", reason);
			this.withdrawalCheck.check(problems, athlete, day);
		}, (recorded) -> new IllnessEvent.Withdrawal(day, recorded, reason));
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
		LocalDate day = this.store.today(id);
		return this.store.add(id, submission, day, null, (problems, athlete) -> {
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
		LocalDate day = this.store.today(id);
		return this.store.add(id, submission, day, null, (problems, athlete) -> {
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

}
