package org.fallow.training.core;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * When an athlete on the way back would be with the group again, if every coming morning
 * were good and every run of the stages were logged. Never a promise.
 *
 * @param fullTraining first day of the last stage: the day it was reached, or the
 * earliest it could be
 * @param week Monday of the programme's week that is rejoined
 * @param keySessionsMissed sessions of the group that are no easy runs, from the onset to
 * the day before
 * @param unloadingOnTheWay whether the group has an unloading week meanwhile, which lets
 * the athlete catch up
 * @param raceDay the group's next race; absent where the programme has none
 * @param daysBeforeRace days of full training before it, 0 where it comes first; absent
 * without a race
 * @param advice what that means for the race; absent without one
 * @param askFirst whether the race lies within 14 days of the last day ill, so that the
 * coach's word comes first and has not been given
 */
public record Rejoin(LocalDate fullTraining, LocalDate week, int keySessionsMissed, boolean unloadingOnTheWay,
		@Nullable LocalDate raceDay, @Nullable Integer daysBeforeRace, @Nullable RaceAdvice advice, boolean askFirst) {

	/**
	 * From so many days of full training on a race is run as planned (own, no source).
	 */
	public static final int AS_PLANNED_DAYS = 14;

	/** A race within so many days of the last day ill asks for the coach's word. */
	public static final int RACE_DAYS = Modification.RACE_DAYS;

	/** From so many days on it is run for fun (own, no source). */
	public static final int FOR_FUN_DAYS = 7;

	/**
	 * Looks ahead.
	 * @param position where the athlete stands
	 * @param nextGate earliest day of the next gate; absent where no good morning alone
	 * opens it
	 * @param weeks the group's programme from the onset on
	 * @return the look ahead; empty without a return, under a hold, and where the next
	 * gate has no day
	 */
	public static Optional<Rejoin> of(Position position, @Nullable LocalDate nextGate, List<ProgrammeWeek> weeks) {
		Position.Return back = position.back();
		LocalDate onset = position.onset();
		LocalDate full = (back == null || position.holding()) ? null : fullTraining(back, nextGate);
		if (back == null || onset == null || full == null) {
			return Optional.empty();
		}
		List<PlannedSession> sessions = weeks.stream().flatMap((week) -> week.sessions().stream()).toList();
		LocalDate race = sessions.stream()
			.filter((session) -> session.kind() == PlannedSession.Kind.RACE
					&& !session.day().isBefore(position.today()))
			.map(PlannedSession::day)
			.min(LocalDate::compareTo)
			.orElse(null);
		Integer left = (race == null) ? null : Integer.valueOf((int) Math.max(0, ChronoUnit.DAYS.between(full, race)));
		return Optional.of(new Rejoin(full, monday(full), missed(sessions, onset, full), unloading(weeks, onset, full),
				race, left, (left == null) ? null : advice(left), race != null && isSoon(race, position)));
	}

	private static @Nullable LocalDate fullTraining(Position.Return back, @Nullable LocalDate nextGate) {
		List<RuleSet.Stage> stages = back.path().stages();
		if (back.stage() == stages.size()) {
			return back.stageSince();
		}
		return (nextGate == null) ? null : nextGate
			.plusDays(stages.subList(back.stage(), stages.size() - 1).stream().mapToInt(RuleSet.Stage::days).sum());
	}

	private static int missed(List<PlannedSession> sessions, LocalDate onset, LocalDate full) {
		return (int) sessions.stream()
			.filter((session) -> session.kind().isKey() && !session.day().isBefore(onset)
					&& session.day().isBefore(full))
			.count();
	}

	private static boolean unloading(List<ProgrammeWeek> weeks, LocalDate onset, LocalDate full) {
		return weeks.stream()
			.anyMatch((week) -> week.kind() == ProgrammeWeek.Kind.UNLOADING && week.monday().isBefore(full)
					&& !week.monday().plusDays(6).isBefore(onset));
	}

	/** While ill, the last day ill is not over yet: today counts. */
	private static boolean isSoon(LocalDate race, Position position) {
		LocalDate lastIll = Objects.requireNonNullElse(position.lastIll(), position.today());
		return !race.isAfter(lastIll.plusDays(Modification.RACE_DAYS)) && !position.racesAgreed().contains(race);
	}

	private static RaceAdvice advice(int days) {
		if (days >= AS_PLANNED_DAYS) {
			return RaceAdvice.AS_PLANNED;
		}
		return (days >= FOR_FUN_DAYS) ? RaceAdvice.FOR_FUN : RaceAdvice.MOVE;
	}

	private static LocalDate monday(LocalDate day) {
		return day.minusDays(day.getDayOfWeek().getValue() - 1L);
	}

	/** What to make of a race. */
	public enum RaceAdvice {

		/** Run it as planned. */
		AS_PLANNED,
		/** Run it for fun, without a time in mind. */
		FOR_FUN,
		/** Leave it out, or move it. */
		MOVE

	}

}
