package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.entry.AthleteLock;
import org.fallow.entry.Recorded;
import org.fallow.entry.Recording;
import org.fallow.entry.Saved;
import org.fallow.entry.TimelineChanged;
import org.fallow.illness.core.Carry;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.illness.core.State;
import org.fallow.rules.Clearance;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.ByFullCoach;
import org.fallow.team.EntrySetAside;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Makes two entries of one person one, and parts them again. No fact is touched: the days
 * of the entry that is kept are decided from the facts of both while the merge stands.
 * What was stricter in either on the day of the merge stands on until the usual gates, a
 * clinician's word or a coach's withdrawal end it.
 */
@Service
@Transactional
public class Merges {

	private static final Set<Decision.Kind> BACK = Set.of(Decision.Kind.OPENED, Decision.Kind.RELAPSE,
			Decision.Kind.BACK_BY_SYMPTOMS, Decision.Kind.BACK_BY_NUMBERS);

	private final MergeRows rows;

	private final MergeCheck check;

	private final CarriedRows carried;

	private final Replays replays;

	private final Assessments assessments;

	private final Squad squad;

	private final Recording recording;

	private final AthleteLock lock;

	private final AthleteAccess access;

	private final ApplicationEventPublisher events;

	Merges(MergeRows rows, MergeCheck check, CarriedRows carried, Replays replays, Assessments assessments, Squad squad,
			Recording recording, AthleteLock lock, AthleteAccess access, ApplicationEventPublisher events) {
		this.rows = rows;
		this.check = check;
		this.carried = carried;
		this.replays = replays;
		this.assessments = assessments;
		this.squad = squad;
		this.recording = recording;
		this.lock = lock;
		this.access = access;
		this.events = events;
	}

	/**
	 * Makes another entry part of this one.
	 * @param kept the entry that stays
	 * @param other the other entry of the same person, covered as fully
	 * @param reason why
	 * @param id names this sending: sent twice merges once
	 * @return stored, or refused with what stands against it
	 */
	@ByFullCoach
	public Saved merge(PersonId kept, PersonId other, String reason, UUID id) {
		Optional<PersonMerge> before = this.rows.find(id);
		if (before.isPresent()) {
			boolean same = before.get().kept().equals(kept) && before.get().other().equals(other);
			return same ? stored(id, true) : new Saved.Refused(List.of(Problem.of("other", "merge.sent")));
		}
		List<Problem> problems = this.check.before(kept, other, reason);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		lockBoth(kept, other);
		join(this.squad.athlete(kept), this.squad.athlete(other), reason.strip(), id);
		return stored(id, false);
	}

	private void join(Athlete kept, Athlete other, String reason, UUID id) {
		List<DayAssessment> parts = new ArrayList<>();
		today(kept).ifPresent(parts::add);
		today(other).ifPresent(parts::add);
		LocalDate first = this.replays.everything(other).firstDay();
		LocalDate today = this.recording.today(kept);
		this.access.changed(kept, TraceSubject.MERGE);
		this.access.changed(other, TraceSubject.MERGE);
		Recorded now = new Recorded(this.recording.now(), today);
		this.rows.insert(id, kept.id(), other.id(), this.access.person(), now, reason);
		this.rows.keepDays(id, false, kept.id(), first.isBefore(today) ? first : today);
		this.events.publishEvent(new EntrySetAside(other.id()));
		if (parts.isEmpty()) {
			return;
		}
		this.events.publishEvent(new TimelineChanged(kept, first.isBefore(today) ? first : today));
		carry(kept, parts, new CarriedRows.To(kept.id(), id, false, now));
	}

	/** What was stricter in a part, and then, if need be, a ceiling for the day. */
	private void carry(Athlete kept, List<DayAssessment> parts, CarriedRows.To to) {
		LocalDate today = to.recorded().on();
		StricterState stricter = StricterState.of(parts, decided(kept, today));
		stricter.holds().forEach((cause) -> this.carried.hold(to, cause));
		stricter.episodes().forEach((state) -> this.carried.episode(to, state));
		LocalDate slip = stricter.slip();
		if (slip != null) {
			this.carried.slip(to, slip);
		}
		if (stricter.owed()) {
			this.carried.report(to);
		}
		Clearance clinician = stricter.clinician();
		LocalDate until = stricter.clinicianUntil();
		if (clinician != null && until != null) {
			this.carried.clinicianCeiling(to, clinician, until.isBefore(today) ? today : until);
		}
		this.events.publishEvent(new TimelineChanged(kept, today));
		ceiling(kept, StricterState.ceiling(parts, decided(kept, today)), to);
	}

	private void ceiling(Athlete kept, @Nullable Clearance ceiling, CarriedRows.To to) {
		if (ceiling != null) {
			this.carried.ceilingOfTheDay(to, ceiling);
			this.events.publishEvent(new TimelineChanged(kept, to.recorded().on()));
		}
	}

	/**
	 * Parts two entries again, within thirty days: the days of each are decided from its
	 * own facts, those entered for the kept one since the merge among them. An illness
	 * that opened, or a step back, since the merge stands on.
	 * @param kept the entry that was kept
	 * @param id which merge
	 * @return stored, or refused with what stands against it
	 */
	@ByFullCoach
	public Saved undo(PersonId kept, UUID id) {
		PersonMerge merge = this.rows.find(id).filter((one) -> one.kept().equals(kept)).orElse(null);
		if (merge != null && !merge.stands()) {
			return stored(id, true);
		}
		List<Problem> problems = this.check.undo(merge, this.recording.now());
		if (merge == null || !problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		this.lock.lock(kept);
		part(this.squad.athlete(kept), merge);
		return stored(id, false);
	}

	private void part(Athlete kept, PersonMerge merge) {
		LocalDate today = this.recording.today(kept);
		DayAssessment union = today(kept).orElse(null);
		boolean wentBack = this.assessments.decisions(kept.id())
			.stream()
			.anyMatch((made) -> made.day().isAfter(merge.on()) && BACK.contains(made.decision().kind()));
		LocalDate from = this.replays.everything(kept).firstDay();
		this.rows.keepDays(merge.id(), true, kept.id(), LocalDate.EPOCH);
		Recorded now = new Recorded(this.recording.now(), today);
		this.rows.undo(merge.id(), this.access.person(), now);
		this.lock.lock(merge.other());
		LocalDate own = this.replays.everything(kept).firstDay();
		this.rows.removeDays(kept.id(), own.equals(LocalDate.MAX) ? null : own);
		if (!own.equals(LocalDate.MAX)) {
			this.events.publishEvent(new TimelineChanged(kept, from));
			if (union != null) {
				carryOn(kept, union, wentBack, new CarriedRows.To(kept.id(), merge.id(), true, now));
			}
		}
		Athlete other = this.squad.athlete(merge.other());
		this.access.changed(kept, TraceSubject.MERGE_UNDONE);
		this.access.changed(other, TraceSubject.MERGE_UNDONE);
		this.assessments.bringUpTo(List.of(other.id()), this.recording.today(other));
	}

	private void carryOn(Athlete kept, DayAssessment union, boolean wentBack, CarriedRows.To to) {
		LocalDate today = to.recorded().on();
		DayAssessment own = decided(kept, today);
		State state = union.state();
		if (wentBack && state.episode() != null && Carry.isStricter(state.episode(), own.state().episode())) {
			this.carried.episode(to, state);
			this.events.publishEvent(new TimelineChanged(kept, today));
			own = decided(kept, today);
		}
		ceiling(kept, StricterState.ceilingByNumbers(union, own), to);
	}

	private Optional<DayAssessment> today(Athlete athlete) {
		LocalDate today = this.recording.today(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		return this.assessments.day(athlete.id(), today);
	}

	private DayAssessment decided(Athlete athlete, LocalDate day) {
		return this.assessments.day(athlete.id(), day).orElseThrow();
	}

	private void lockBoth(PersonId one, PersonId other) {
		boolean first = one.value().compareTo(other.value()) < 0;
		this.lock.lock(first ? one : other);
		this.lock.lock(first ? other : one);
	}

	private static Saved stored(UUID id, boolean again) {
		return new Saved.Stored(id.toString(), 1, again);
	}

	/**
	 * Merges of entries that the present person covers or is.
	 * @return newest first
	 */
	@Transactional(readOnly = true)
	public List<PersonMerge> all() {
		return this.rows.all();
	}

	/**
	 * A merge that the present person may read of.
	 * @param id which
	 * @return empty if there is none
	 */
	@Transactional(readOnly = true)
	public Optional<PersonMerge> find(UUID id) {
		return this.rows.find(id);
	}

	/**
	 * The standing merge that put an entry aside, if the present person may read of it.
	 * @param entry the entry
	 * @return empty if none did
	 */
	@Transactional(readOnly = true)
	public Optional<PersonMerge> thatPutAside(UUID entry) {
		return this.rows.partOf(new PersonId(entry));
	}

	/**
	 * What stands against parting two entries now.
	 * @param merge which merge
	 * @return empty if nothing does
	 */
	@Transactional(readOnly = true)
	public List<Problem> againstUndoing(PersonMerge merge) {
		return this.check.undo(merge, this.recording.now());
	}

	/**
	 * Days that had been decided otherwise.
	 * @param merge which merge
	 * @param most how many at most
	 * @return newest first
	 */
	@Transactional(readOnly = true)
	public List<ReplacedDay> replaced(PersonMerge merge, int most) {
		return this.rows.replaced(merge.id(), most);
	}

	/**
	 * The mornings of one entry by itself.
	 * @param entry the entry
	 * @return first, last and how many
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public EnteredMornings mornings(PersonId entry) {
		return this.rows.mornings(entry);
	}

	/**
	 * Merges, and ends of merges, that an athlete was not told of yet.
	 * @param athlete who
	 * @return oldest first
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<PersonMerge> unread(PersonId athlete) {
		return this.rows.unread(athlete);
	}

	/**
	 * Notes that an athlete has read of a merge as it stands.
	 * @param athlete who
	 * @param id which merge
	 * @return whether the athlete is of it
	 */
	@OfAthlete
	public boolean read(PersonId athlete, UUID id) {
		Optional<PersonMerge> merge = this.rows.find(id)
			.filter((one) -> one.kept().equals(athlete) || one.other().equals(athlete));
		merge.ifPresent((one) -> this.rows.read(one, athlete, this.recording.now()));
		return merge.isPresent();
	}

}
