package org.fallow.board.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.rules.Clearance;
import org.fallow.team.Athlete;
import org.fallow.training.Plan;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Position;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.Version;
import org.jspecify.annotations.Nullable;

/**
 * A group's week on one page.
 *
 * @param name of the group
 * @param athletes how many share with the coach
 * @param referred who sees a clinician first
 * @param ill who is ill, with the first day
 * @param returning who is on the way back
 * @param away who is away
 * @param quiet who has not been heard of
 * @param cluster how many fell ill within seven days, where three or more did; else 0
 * @param keySessions the coming key sessions with how many run which version
 * @param nextWeek the programme of the week after
 */
public record GroupBrief(String name, int athletes, List<Line> referred, List<Line> ill, List<Line> returning,
		List<Line> away, List<Line> quiet, long cluster, List<KeySession> keySessions, List<Programmed> nextWeek) {

	/** So many ill within so many days are told as a cluster (own, no source). */
	static final int CLUSTER = 3;

	static final int CLUSTER_DAYS = 7;

	/** Mornings without an entry after which somebody has gone quiet. */
	static final int QUIET = 3;

	/** What a brief is made from. */
	record Facts(LocalDate today, Map<PersonId, Plan> plans, Map<UUID, LocalDate> lastEntries,
			Map<LocalDate, ProgrammeWeek> weeks) {
	}

	static GroupBrief of(String name, List<Athlete> athletes, Facts facts) {
		List<Line> referred = new ArrayList<>();
		List<Line> ill = new ArrayList<>();
		List<Line> returning = new ArrayList<>();
		List<Line> away = new ArrayList<>();
		List<Line> quiet = new ArrayList<>();
		for (Athlete athlete : athletes) {
			Position position = Objects.requireNonNull(facts.plans().get(athlete.id())).position();
			Position.Return back = position.back();
			Line line = new Line(athlete.id().value(), athlete.name(), (back == null) ? null : back.stage(),
					position.onset(), position.awayUntil(), facts.lastEntries().get(athlete.id().value()));
			if (position.holding() || position.clearance() == Clearance.REFER) {
				referred.add(line);
			}
			else if (back != null) {
				((back.stage() == 0) ? ill : returning).add(line);
			}
			if (position.awayUntil() != null) {
				away.add(line);
			}
			else if (isQuiet(line.lastEntry(), athlete, facts.today())) {
				quiet.add(line);
			}
		}
		returning.sort(Comparator.comparing((Line line) -> Objects.requireNonNullElse(line.stage(), 0)));
		return new GroupBrief(name, athletes.size(), referred, ill, returning, away, quiet, cluster(athletes, facts),
				keySessions(athletes, facts), nextWeek(facts));
	}

	private static boolean isQuiet(@Nullable LocalDate last, Athlete athlete, LocalDate today) {
		return Objects.requireNonNullElse(last, athlete.since()).isBefore(today.minusDays(QUIET - 1L));
	}

	private static long cluster(List<Athlete> athletes, Facts facts) {
		long fell = athletes.stream()
			.map((athlete) -> Objects.requireNonNull(facts.plans().get(athlete.id())).position())
			.filter((position) -> position.back() != null && position.onset() != null
					&& position.onset().isAfter(facts.today().minusDays(CLUSTER_DAYS)))
			.count();
		return (fell >= CLUSTER) ? fell : 0;
	}

	private static List<KeySession> keySessions(List<Athlete> athletes, Facts facts) {
		LocalDate monday = monday(facts.today());
		ProgrammeWeek week = facts.weeks().get(monday);
		return (week == null) ? List.of()
				: week.sessions()
					.stream()
					.filter((session) -> session.kind().isKey() && !session.day().isBefore(facts.today()))
					.map((session) -> keySession(session, athletes, facts))
					.toList();
	}

	private static KeySession keySession(PlannedSession session, List<Athlete> athletes, Facts facts) {
		List<RollLine> lines = athletes.stream()
			.flatMap((athlete) -> Objects.requireNonNull(facts.plans().get(athlete.id())).sessions().stream())
			.filter((one) -> one.programmed().key().equals(session.key()))
			.map(GroupBrief::line)
			.toList();
		return new KeySession(session,
				new RollSession("", session, PartsText.write(session.parts()), session.minutes(), lines).counts());
	}

	private static RollLine line(ModifiedSession session) {
		return new RollLine(new UUID(0, 0), "", session.version(), session.minutes(), null, null, 0, List.of());
	}

	private static List<Programmed> nextWeek(Facts facts) {
		ProgrammeWeek week = facts.weeks().get(monday(facts.today()).plusWeeks(1));
		return (week == null) ? List.of()
				: week.sessions()
					.stream()
					.map((session) -> new Programmed(session, PartsText.write(session.parts())))
					.toList();
	}

	static LocalDate monday(LocalDate day) {
		return day.minusDays(day.getDayOfWeek().getValue() - 1L);
	}

	/**
	 * Somebody in the brief.
	 *
	 * @param athleteId whose page tells more
	 * @param name the athlete's
	 * @param stage 0 while ill, else the stage's number; absent without a return
	 * @param onset first day of the illness; absent if there was none of late
	 * @param awayUntil last day of an absence; absent if none
	 * @param lastEntry day of the latest morning entered; absent before the first
	 */
	public record Line(UUID athleteId, String name, @Nullable Integer stage, @Nullable LocalDate onset,
			@Nullable LocalDate awayUntil, @Nullable LocalDate lastEntry) {
	}

	/**
	 * A key session to come.
	 *
	 * @param session as programmed
	 * @param counts how many run which version
	 */
	public record KeySession(PlannedSession session, List<RollSession.Count> counts) {
	}

	/**
	 * A session of the week after.
	 *
	 * @param session as programmed
	 * @param parts in one line
	 */
	public record Programmed(PlannedSession session, String parts) {
	}

}
