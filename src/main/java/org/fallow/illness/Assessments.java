package org.fallow.illness;

import org.fallow.team.OfAthletes;
import org.fallow.team.OfAthlete;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.fallow.access.PersonId;
import org.fallow.entry.AthleteLock;
import org.fallow.entry.Recording;
import org.fallow.entry.TimelineChanged;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.Mark;
import org.fallow.illness.core.State;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;

import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * What Fallow made of athletes' days, <em>known then</em>: each day as it was decided,
 * and stored in the transaction that stored the fact it follows from.
 */
@Service
@Transactional
public class Assessments {

	private final Replays replays;

	private final AssessmentRows rows;

	private final StatusRows status;

	private final DecisionRows decisions;

	private final OneDayRows oneDay;

	private final Squad squad;

	private final Recording recording;

	private final AthleteLock lock;

	Assessments(Replays replays, AssessmentRows rows, StatusRows status, DecisionRows decisions, OneDayRows oneDay,
			Squad squad, Recording recording, AthleteLock lock) {
		this.replays = replays;
		this.rows = rows;
		this.status = status;
		this.decisions = decisions;
		this.oneDay = oneDay;
		this.squad = squad;
		this.recording = recording;
		this.lock = lock;
	}

	@EventListener
	@Transactional(propagation = Propagation.MANDATORY)
	void assess(TimelineChanged changed) {
		Athlete athlete = changed.athlete();
		store(athlete, this.replays.replay(athlete, changed.fromRecordedDay(), this.recording.today(athlete)));
	}

	private void store(Athlete athlete, List<DayAssessment> days) {
		if (days.size() == 1) {
			this.oneDay.store(athlete.id(), days.get(0));
		}
		else if (!days.isEmpty()) {
			this.rows.store(athlete.id(), days);
			this.decisions.store(athlete.id(), days);
			this.status.store(athlete.id(), standing(athlete, days.get(days.size() - 1).day()));
		}
	}

	/**
	 * Decides the days of athletes of whom nothing was entered, up to a day, but never
	 * beyond an athlete's today. Where days beyond it were decided, because a clock ran
	 * ahead or the athlete moved west, how the athlete stands is taken back to today.
	 * @param athletes whose; those without any fact stay undecided
	 * @param day last day wanted
	 */
	@OfAthletes
	public void bringUpTo(Collection<PersonId> athletes, LocalDate day) {
		for (PersonId id : this.status.elsewhere(athletes, day)) {
			Athlete athlete = this.squad.athlete(id);
			LocalDate today = this.recording.today(athlete);
			LocalDate to = day.isBefore(today) ? day : today;
			this.lock.lock(id);
			LocalDate latest = this.rows.lastDay(id).orElse(to);
			if (latest.isBefore(to)) {
				store(athlete, this.replays.replay(athlete, latest.plusDays(1), to, List.of()));
			}
			else {
				this.status.pointTo(id, standing(athlete, latest));
			}
		}
	}

	/**
	 * The day by which an athlete stands now: today, or the latest one decided where that
	 * is earlier. A later day counts only if it is stricter by what was entered for it or
	 * holds the athlete; that nothing was entered for it says nothing.
	 */
	private LocalDate standing(Athlete athlete, LocalDate latest) {
		LocalDate today = this.recording.today(athlete);
		if (!latest.isAfter(today)) {
			return latest;
		}
		AssessedDay standing = null;
		for (AssessedDay day : this.rows.of(athlete.id(), today, latest)) {
			boolean counts = !day.day().isAfter(today) || day.holding() || day.mark() != Mark.NONE;
			if (counts && (standing == null || day.clearance().compareTo(standing.clearance()) < 0)) {
				standing = day;
			}
		}
		return (standing == null) ? latest : standing.day();
	}

	/**
	 * How an athlete stands now, with all evidence: today's day, unless a later one that
	 * was decided while a clock ran ahead, or before a move west, is stricter. Call
	 * {@link #bringUpTo} first.
	 * @param id whose
	 * @param today the athlete's today
	 * @return the assessment; empty before the first fact
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Optional<DayAssessment> now(PersonId id, LocalDate today) {
		return day(id, this.status.latest(id).filter((day) -> day.isAfter(today)).orElse(today));
	}

	/**
	 * The days of an athlete as they were decided.
	 * @param athlete whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return by day; days before the first fact are absent
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<AssessedDay> of(PersonId athlete, LocalDate from, LocalDate to) {
		return this.rows.of(athlete, from, to);
	}

	/**
	 * One day of several athletes as it was decided: a board as of that day.
	 * @param athletes whose
	 * @param day the day
	 * @return by athlete; who was not decided on that day is absent
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, AssessedDay> on(Collection<PersonId> athletes, LocalDate day) {
		return this.rows.on(athletes, day);
	}

	/**
	 * How several athletes stood on a day, whichever date it was where they are.
	 * @param athletes whose
	 * @param day the day
	 * @param before how many days earlier an athlete's latest day may be
	 * @param after how many days later ones are wanted too
	 * @return of each athlete at most one day up to {@code day}, the latest, and those
	 * after it up to the day by which the athlete stands now, by day
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public List<AssessedDay> around(Collection<PersonId> athletes, LocalDate day, int before, int after) {
		return this.rows.around(athletes, day, before, after);
	}

	/**
	 * The latest days of several athletes as they were decided.
	 * @param athletes whose
	 * @param count how many days back from the latest one decided
	 * @return by athlete, each by day; who was never decided is absent
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, List<AssessedDay>> latest(Collection<PersonId> athletes, int count) {
		return this.rows.latest(athletes, count).stream().collect(Collectors.groupingBy(AssessedDay::athlete));
	}

	/**
	 * The open episodes of athletes, as their latest days left them.
	 * @param athletes those whose latest day is one of an episode
	 * @return by athlete
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, Episode> episodes(Collection<PersonId> athletes) {
		Map<PersonId, Episode> episodes = new HashMap<>();
		Map<PersonId, State> stored = this.rows.inEpisode(athletes);
		for (PersonId id : athletes) {
			State state = stored.containsKey(id) ? stored.get(id)
					: this.status.latest(id).flatMap((last) -> day(id, last)).map(DayAssessment::state).orElse(null);
			if (state != null && state.episode() != null) {
				episodes.put(id, state.episode());
			}
		}
		return episodes;
	}

	/**
	 * The last day ill of several athletes within some days.
	 * @param athletes whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return by athlete; who was not ill on any of the days is absent
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, LocalDate> lastIll(Collection<PersonId> athletes, LocalDate from, LocalDate to) {
		return this.rows.lastIll(athletes, from, to);
	}

	/**
	 * Those of some days on which athletes were in an episode or under a hold.
	 * @param athletes whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return by athlete, by day; who was well on all of them is absent
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, List<LocalDate>> unwell(Collection<PersonId> athletes, LocalDate from, LocalDate to) {
		return this.rows.unwell(athletes, from, to);
	}

	/**
	 * A day with all its evidence, computed again from the stored state of an earlier day
	 * by the function that decided it.
	 * @param id whose
	 * @param day the day
	 * @return the assessment; empty before the first fact
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Optional<DayAssessment> day(PersonId id, LocalDate day) {
		List<DayAssessment> days = this.replays.replay(this.squad.athlete(id), day, day, List.of());
		return days.stream().filter((assessment) -> assessment.day().equals(day)).findFirst();
	}

	/**
	 * A second replay in which every fact was known on the day it speaks of; to be
	 * labelled as such wherever it is shown.
	 * @param id whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return by day; nothing of it is stored
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<DayAssessment> knownNow(PersonId id, LocalDate from, LocalDate to) {
		return this.replays.knownNow(this.squad.athlete(id), to)
			.stream()
			.filter((assessment) -> !assessment.day().isBefore(from))
			.toList();
	}

	/**
	 * How athletes stand now.
	 * @param athletes whose
	 * @return by athlete; who never had a fact is absent
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public Map<PersonId, AthleteStatus> status(Collection<PersonId> athletes) {
		return this.status.of(athletes);
	}

	/**
	 * What changed in an athlete's episodes, and on what evidence.
	 * @param athlete whose
	 * @return newest first
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<StageDecision> decisions(PersonId athlete) {
		return this.decisions.of(athlete);
	}

	/**
	 * What changed in the episodes of several athletes, without the evidence.
	 * @param athletes whose
	 * @param from first day, inclusive
	 * @return oldest first
	 */
	@OfAthletes
	@Transactional(readOnly = true)
	public List<StageChange> changes(Collection<PersonId> athletes, LocalDate from) {
		return this.decisions.since(athletes, from);
	}

}
