package org.fallow.training;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

import org.fallow.entry.Absence;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.SessionLog;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.core.Episode;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.fallow.team.Athlete;
import org.fallow.training.core.DoneRun;
import org.fallow.training.core.MaximumHeartRate;
import org.fallow.training.core.Position;
import org.jspecify.annotations.Nullable;

/** Where an athlete stands, as far as sessions depend on it. */
final class Standings {

	private Standings() {
	}

	/**
	 * An athlete whose days were decided up to today; whose today is not, is not
	 * assessed.
	 */
	static Position position(Background known, @Nullable AssessedDay latest, RuleBook rules) {
		Position position = standing(known, latest, rules);
		LocalDate lastIll = position.lastIll();
		return (lastIll == null) ? position : position.agreed(agreed(known, lastIll));
	}

	private static Set<LocalDate> agreed(Background known, LocalDate lastIll) {
		return known.raceWords()
			.stream()
			.filter((word) -> word.counts(lastIll))
			.map(RaceWord::raceOn)
			.collect(Collectors.toSet());
	}

	private static Position standing(Background known, @Nullable AssessedDay latest, RuleBook rules) {
		LocalDate today = known.today();
		Clearance clearance = (latest != null && latest.day().equals(today)) ? latest.clearance()
				: Clearance.NOT_ASSESSED;
		boolean holding = latest != null && latest.holding();
		LocalDate away = awayUntil(known);
		if (latest == null || !latest.inEpisode()) {
			return new Position(today, clearance, holding, null, known.lastIll(), away);
		}
		Episode episode = known.episode();
		return (episode == null) ? new Position(today, clearance, holding, null, latest.day(), away)
				: new Position(today, clearance, holding, back(episode, rules), episode.firstOnset(), away);
	}

	/** The return of an open episode, by the rules that it keeps. */
	static Position.Return back(Episode episode, RuleBook book) {
		RuleSet rules = book.ofHash(episode.ruleHash()).rules();
		return new Position.Return(episode.stage(), episode.stageSince(),
				(episode.stage() == 0) ? null : episode.stage1On(), rules.path(episode.path()),
				rules.advice().longAwayDays());
	}

	private static @Nullable LocalDate awayUntil(Background known) {
		LocalDate today = known.today();
		return known.absences()
			.stream()
			.filter((absence) -> absence.covers(today))
			.map(Absence::until)
			.map((until) -> Objects.requireNonNullElse(until, today.plusYears(1)))
			.max(LocalDate::compareTo)
			.orElse(null);
	}

	/** Runs of some days; what was not stated is held to be the harder. */
	static List<DoneRun> runs(Background known, LocalDate from, LocalDate to) {
		return known.runs(from, to).stream().map(Standings::run).toList();
	}

	private static DoneRun run(SessionLog log) {
		return new DoneRun(log.day(), Objects.requireNonNullElse(log.minutes(), 0), log.intensity());
	}

	static Ceilings ceilings(Background known) {
		boolean lowered = known.medicines()
			.stream()
			.filter((change) -> !change.day().isAfter(known.today()))
			.reduce((first, second) -> second)
			.map(MedicineChange::on)
			.orElse(false);
		return new Ceilings(maximum(known), lowered);
	}

	private static @Nullable MaximumHeartRate maximum(Background known) {
		Integer tested = known.statement().maximumBpm();
		if (tested != null) {
			return MaximumHeartRate.measured(tested);
		}
		Athlete athlete = known.athlete();
		LocalDate born = athlete.birthDate();
		if (born == null || athlete.isUnder18(known.today())) {
			return null;
		}
		int age = born.until(known.today()).getYears();
		return (age > MaximumHeartRate.OLDEST) ? null : MaximumHeartRate.estimated(age);
	}

}
