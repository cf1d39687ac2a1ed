package org.fallow.illness;

import java.time.LocalDate;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Words;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.rules.Clearance;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Clinicians' clearances, the only way out of a hold. A coach records what a clinician
 * said; athletes tell it themselves only where they are all there is, and that reads so
 * for ever.
 */
@Service
@Transactional
public class ClearanceFacts {

	/** Days after today on which a clearance can begin at the latest (own). */
	public static final int FROM_DAYS = 60;

	/**
	 * Days after its first on which a clearance that ends can end at the latest (own).
	 */
	public static final int UNTIL_DAYS = 366;

	private final EventStore store;

	private final Squad squad;

	ClearanceFacts(EventStore store, Squad squad) {
		this.store = store;
		this.squad = squad;
	}

	/**
	 * Records a clinician's clearance.
	 * @param id whose
	 * @param clearance what the clinician allows
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused if it is back-dated, years ahead or incomplete, and for
	 * oneself
	 */
	@ByFullCoach
	public Saved clear(PersonId id, NewClearance clearance, Submission submission) {
		return this.store.add(id, submission, clearance.from(), null, (problems, athlete) -> {
			check(problems, clearance, this.store.earliest(athlete, clearance.from(), submission));
			if (submission.actor().equals(id)) {
				problems.add(Problem.of("who", "clearance.own"));
			}
			if (clearance.word().by() == ClinicianWord.By.ATHLETE) {
				problems.add(Problem.of("by", "clearance.by"));
			}
		}, clearance::event);
	}

	/**
	 * Notes what an athlete tells of a clinician's clearance where there is nobody who
	 * could confirm it: easy running at most, for as long as the rules let it stand.
	 * @param id whose
	 * @param clearance what the clinician allows; its word is the athlete's
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused while anybody covers the athlete
	 */
	@OfAthlete
	public Saved tell(PersonId id, NewClearance clearance, Submission submission) {
		return this.store.add(id, submission, clearance.from(), null, (problems, athlete) -> {
			LocalDate today = this.store.today(athlete);
			check(problems, clearance, today);
			if (!submission.actor().equals(id) || !isAllThereIs(id)) {
				problems.add(Problem.of("who", "clearance.not-alone"));
			}
			LocalDate until = clearance.until();
			LocalDate last = clearance.from().plusDays(this.store.rules(athlete).words().toldByAthleteDays() - 1L);
			if (until == null || until.isAfter(last)) {
				problems.add(Problem.of("until", "clearance.told.until", last));
			}
			if (clearance.ceiling() == Clearance.FULL_TRAINING || clearance.word().by() != ClinicianWord.By.ATHLETE) {
				problems.add(Problem.of("scope", "clearance.told.scope"));
			}
		}, clearance::event);
	}

	/**
	 * Whether there is neither a coach who covers an athlete nor an owner of the club,
	 * apart from the athlete.
	 * @param athlete whose
	 * @return true if nobody could confirm what the athlete tells
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public boolean isAllThereIs(PersonId athlete) {
		return this.squad.isAllThereIs(athlete);
	}

	private static void check(List<Problem> problems, NewClearance clearance, LocalDate earliest) {
		days(problems, clearance, earliest);
		if (clearance.ceiling() == Clearance.REFER || clearance.ceiling() == Clearance.NOT_ASSESSED) {
			problems.add(Problem.of("scope", "clearance.scope"));
		}
		if (clearance.word().noIllness()
				&& (clearance.ceiling() != Clearance.FULL_TRAINING || clearance.until() != null)) {
			problems.add(Problem.of("noIllness", "clearance.no-illness.full"));
		}
		LocalDate examinedOn = clearance.word().examinedOn();
		if (examinedOn != null && examinedOn.isAfter(earliest)) {
			problems.add(Problem.of("examinedOn", "clearance.examined.future"));
		}
		Words.require(problems, "who", clearance.who());
		Words.require(problems, "role", clearance.role());
		Words.check(problems, "note", clearance.note());
	}

	private static void days(List<Problem> problems, NewClearance clearance, LocalDate earliest) {
		LocalDate from = clearance.from();
		LocalDate until = clearance.until();
		if (from.isBefore(earliest)) {
			problems.add(Problem.of("from", "clearance.back-dated", earliest));
		}
		if (from.isAfter(earliest.plusDays(FROM_DAYS))) {
			problems.add(Problem.of("from", "clearance.from.late", from, earliest.plusDays(FROM_DAYS)));
		}
		if (until != null && until.isBefore(from)) {
			problems.add(Problem.of("until", "entry.until.order"));
		}
		if (until != null && until.isAfter(from.plusDays(UNTIL_DAYS))) {
			problems.add(Problem.of("until", "clearance.until.late", until, from.plusDays(UNTIL_DAYS)));
		}
	}

}
