package org.fallow.contact;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.access.PersonId;
import org.fallow.contact.core.KnownAthlete;
import org.fallow.contact.core.Mark;
import org.fallow.contact.core.MatterKey;
import org.fallow.contact.core.Need;
import org.fallow.contact.core.Worklist;
import org.fallow.entry.Absence;
import org.fallow.entry.Absences;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.illness.StageChange;
import org.fallow.illness.view.Said;
import org.fallow.rules.Clearance;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.OfAthletes;
import org.fallow.team.Squad;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who of a coach's athletes needs a word, from what was decided and entered anyway.
 */
@Service
@Transactional
public class Needs {

	/** Days for which what a mark took off the list can still be looked at. */
	public static final int OFF_DAYS = 14;

	/** How far back it is asked since when something has held. */
	private static final int LOOK_BACK_DAYS = 400;

	/** Two zones can be two dates apart. */
	private static final int ZONES_APART_DAYS = 2;

	private static final Set<String> TOLD = Set.of("advised.stalled", "advised.drift", "advised.slip",
			"advised.slip-waits");

	private final Assessments assessments;

	private final Absences absences;

	private final MarkRows marks;

	private final Squad squad;

	private final AthleteAccess access;

	private final Recording recording;

	Needs(Assessments assessments, Absences absences, MarkRows marks, Squad squad, AthleteAccess access,
			Recording recording) {
		this.assessments = assessments;
		this.absences = absences;
		this.marks = marks;
		this.squad = squad;
		this.access = access;
		this.recording = recording;
	}

	/**
	 * The worklist of the present coach.
	 * @param ids whose; athletes of the coach
	 * @param day up to which silent days are decided first
	 * @return what is on the list and what was lately taken off it
	 */
	@OfAthletes
	public NeedLines lines(Collection<PersonId> ids, LocalDate day) {
		List<Athlete> athletes = athletes(ids);
		List<Need> needs = derived(athletes, day);
		Map<MatterKey, Mark> last = this.marks.last(ids);
		Map<PersonId, String> names = athletes.stream().collect(Collectors.toMap(Athlete::id, Athlete::name));
		ZoneId zone = this.squad.zoneOf(this.access.person()).orElse(ZoneOffset.UTC);
		List<NeedLine> open = Worklist.open(needs, last)
			.stream()
			.map((need) -> line(need.key(), need, last.get(need.key()), names, zone))
			.toList();
		Map<MatterKey, Need> standing = new LinkedHashMap<>();
		needs.forEach((need) -> standing.put(need.key(), need));
		Instant from = this.recording.now().minus(OFF_DAYS, ChronoUnit.DAYS);
		List<NeedLine> off = last.values()
			.stream()
			.filter((mark) -> Worklist.isOff(mark.key(), mark) && mark.at().isAfter(from))
			.sorted(Comparator.comparing(Mark::at).reversed())
			.map((mark) -> line(mark.key(), standing.get(mark.key()), mark, names, zone))
			.toList();
		return new NeedLines(open, off);
	}

	/**
	 * All that needs a word, marked or not.
	 * @param ids whose; athletes of the present coach
	 * @param day up to which silent days are decided first
	 * @return the most urgent first
	 */
	@OfAthletes
	public List<Need> of(Collection<PersonId> ids, LocalDate day) {
		return derived(athletes(ids), day);
	}

	private List<Athlete> athletes(Collection<PersonId> ids) {
		Set<PersonId> wanted = Set.copyOf(ids);
		return this.access.athletes().stream().filter((one) -> wanted.contains(one.id())).toList();
	}

	private static NeedLine line(MatterKey key, @Nullable Need need, @Nullable Mark mark, Map<PersonId, String> names,
			ZoneId zone) {
		return new NeedLine(key, names.getOrDefault(key.athlete(), ""), (need == null) ? null : Said.of(need.why()),
				mark, (mark == null) ? null : LocalDateTime.ofInstant(mark.at(), zone), Submission.newRequestId());
	}

	private List<Need> derived(List<Athlete> athletes, LocalDate day) {
		List<PersonId> ids = athletes.stream().map(Athlete::id).toList();
		if (ids.isEmpty()) {
			return List.of();
		}
		this.assessments.bringUpTo(ids, day);
		Map<PersonId, AthleteStatus> status = this.assessments.status(ids);
		Map<PersonId, List<StageChange>> changes = this.assessments
			.changes(ids, day.minusDays(Worklist.NEWS_DAYS + ZONES_APART_DAYS))
			.stream()
			.collect(Collectors.groupingBy(StageChange::athlete));
		Map<PersonId, List<AssessedDay>> lasting = lasting(status.values());
		Map<UUID, List<Absence>> away = this.absences.of(ids);
		List<KnownAthlete> known = new ArrayList<>();
		for (Athlete athlete : athletes) {
			AthleteStatus standing = status.get(athlete.id());
			known.add(new KnownAthlete(athlete.id(), this.recording.today(athlete), athlete.since(),
					(standing == null) ? null : standing.lastEntry(),
					lasting.getOrDefault(athlete.id(), latest(standing)), changes.getOrDefault(athlete.id(), List.of()),
					away.getOrDefault(athlete.id().value(), List.of())));
		}
		return Worklist.of(known);
	}

	private static List<AssessedDay> latest(@Nullable AthleteStatus status) {
		AssessedDay latest = (status == null) ? null : status.latest();
		return (latest == null) ? List.of() : List.of(latest);
	}

	/** The days of those of whom it is asked since when something has held. */
	private Map<PersonId, List<AssessedDay>> lasting(Collection<AthleteStatus> all) {
		List<PersonId> ids = all.stream()
			.filter((one) -> latest(one).stream().anyMatch(Needs::lasts))
			.map(AthleteStatus::athlete)
			.toList();
		return ids.isEmpty() ? Map.of() : this.assessments.latest(ids, LOOK_BACK_DAYS);
	}

	private static boolean lasts(AssessedDay day) {
		return day.holding() || day.clearance() == Clearance.REFER
				|| day.notices().stream().anyMatch((notice) -> TOLD.contains(notice.code()));
	}

}
