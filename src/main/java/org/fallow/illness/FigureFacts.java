package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.access.PersonId;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Words;
import org.fallow.illness.core.FastAtRest;
import org.fallow.illness.core.OwnFigure;
import org.fallow.illness.core.OwnFigureEnded;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Clinicians' own figures for a person, from which on a reading is too fast at rest. A
 * covering coach records them, never oneself; they are only ever added, and one is ended
 * by a further fact.
 */
@Service
@Transactional
public class FigureFacts {

	private final EventStore store;

	private final EventRows rows;

	private final RuleSets ruleSets;

	FigureFacts(EventStore store, EventRows rows, RuleSets ruleSets) {
		this.store = store;
		this.rows = rows;
		this.ruleSets = ruleSets;
	}

	/**
	 * Records a figure; an earlier one of the same way of measuring ends with it.
	 * @param id whose
	 * @param figure what the clinician said
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused if it is below the rules' figure, so high that such
	 * readings are counted by finger, incomplete, or for oneself
	 */
	@ByFullCoach
	public Saved record(PersonId id, NewFigure figure, Submission submission) {
		LocalDate today = this.store.today(id);
		return this.store.add(id, submission, today, null, (problems, athlete) -> {
			double least = usual(athlete, figure.posture());
			double most = FastAtRest.mostOwn(figure.posture());
			if (!(figure.bpm() >= least && figure.bpm() <= most)) {
				problems.add(Problem.of("bpm", "figure.range", least, most));
			}
			if (figure.spokenOn().isAfter(today)) {
				problems.add(Problem.of("spokenOn", "figure.future"));
			}
			Words.require(problems, "who", figure.who());
			Words.require(problems, "role", figure.role());
			Words.check(problems, "note", figure.note());
			checkOwn(problems, id, submission);
		}, figure::event);
	}

	/**
	 * Ends a figure.
	 * @param id whose
	 * @param method how the readings are taken
	 * @param posture how the athlete is placed
	 * @param reason why
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused where none is in force
	 */
	@ByFullCoach
	public Saved end(PersonId id, Method method, Posture posture, String reason, Submission submission) {
		return this.store.add(id, submission, this.store.today(id), null, (problems, athlete) -> {
			Words.require(problems, "reason", reason);
			if (of(id).stream().noneMatch((one) -> one.method() == method && one.posture() == posture)) {
				problems.add(Problem.of("reason", "figure.none"));
			}
			checkOwn(problems, id, submission);
		}, (recorded) -> new OwnFigureEnded(recorded.on(), recorded, method, posture, reason));
	}

	private static void checkOwn(List<Problem> problems, PersonId id, Submission submission) {
		if (submission.actor().equals(id)) {
			problems.add(Problem.of("who", "figure.own"));
		}
	}

	private double usual(Athlete athlete, Posture posture) {
		LocalDate today = this.store.today(athlete);
		return RhrFlag.tooFastFrom(posture, this.ruleSets.bookOf(athlete.teamId()).on(today).rules().flags());
	}

	/**
	 * The figures recorded and not ended. One is of the series as it was then: after
	 * another device, place or medicine it works no longer, and is still listed to be
	 * ended.
	 * @param athlete whose
	 * @return by way of measuring
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<OwnFigure> of(PersonId athlete) {
		Map<String, OwnFigure> latest = new TreeMap<>();
		for (StoredEvent stored : this.rows.of(athlete)) {
			if (stored.event() instanceof OwnFigure figure) {
				latest.put(figure.method() + " " + figure.posture(), figure);
			}
			if (stored.event() instanceof OwnFigureEnded ended) {
				latest.remove(ended.method() + " " + ended.posture());
			}
		}
		return new ArrayList<>(latest.values());
	}

}
