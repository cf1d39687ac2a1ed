package org.fallow.entry;

import org.fallow.team.OfAthlete;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.team.Athlete;
import org.fallow.team.Role;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * The mornings of athletes. Entries are only ever added: a correction is a further
 * revision of its day. Saving assesses in the same transaction.
 */
@Service
@Transactional
public class Mornings {

	private final MorningRows rows;

	private final Squad squad;

	private final Recording recording;

	private final AthleteLock lock;

	private final AthleteAccess access;

	private final ApplicationEventPublisher events;

	Mornings(MorningRows rows, Squad squad, Recording recording, AthleteLock lock, AthleteAccess access,
			ApplicationEventPublisher events) {
		this.rows = rows;
		this.squad = squad;
		this.recording = recording;
		this.lock = lock;
		this.access = access;
		this.events = events;
	}

	/**
	 * Stores a morning, or a correction of one.
	 * @param id whose
	 * @param morning what was entered
	 * @param submission who sends it, and which sending it is
	 * @return stored with its revision; already changed if the day has a newer revision
	 * than the morning was built on, or if this sending stored something else before (a
	 * page gone back to and filled in differently); or refused
	 */
	@OfAthlete
	public Saved save(PersonId id, NewMorning morning, Submission submission) {
		this.lock.lock(id);
		Athlete athlete = this.squad.athlete(id);
		List<Problem> problems = MorningCheck.of(morning, this.recording.today(athlete), submission.source());
		if (!problems.isEmpty()) {
			return again(id, morning, submission).orElseGet(() -> new Saved.Refused(problems));
		}
		StoredMorning stored = stored(athlete, morning, morning.basedOn() + 1, submission);
		if (!this.rows.insertNext(athlete, stored, submission.role(), this.recording.now())) {
			return again(id, morning, submission).orElseGet(() -> new Saved.AlreadyChanged(revision(id, morning)));
		}
		tell(athlete, List.of(stored), submission);
		return stored(stored, false);
	}

	/** What this very sending stored before. */
	private Optional<Saved> again(PersonId id, NewMorning morning, Submission submission) {
		return this.rows.ofRequest(id, submission.requestId())
			.filter((before) -> morning.rounded().says(before))
			.map((before) -> stored(before, true));
	}

	private int revision(PersonId id, NewMorning morning) {
		return this.rows.latest(id, morning.day()).map(StoredMorning::revision).orElse(0);
	}

	/**
	 * Takes in the mornings of a file for one athlete, all at once. A morning equal to
	 * the effective one changes nothing; one that corrects an earlier import is stored as
	 * a further revision; one that somebody entered by hand is never replaced.
	 * @param id whose
	 * @param mornings in the order of the file; {@code basedOn} is not looked at
	 * @param actor the coach who sent the file
	 * @return for each morning what came of it: stored ({@code again} where nothing
	 * changed), already changed (entered by hand) or refused
	 */
	@OfAthlete
	public List<Saved> takeIn(PersonId id, List<NewMorning> mornings, PersonId actor) {
		this.rows.about(id);
		this.lock.lock(id);
		Athlete athlete = this.squad.athlete(id);
		LocalDate today = this.recording.today(athlete);
		Map<LocalDate, StoredMorning> effective = new TreeMap<>();
		span(mornings).ifPresent(
				(span) -> this.rows.of(id, span[0], span[1]).forEach((stored) -> effective.put(stored.day(), stored)));
		List<StoredMorning> added = new ArrayList<>();
		List<Saved> outcomes = new ArrayList<>();
		for (NewMorning morning : mornings) {
			outcomes.add(takeIn(athlete, morning.rounded(), actor, today, effective, added));
		}
		if (!added.isEmpty()) {
			this.rows.insert(athlete, added, Role.COACH, this.recording.now());
			tell(athlete, added, Submission.imported(actor, id.value()));
		}
		return outcomes;
	}

	private Saved takeIn(Athlete athlete, NewMorning morning, PersonId actor, LocalDate today,
			Map<LocalDate, StoredMorning> effective, List<StoredMorning> added) {
		List<Problem> problems = MorningCheck.of(morning, today, Source.IMPORT);
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		StoredMorning before = effective.get(morning.day());
		if (before != null && morning.says(before)) {
			return stored(before, true);
		}
		if (before != null && before.source() != Source.IMPORT) {
			return new Saved.AlreadyChanged(before.revision());
		}
		int revision = (before == null) ? 1 : before.revision() + 1;
		UUID request = morning.requestId(revision);
		StoredMorning stored = stored(athlete, morning, revision, Submission.imported(actor, request));
		effective.put(stored.day(), stored);
		added.add(stored);
		return stored(stored, false);
	}

	/**
	 * The effective entry of a day.
	 * @param athlete whose
	 * @param day the morning
	 * @return the revision recorded last; where the person was entered more than once,
	 * what is safer in all entries, with the own revision, 0 without one; empty without
	 * an entry
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Optional<StoredMorning> latest(PersonId athlete, LocalDate day) {
		List<StoredMorning> all = this.rows.ofAll(athlete, day, day);
		return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
	}

	/**
	 * All revisions of some days.
	 * @param athlete whose
	 * @param from first day, inclusive
	 * @param to last day, inclusive
	 * @return by day, then by revision
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<StoredMorning> of(PersonId athlete, LocalDate from, LocalDate to) {
		return this.rows.ofAll(athlete, from, to);
	}

	/**
	 * The latest morning an athlete entered.
	 * @param athlete whose
	 * @return its day; empty before the first
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Optional<LocalDate> lastDay(PersonId athlete) {
		return this.rows.lastDay(athlete);
	}

	/**
	 * The first of mornings without an entry about which a morning's entry is still asked
	 * whether the athlete was ill meanwhile.
	 * @param athlete whose
	 * @param day the morning
	 * @param silentMornings mornings without an entry, running, from which on it is asked
	 * @return the day; empty where nothing is asked, or nothing any more
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public Optional<LocalDate> silentBefore(PersonId athlete, LocalDate day, int silentMornings) {
		LocalDate first = null;
		LocalDate next = day;
		for (MorningRows.Answered entered : this.rows.answered(athlete, day)) {
			boolean before = entered.day().isBefore(day);
			boolean silent = next.toEpochDay() - entered.day().toEpochDay() > silentMornings;
			first = (before && silent) ? entered.day().plusDays(1) : first;
			next = entered.day();
			if (entered.answered()) {
				break;
			}
		}
		return Optional.ofNullable(first);
	}

	private StoredMorning stored(Athlete athlete, NewMorning morning, int revision, Submission submission) {
		NewMorning rounded = morning.rounded();
		Recorded recorded = this.recording.recorded(athlete, rounded.day(), rounded.recordedOn(), submission.source(),
				HistoryTime.MORNING);
		return new StoredMorning(rounded.entry(recorded), revision, rounded.rrMs(), submission.actor(),
				submission.source(), submission.requestId());
	}

	private void tell(Athlete athlete, List<StoredMorning> added, Submission submission) {
		this.access.changed(athlete,
				(submission.source() == Source.IMPORT) ? TraceSubject.MORNING_FILE : TraceSubject.MORNING);
		LocalDate from = added.stream()
			.map((stored) -> stored.entry().recorded().on())
			.min(Comparator.naturalOrder())
			.orElseThrow();
		this.events.publishEvent(new TimelineChanged(athlete, from));
	}

	private static Saved stored(StoredMorning morning, boolean again) {
		return new Saved.Stored(morning.day().toString(), morning.revision(), again);
	}

	private static Optional<LocalDate[]> span(List<NewMorning> mornings) {
		return mornings.stream()
			.map((morning) -> new LocalDate[] { morning.day(), morning.day() })
			.reduce((a, b) -> new LocalDate[] { a[0].isBefore(b[0]) ? a[0] : b[0], a[1].isAfter(b[1]) ? a[1] : b[1] });
	}

}
