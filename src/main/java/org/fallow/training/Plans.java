package org.fallow.training;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.access.PersonId;
import org.fallow.entry.Recording;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.OfAthlete;
import org.fallow.team.OfAthletes;
import org.fallow.team.Squad;
import org.fallow.training.core.DoneRun;
import org.fallow.training.core.Modification;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Position;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.training.core.Rejoin;
import org.fallow.training.core.UsualVolume;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What athletes do of their group's programme. Nothing of it is stored: it follows from
 * what is, so it is never behind. Of somebody in several groups the home group counts; of
 * somebody who left the team none.
 */
@Service
@Transactional
public class Plans {

	/** Most days ahead that are planned. */
	public static final int DAYS_AHEAD = 27;

	private static final int LOG_DAYS = 28;

	private static final int RACE_WEEKS_AHEAD = 26;

	private final AthleteAccess access;

	private final Squad squad;

	private final Recording recording;

	private final Assessments assessments;

	private final Programmes programmes;

	private final Backgrounds backgrounds;

	private final RuleSets ruleSets;

	Plans(AthleteAccess access, Squad squad, Recording recording, Assessments assessments, Programmes programmes,
			Backgrounds backgrounds, RuleSets ruleSets) {
		this.access = access;
		this.squad = squad;
		this.recording = recording;
		this.assessments = assessments;
		this.programmes = programmes;
		this.backgrounds = backgrounds;
		this.ruleSets = ruleSets;
	}

	/**
	 * The coming sessions of an athlete, from the athlete's today on.
	 * @param id whose
	 * @param to last day, inclusive; at most {@link #DAYS_AHEAD} days ahead are planned
	 * @return the plan; without sessions where the programme has none
	 */
	@OfAthlete
	public Plan of(PersonId id, LocalDate to) {
		return Objects.requireNonNull(of(List.of(id), to).get(id));
	}

	/**
	 * The coming sessions of several athletes, each from the own today on.
	 * @param ids whose
	 * @param to last day, inclusive; at most {@link #DAYS_AHEAD} days ahead are planned
	 * @return by athlete
	 */
	@OfAthletes
	public Map<PersonId, Plan> of(Collection<PersonId> ids, LocalDate to) {
		this.assessments.bringUpTo(ids, to);
		Map<PersonId, AssessedDay> latest = latest(ids);
		Map<PersonId, Athlete> athletes = new LinkedHashMap<>();
		this.squad.find(ids).forEach((athlete) -> athletes.put(athlete.id(), athlete));
		Map<PersonId, Background> known = known(athletes.values(), latest);
		Map<UUID, RuleBook> books = new HashMap<>();
		Map<UUID, GroupWeeks> weeks = new HashMap<>();
		LocalDate first = first(known.values());
		Map<PersonId, Plan> plans = new LinkedHashMap<>();
		for (PersonId id : ids) {
			Background own = known.get(id);
			if (own == null) {
				throw new NoSuchAthlete(id);
			}
			RuleBook rules = books.computeIfAbsent(own.athlete().teamId(), this.ruleSets::bookOf);
			GroupWeeks programme = (own.athlete().groupId() == null) ? GroupWeeks.NONE
					: weeks.computeIfAbsent(own.athlete().groupId(), (group) -> weeks(group, first, to));
			plans.put(id, plan(own, latest.get(id), rules, programme, to));
		}
		return plans;
	}

	private Map<PersonId, AssessedDay> latest(Collection<PersonId> ids) {
		Map<PersonId, AssessedDay> latest = new HashMap<>();
		this.assessments.status(ids).forEach((id, status) -> {
			if (status.latest() != null) {
				latest.put(id, status.latest());
			}
		});
		return latest;
	}

	/** Asked for once for each date that it is where the athletes are: three at most. */
	private Map<PersonId, Background> known(Collection<Athlete> athletes, Map<PersonId, AssessedDay> latest) {
		Map<PersonId, Background> known = new HashMap<>();
		athletes.stream().collect(Collectors.groupingBy(this.recording::today)).forEach((today, some) -> {
			List<PersonId> inEpisode = some.stream().map(Athlete::id).filter((id) -> {
				AssessedDay day = latest.get(id);
				return day != null && day.inEpisode();
			}).toList();
			known.putAll(this.backgrounds.of(some, today, inEpisode));
		});
		return known;
	}

	/** From when on weeks are asked for, with two days to spare for zones that differ. */
	private static LocalDate first(Collection<Background> known) {
		return known.stream()
			.map((one) -> (one.episode() == null) ? one.today()
					: one.episode().firstOnset().minusDays(Backgrounds.DAYS_BACK))
			.min(LocalDate::compareTo)
			.orElse(LocalDate.EPOCH)
			.minusDays(2);
	}

	private GroupWeeks weeks(UUID group, LocalDate first, LocalDate to) {
		if (!this.access.maySeeGroup(group)) {
			return GroupWeeks.NONE;
		}
		LocalDate races = LocalDate.ofInstant(this.recording.now(), ZoneOffset.UTC)
			.plusDays(1)
			.plusWeeks(RACE_WEEKS_AHEAD);
		return new GroupWeeks(this.programmes.weeks(group, first, to.isAfter(races) ? to : races));
	}

	private static List<PlannedSession> sessions(GroupWeeks programme, LocalDate today, LocalDate to) {
		LocalDate last = today.plusDays(DAYS_AHEAD);
		return programme.of(today, to)
			.stream()
			.map(ProgrammeWeek::sessions)
			.flatMap(List::stream)
			.filter((session) -> !session.day().isBefore(today) && !session.day().isAfter(to)
					&& !session.day().isAfter(last))
			.toList();
	}

	private static Plan plan(Background known, @Nullable AssessedDay latest, RuleBook rules, GroupWeeks programme,
			LocalDate to) {
		LocalDate today = known.today();
		Position position = Standings.position(known, latest, rules);
		boolean back = position.back() != null;
		UsualVolume usual = back ? UsualVolumes.of(known, position, programme) : UsualVolume.unknown();
		List<DoneRun> runs = Standings.runs(known, back ? today.minusDays(LOG_DAYS) : today, today);
		List<DoneRun> done = back ? runs : List.of();
		int ranToday = runs.stream().filter((run) -> run.day().equals(today)).mapToInt(DoneRun::minutes).sum();
		List<PlannedSession> sessions = sessions(programme, today, to);
		return new Plan(known.athlete().id(), position, usual, Modification.of(sessions, position, usual, done),
				Standings.ceilings(known), rejoin(programme, position, latest), ranToday);
	}

	private static @Nullable Rejoin rejoin(GroupWeeks programme, Position position, @Nullable AssessedDay latest) {
		LocalDate onset = position.onset();
		if (position.back() == null || latest == null || onset == null) {
			return null;
		}
		List<ProgrammeWeek> weeks = programme.of(onset, position.today().plusWeeks(RACE_WEEKS_AHEAD));
		return Rejoin.of(position, latest.nextGateEarliest(), weeks).orElse(null);
	}

}
