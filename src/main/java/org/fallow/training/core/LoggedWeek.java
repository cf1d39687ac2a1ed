package org.fallow.training.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;

/**
 * A week of the programme beside what an athlete logged in it.
 *
 * @param monday first day
 * @param sessions each programmed session with what became of it, by day
 * @param minutesProgrammed of all sessions
 * @param minutesRun of all runs, those that nobody programmed among them
 * @param enduranceMinutes of the runs
 * @param load sum of session RPE times minutes, of the runs that have both
 * @param monotony of the daily loads; absent before the week is over, where a run lacks
 * effort or minutes, and where all days are alike
 */
public record LoggedWeek(LocalDate monday, List<Logged> sessions, int minutesProgrammed, int minutesRun,
		int enduranceMinutes, double load, @Nullable Double monotony) {

	/**
	 * Minutes this share off the programmed ones still count as done (own, no source).
	 */
	public static final double NEAR = 0.2;

	private static final int DAYS = 7;

	/** Copies the sessions. */
	public LoggedWeek {
		sessions = List.copyOf(sessions);
	}

	/**
	 * Holds the log against the programme. Of several sessions and runs of one day the
	 * first goes with the first.
	 * @param week the programme's
	 * @param runs what was logged, in order; other weeks' are passed over
	 * @param excused days on which nobody expects a run: ill, on the way back, resting,
	 * away
	 * @param today the athlete's day
	 * @return the week
	 */
	public static LoggedWeek of(ProgrammeWeek week, List<LoggedRun> runs, Collection<LocalDate> excused,
			LocalDate today) {
		List<LoggedRun> own = runs.stream()
			.filter((run) -> !run.day().isBefore(week.monday()) && run.day().isBefore(week.monday().plusDays(DAYS)))
			.toList();
		List<LoggedRun> left = new ArrayList<>(own);
		List<Logged> sessions = new ArrayList<>();
		for (PlannedSession session : week.sessions()) {
			LoggedRun run = left.stream().filter((one) -> one.day().equals(session.day())).findFirst().orElse(null);
			left.remove(run);
			sessions.add(new Logged(session, run, outcome(session, run, excused, today)));
		}
		List<Integer> minutes = own.stream().map(LoggedRun::minutes).flatMap(Stream::ofNullable).toList();
		return new LoggedWeek(week.monday(), sessions, week.minutes(),
				minutes.stream().mapToInt(Integer::intValue).sum(), EnduranceMinutes.of(minutes).minutes(),
				own.stream().mapToDouble(LoggedWeek::load).sum(), monotony(week.monday(), own, today));
	}

	private static Outcome outcome(PlannedSession session, @Nullable LoggedRun run, Collection<LocalDate> excused,
			LocalDate today) {
		if (run != null) {
			return asProgrammed(session, run) ? Outcome.DONE : Outcome.CHANGED;
		}
		if (excused.contains(session.day())) {
			return Outcome.EXCUSED;
		}
		return session.day().isBefore(today) ? Outcome.MISSED : Outcome.AHEAD;
	}

	private static boolean asProgrammed(PlannedSession session, LoggedRun run) {
		Integer minutes = run.minutes();
		return minutes != null && Math.abs(minutes - session.minutes()) <= NEAR * session.minutes()
				&& run.intensity() == session.hardest();
	}

	private static double load(LoggedRun run) {
		Integer minutes = run.minutes();
		Double rpe = run.rpe();
		return (minutes == null || rpe == null) ? 0 : new SessionLoad(rpe, minutes).load();
	}

	private static @Nullable Double monotony(LocalDate monday, List<LoggedRun> runs, LocalDate today) {
		boolean whole = !today.isBefore(monday.plusDays(DAYS))
				&& runs.stream().allMatch((run) -> run.minutes() != null && run.rpe() != null);
		if (!whole) {
			return null;
		}
		return new WeekLoad(monday.datesUntil(monday.plusDays(DAYS))
			.map((day) -> runs.stream().filter((run) -> run.day().equals(day)).mapToDouble(LoggedWeek::load).sum())
			.toList()).monotony();
	}

	/**
	 * How many sessions were run, as programmed or changed.
	 * @return 0 or more
	 */
	public long run() {
		return this.sessions.stream().filter((one) -> one.run() != null).count();
	}

	/**
	 * How many sessions were due and expected so far.
	 * @return all but those ahead and those excused
	 */
	public long due() {
		return this.sessions.stream()
			.filter((one) -> one.outcome() != Outcome.AHEAD && one.outcome() != Outcome.EXCUSED)
			.count();
	}

	/**
	 * A session and what became of it.
	 *
	 * @param session as programmed
	 * @param run what was logged; absent if nothing
	 * @param outcome what became of it
	 */
	public record Logged(PlannedSession session, @Nullable LoggedRun run, Outcome outcome) {

		/** Checks that all is told. */
		public Logged {
			Objects.requireNonNull(session);
			Objects.requireNonNull(outcome);
		}

	}

	/** What became of a session. */
	public enum Outcome {

		/** Run about as programmed. */
		DONE,
		/** Run, but otherwise. */
		CHANGED,
		/** Not run, and nobody expected it. */
		EXCUSED,
		/** Not run. */
		MISSED,
		/** Today or later. */
		AHEAD

	}

}
