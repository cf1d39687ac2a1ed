package org.fallow.training.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Rewrites the coming sessions of one athlete. It only takes away: no session gets longer
 * or harder than programmed.
 * <p>
 * Read narrowly where the design is silent:
 * <ul>
 * <li>The present stage stays for all the days looked at: a gate that has not opened is
 * not counted on.</li>
 * <li>A stage's weekly volume holds for any seven days running, counted from the day the
 * return began: runs that were done and runs that are planned.</li>
 * <li>Limits of a stage's first days hold for its first runs, if these come later.</li>
 * <li>Without a usual volume a share is taken of each session.</li>
 * <li>No race is run and no test is done before the last stage.</li>
 * <li>Without a return, rest or easy only is of today; the days after are told easy as
 * long as today is rest, and as programmed otherwise, and their own morning decides.</li>
 * </ul>
 */
public final class Modification {

	/** Below so many minutes a session is left out. */
	static final int LEAST_MINUTES = 10;

	/** A race within so many days of the last day ill asks for the coach's word. */
	static final int RACE_DAYS = 14;

	private static final int WEEK = 7;

	private static final int STRIDE_SECONDS = 20;

	private static final int MOST_STRIDES = 6;

	private static final int LEAST_STRIDES = 2;

	private static final int STRIDE_RECOVERY = 60;

	private static final int SECONDS = 60;

	private final Position position;

	private final UsualVolume usual;

	private final List<DoneRun> runs;

	private final List<ModifiedSession> made = new ArrayList<>();

	private Modification(Position position, UsualVolume usual, List<DoneRun> done) {
		this.position = position;
		this.usual = usual;
		this.runs = new ArrayList<>(done);
	}

	/**
	 * What an athlete does of sessions from today on.
	 * @param sessions the programme's, of today or later
	 * @param position where the athlete stands
	 * @param usual what the athlete usually runs
	 * @param done runs that were done, of today too; their order does not matter
	 * @return one for each, in order of their days
	 * @throws IllegalArgumentException for a session before today
	 */
	public static List<ModifiedSession> of(List<PlannedSession> sessions, Position position, UsualVolume usual,
			List<DoneRun> done) {
		Modification modification = new Modification(position, usual, done);
		sessions.stream().sorted(Comparator.comparing(PlannedSession::day)).forEach(modification::add);
		return List.copyOf(modification.made);
	}

	private void add(PlannedSession session) {
		if (session.day().isBefore(this.position.today())) {
			throw new IllegalArgumentException(session.day() + " is before today");
		}
		ModifiedSession modified = modify(session);
		this.made.add(modified);
		if (modified.instead() != null) {
			this.runs.add(new DoneRun(session.day(), modified.minutes(), modified.hardest()));
		}
	}

	private ModifiedSession modify(PlannedSession session) {
		LocalDate away = this.position.awayUntil();
		if (this.position.holding() || (isToday(session) && this.position.clearance() == Clearance.REFER)) {
			return nothing(session, Version.CLINICIAN_FIRST, Message.of("session.why.clinician"));
		}
		if (away != null && !session.day().isAfter(away)) {
			return nothing(session, Version.REST, Message.of("session.why.away", away));
		}
		if (isToday(session) && this.position.clearance() == Clearance.REST) {
			return nothing(session, Version.REST, Message.of("session.why.rest"));
		}
		Position.Return back = this.position.back();
		return (back == null) ? well(session) : inReturn(session, back);
	}

	private boolean isToday(PlannedSession session) {
		return session.day().equals(this.position.today());
	}

	private ModifiedSession well(PlannedSession session) {
		Clearance clearance = this.position.clearance();
		if (isToday(session) && clearance == Clearance.NOT_ASSESSED) {
			return (session.kind() == PlannedSession.Kind.RACE)
					? nothing(session, Version.NOT_ASSESSED, Message.of("session.why.not-assessed"))
					: notAssessed(session, session.minutes(), List.of(), null);
		}
		boolean held = (isToday(session)) ? clearance != Clearance.FULL_TRAINING
				: clearance == Clearance.REST || clearance == Clearance.REFER;
		if (held) {
			Message why = Message.of(isToday(session) ? "session.why.easy-only" : "session.why.after-rest");
			return (session.kind() == PlannedSession.Kind.RACE) ? nothing(session, Version.REST, why)
					: easy(session, session.minutes(), new ArrayList<>(List.of(why)), null);
		}
		return raceSoon(session) ? easy(session, session.minutes(), reasons("session.why.race-soon", RACE_DAYS), null)
				: asProgrammed(session);
	}

	/** Counted from the last day ill, which is the later, and so the safer, beginning. */
	private boolean raceSoon(PlannedSession session) {
		LocalDate ended = this.position.lastIll();
		LocalDate lastIll = (ended == null) ? this.position.onset() : ended;
		return session.kind() == PlannedSession.Kind.RACE && lastIll != null
				&& session.day().isBefore(lastIll.plusDays(RACE_DAYS + 1L))
				&& !this.position.racesAgreed().contains(session.day());
	}

	private ModifiedSession inReturn(PlannedSession session, Position.Return back) {
		RuleSet.Stage stage = back.now();
		if (stage == null) {
			return nothing(session, Version.REST, Message.of("session.why.ill"));
		}
		List<Message> reasons = new ArrayList<>();
		int most = most(session, back, stage, reasons);
		if (most < LEAST_MINUTES) {
			return nothing(session, Version.REST, Message.of("session.why.week-full"));
		}
		if (isToday(session) && this.position.clearance() == Clearance.NOT_ASSESSED) {
			return notAssessed(session, most, reasons, stage);
		}
		boolean last = back.stage() == back.path().stages().size();
		boolean contest = session.kind() == PlannedSession.Kind.RACE || session.kind() == PlannedSession.Kind.TEST;
		if (contest && (!last || raceSoon(session))) {
			reasons.add(0,
					last ? Message.of("session.why.race-soon", RACE_DAYS) : Message.of("session.why.no-contest"));
			return easy(session, most, reasons, stage);
		}
		Clearance clearance = isToday(session) ? this.position.clearance().stricterOf(stage.clearance())
				: stage.clearance();
		Intensity highest = Objects.requireNonNullElse(stage.highest(), Intensity.ANAEROBIC);
		if (clearance != Clearance.FULL_TRAINING && highest.compareTo(Intensity.STRIDES) > 0) {
			highest = Intensity.EASY;
		}
		return session.hardest().compareTo(highest) > 0 ? easier(session, most, highest, reasons, stage)
				: within(session, most, reasons, stage, back);
	}

	/** The session is harder than the stage allows. */
	private ModifiedSession easier(PlannedSession session, int most, Intensity highest, List<Message> reasons,
			RuleSet.Stage stage) {
		reasons.add(0, Message.of("session.why.intensity", highest.name()));
		return (highest.compareTo(Intensity.STRIDES) >= 0) ? strides(session, most, reasons, stage)
				: easy(session, most, reasons, stage);
	}

	/** The session is not too hard, but may be too long, or too soon after a hard day. */
	private ModifiedSession within(PlannedSession session, int most, List<Message> reasons, RuleSet.Stage stage,
			Position.Return back) {
		if (session.isHard() && hardAround(session.day())) {
			reasons.add(0, Message.of("session.why.hard-yesterday"));
			return easy(session, most, reasons, stage);
		}
		PlannedSession lighter = session;
		if (session.isHard() && isFirstHardAfterLong(back)) {
			reasons.add(0, Message.of("session.why.first-hard", back.longAwayDays()));
			lighter = halved(session);
		}
		if (lighter.minutes() > most) {
			return session.isHard() ? easy(session, most, reasons, stage)
					: made(session, Version.SHORTENED, shortened(lighter, most), reasons, stage);
		}
		return made(session, lighter.equals(session) ? Version.AS_PROGRAMMED : Version.SHORTENED, lighter, reasons,
				stage);
	}

	/** The most minutes that the stage leaves for a session. */
	private int most(PlannedSession session, Position.Return back, RuleSet.Stage stage, List<Message> reasons) {
		int most = session.minutes();
		Integer first = firstRun(session.day(), back, stage);
		if (first != null && first < most) {
			most = first;
			reasons.add(Message.of("session.why.first-run", first));
		}
		Integer longest = longest(session, stage);
		if (longest != null && longest < most) {
			most = longest;
			reasons.add(Message.of("session.why.long-run", longest));
		}
		Integer left = leftOfWeek(session.day(), back, stage);
		if (left != null && left < most) {
			most = Math.max(0, left);
			reasons.add(Message.of("session.why.week", most));
		}
		return most;
	}

	private @Nullable Integer firstRun(LocalDate day, Position.Return back, RuleSet.Stage stage) {
		long daysRun = this.runs.stream()
			.map(DoneRun::day)
			.filter((run) -> !run.isBefore(back.stageSince()) && run.isBefore(day))
			.distinct()
			.count();
		int index = (int) Math.min(back.dayInStage(day) - 1L, daysRun);
		return (index >= 0 && index < stage.firstRunMinutes().size()) ? stage.firstRunMinutes().get(index) : null;
	}

	private @Nullable Integer longest(PlannedSession session, RuleSet.Stage stage) {
		Integer usualLong = this.usual.longMinutes();
		int share = (int) Math
			.floor(stage.longRunShare() * ((usualLong != null) ? usualLong : (double) session.minutes()));
		Integer minutes = stage.longRunMinutes();
		boolean asProgrammed = minutes == null && stage.longRunShare() >= 1 && usualLong == null;
		return asProgrammed ? null
				: (minutes == null) ? Integer.valueOf(share) : Integer.valueOf(Math.min(share, minutes));
	}

	/**
	 * What any seven days that hold the session leave, of runs since the return began:
	 * only days up to the session's own can be full already.
	 */
	private @Nullable Integer leftOfWeek(LocalDate day, Position.Return back, RuleSet.Stage stage) {
		Integer week = this.usual.weekMinutes();
		LocalDate since = back.since();
		if (week == null || since == null) {
			return null;
		}
		LocalDate from = day.minusDays(WEEK - 1L);
		int run = this.runs.stream()
			.filter((done) -> !done.day().isBefore(from) && !done.day().isBefore(since) && !done.day().isAfter(day))
			.mapToInt(DoneRun::minutes)
			.sum();
		return (int) Math.floor(stage.volumeShare() * week) - run;
	}

	private boolean hardAround(LocalDate day) {
		return this.runs.stream()
			.anyMatch((run) -> run.isHard() && !run.day().isBefore(day.minusDays(1))
					&& !run.day().isAfter(day.plusDays(1)));
	}

	private boolean isFirstHardAfterLong(Position.Return back) {
		LocalDate onset = this.position.onset();
		boolean longAway = onset != null && onset.plusDays(back.longAwayDays()).isBefore(back.stageSince());
		return longAway
				&& this.runs.stream().noneMatch((run) -> !run.day().isBefore(back.stageSince()) && run.isHard());
	}

	/**
	 * Half the repeats of each block, at least one; a block without repeats half as long.
	 */
	private static PlannedSession halved(PlannedSession session) {
		return session.with(session.parts().stream().map(Modification::halved).toList());
	}

	private static Part halved(Part part) {
		if (part.intensity().compareTo(Intensity.STRIDES) <= 0) {
			return part;
		}
		if (part.repeats() > 1) {
			return new Part(part.role(), part.repeats() / 2, part.metres(), part.seconds(), part.intensity(),
					part.recoverySeconds());
		}
		Integer metres = part.metres();
		return new Part(part.role(), 1, (metres == null) ? null : Integer.valueOf(Math.max(1, metres / 2)),
				Math.max(1, part.seconds() / 2), part.intensity(), 0);
	}

	private ModifiedSession easy(PlannedSession session, int most, List<Message> reasons,
			RuleSet.@Nullable Stage stage) {
		Version version = (session.hardest() == Intensity.EASY && most < session.minutes()) ? Version.SHORTENED
				: Version.EASY;
		return made(session, version, session.with(List.of(easyPart(Math.min(most, session.minutes())))), reasons,
				stage);
	}

	private ModifiedSession strides(PlannedSession session, int most, List<Message> reasons, RuleSet.Stage stage) {
		int minutes = Math.min(most, session.minutes());
		int repeats = Math.min(MOST_STRIDES, session.secondsAboveEasy() / STRIDE_SECONDS);
		int needed = repeats * (STRIDE_SECONDS + STRIDE_RECOVERY);
		if (repeats < LEAST_STRIDES || needed > minutes * SECONDS / 2) {
			return easy(session, most, reasons, stage);
		}
		int before = minutes * SECONDS - needed;
		Part strides = new Part(Part.Role.BLOCK, repeats, null, STRIDE_SECONDS, Intensity.STRIDES, STRIDE_RECOVERY);
		Part after = Part.of(Part.Role.COOL_DOWN, STRIDE_RECOVERY, Intensity.EASY);
		return made(session, Version.STRIDES,
				session.with(List.of(Part.of(Part.Role.WARM_UP, before, Intensity.EASY), strides, after)), reasons,
				stage);
	}

	/** An easy session cut to some minutes: its strides go first. */
	private static PlannedSession shortened(PlannedSession session, int most) {
		return session.with(List.of(easyPart(most)));
	}

	private static Part easyPart(int minutes) {
		return Part.of(Part.Role.BLOCK, minutes * SECONDS, Intensity.EASY);
	}

	private ModifiedSession notAssessed(PlannedSession session, int most, List<Message> reasons,
			RuleSet.@Nullable Stage stage) {
		List<Message> all = new ArrayList<>(List.of(Message.of("session.why.not-assessed")));
		all.addAll(reasons);
		return made(session, Version.NOT_ASSESSED, session.with(List.of(easyPart(Math.min(most, session.minutes())))),
				all, stage);
	}

	private static ModifiedSession asProgrammed(PlannedSession session) {
		return new ModifiedSession(session, Version.AS_PROGRAMMED, session, List.of(), null, null);
	}

	private static ModifiedSession nothing(PlannedSession session, Version version, Message why) {
		return new ModifiedSession(session, version, null, List.of(why), null, null);
	}

	private static ModifiedSession made(PlannedSession session, Version version, PlannedSession instead,
			List<Message> reasons, RuleSet.@Nullable Stage stage) {
		return new ModifiedSession(session, version, instead, reasons, (stage == null) ? null : stage.effortCeiling(),
				(stage == null) ? null : stage.heartRateCeiling());
	}

	private static List<Message> reasons(String code, Object... arguments) {
		return new ArrayList<>(List.of(Message.of(code, arguments)));
	}

}
