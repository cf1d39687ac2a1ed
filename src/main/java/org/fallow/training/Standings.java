package org.fallow.training;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

import org.fallow.entry.Absence;
import org.fallow.entry.Absences;
import org.fallow.entry.Activity;
import org.fallow.entry.Medicines;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleSet;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.training.core.DoneRun;
import org.fallow.training.core.MaximumHeartRate;
import org.fallow.training.core.Position;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/** Where an athlete stands, as far as sessions depend on it. */
@Component
class Standings {

	/** A race may ask for a coach's word so long after an illness, and a little more. */
	private static final int LOOK_BACK = 28;

	private final Assessments assessments;

	private final Absences absences;

	private final Sessions sessions;

	private final Medicines medicines;

	private final Statements statements;

	private final RaceWords raceWords;

	private final RuleSets ruleSets;

	Standings(Assessments assessments, Absences absences, Sessions sessions, Medicines medicines, Statements statements,
			RaceWords raceWords, RuleSets ruleSets) {
		this.assessments = assessments;
		this.absences = absences;
		this.sessions = sessions;
		this.medicines = medicines;
		this.statements = statements;
		this.raceWords = raceWords;
		this.ruleSets = ruleSets;
	}

	/**
	 * An athlete whose days were decided up to today; whose today is not, is not
	 * assessed.
	 */
	Position position(Athlete athlete, LocalDate today, @Nullable AssessedDay latest) {
		Position position = standing(athlete, today, latest);
		LocalDate lastIll = position.lastIll();
		return (lastIll == null) ? position : position.agreed(agreed(athlete, today, lastIll));
	}

	private Set<LocalDate> agreed(Athlete athlete, LocalDate today, LocalDate lastIll) {
		return this.raceWords.of(athlete.id(), today)
			.stream()
			.filter((word) -> word.counts(lastIll))
			.map(RaceWord::raceOn)
			.collect(Collectors.toSet());
	}

	private Position standing(Athlete athlete, LocalDate today, @Nullable AssessedDay latest) {
		Clearance clearance = (latest != null && latest.day().equals(today)) ? latest.clearance()
				: Clearance.NOT_ASSESSED;
		boolean holding = latest != null && latest.holding();
		LocalDate away = awayUntil(athlete, today);
		if (latest == null || !latest.inEpisode()) {
			return new Position(today, clearance, holding, null, lastIll(athlete, today), away);
		}
		DayAssessment day = this.assessments.day(athlete.id(), latest.day()).orElseThrow();
		Episode episode = day.state().episode();
		return (episode == null) ? new Position(today, clearance, holding, null, latest.day(), away)
				: new Position(today, clearance, holding, back(athlete, episode), episode.firstOnset(), away);
	}

	private Position.Return back(Athlete athlete, Episode episode) {
		RuleSet rules = this.ruleSets.bookOf(athlete.teamId()).ofHash(episode.ruleHash()).rules();
		return new Position.Return(episode.stage(), episode.stageSince(),
				(episode.stage() == 0) ? null : episode.stage1On(), rules.path(episode.path()),
				rules.advice().longAwayDays());
	}

	/** The last day ill of an episode that has closed: from it a race is counted. */
	private @Nullable LocalDate lastIll(Athlete athlete, LocalDate today) {
		return this.assessments.of(athlete.id(), today.minusDays(2L * LOOK_BACK), today)
			.stream()
			.filter((day) -> Objects.equals(day.stage(), 0))
			.map(AssessedDay::day)
			.max(LocalDate::compareTo)
			.orElse(null);
	}

	private @Nullable LocalDate awayUntil(Athlete athlete, LocalDate today) {
		return this.absences.of(athlete.id())
			.stream()
			.filter((absence) -> absence.covers(today))
			.map(Absence::until)
			.map((until) -> Objects.requireNonNullElse(until, today.plusYears(1)))
			.max(LocalDate::compareTo)
			.orElse(null);
	}

	/** Runs of some days; what was not stated is held to be the harder. */
	List<DoneRun> runs(Athlete athlete, LocalDate from, LocalDate to) {
		return this.sessions.of(athlete.id(), from, to)
			.stream()
			.filter((log) -> log.activity() == Activity.RUN)
			.map(Standings::run)
			.toList();
	}

	private static DoneRun run(SessionLog log) {
		return new DoneRun(log.day(), Objects.requireNonNullElse(log.minutes(), 0), log.intensity());
	}

	Ceilings ceilings(Athlete athlete, LocalDate today) {
		boolean lowered = this.medicines.of(athlete.id())
			.stream()
			.filter((change) -> !change.day().isAfter(today))
			.reduce((first, second) -> second)
			.map((change) -> change.on())
			.orElse(false);
		return new Ceilings(maximum(athlete, today), lowered);
	}

	private @Nullable MaximumHeartRate maximum(Athlete athlete, LocalDate today) {
		Integer tested = this.statements.of(athlete.id()).maximumBpm();
		if (tested != null) {
			return MaximumHeartRate.measured(tested);
		}
		LocalDate born = athlete.birthDate();
		if (born == null || athlete.isUnder18(today)) {
			return null;
		}
		int age = born.until(today).getYears();
		return (age > MaximumHeartRate.OLDEST) ? null : MaximumHeartRate.estimated(age);
	}

}
