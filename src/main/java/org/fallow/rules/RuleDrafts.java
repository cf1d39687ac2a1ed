package org.fallow.rules;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Drafts of rule sets: copied, changed within the bounds, adopted once. A draft of a team
 * that the person does not coach does not exist for that person.
 */
@Service
@Transactional
public class RuleDrafts {

	/** Longest reason, characters. */
	public static final int LONGEST_REASON = 2000;

	private static final int MOST_DAYS_AHEAD = 366;

	private final DraftRows rows;

	private final RuleSets ruleSets;

	private final Squad squad;

	private final Clock clock;

	private final Today today;

	RuleDrafts(DraftRows rows, RuleSets ruleSets, Squad squad, Clock clock, Today today) {
		this.rows = rows;
		this.ruleSets = ruleSets;
		this.squad = squad;
		this.clock = clock;
		this.today = today;
	}

	/**
	 * Copies a rule set to a draft.
	 * @param version what to copy
	 * @param coach who begins it
	 * @return the draft
	 */
	public RuleDraft start(RuleVersion version, PersonId coach) {
		coached(version.teamId(), coach, version.version());
		RuleDraft draft = new RuleDraft(Ids.next(), version.teamId(), version.version(), version.rules(),
				RuleDraft.State.OPEN, coach, now(), now(), 0);
		this.rows.insert(draft);
		return draft;
	}

	/**
	 * A draft that may be seen.
	 * @param id which
	 * @param coach who asks
	 * @return the draft, whatever became of it
	 * @throws NoSuchRules if there is none of this id in a team the person coaches
	 */
	@Transactional(readOnly = true)
	public RuleDraft of(UUID id, PersonId coach) {
		RuleDraft draft = this.rows.find(id).orElseThrow(() -> new NoSuchRules(id));
		coached(draft.teamId(), coach, id);
		return draft;
	}

	/**
	 * The drafts of a team that can still be changed.
	 * @param teamId the team; the caller has checked that it may be seen
	 * @return newest first
	 */
	@Transactional(readOnly = true)
	public List<RuleDraft> openOf(UUID teamId) {
		return this.rows.open(teamId);
	}

	/**
	 * Changes a draft, or nothing at all where anything is wrong.
	 * @param id which
	 * @param coach who changes it
	 * @param changes how often it had been changed when the person began
	 * @param rules the numbers as they shall stand
	 * @return what is wrong; empty if it is changed
	 */
	public List<Problem> change(UUID id, PersonId coach, int changes, RuleSet rules) {
		RuleDraft draft = locked(id, coach);
		List<Problem> problems = new ArrayList<>(whyNotOpen(draft));
		if (draft.changes() != changes) {
			problems.add(Problem.of("", "rules.draft.changed-elsewhere"));
		}
		problems.addAll(RuleBounds.check(rules));
		if (problems.isEmpty()) {
			this.rows.change(id, rules, now());
		}
		return problems;
	}

	/**
	 * Ends a draft without adopting it.
	 * @param id which
	 * @param coach who ends it
	 * @return what is wrong; empty if it is discarded
	 */
	public List<Problem> discard(UUID id, PersonId coach) {
		List<Problem> problems = whyNotOpen(locked(id, coach));
		if (problems.isEmpty()) {
			this.rows.end(id, RuleDraft.State.DISCARDED, now());
		}
		return problems;
	}

	/**
	 * Adopts a draft: it becomes the team's next version, from a day on, once.
	 * @param id which
	 * @param coach who adopts it
	 * @param day first day it decides
	 * @param reason why
	 * @return what is wrong; empty if it is adopted
	 */
	public List<Problem> adopt(UUID id, PersonId coach, LocalDate day, String reason) {
		RuleDraft draft = locked(id, coach);
		this.rows.lockTeam(draft.teamId());
		List<Problem> problems = new ArrayList<>(whyNotOpen(draft));
		if (problems.isEmpty()) {
			problems.addAll(whyNotAdopted(draft, day, reason));
		}
		if (problems.isEmpty()) {
			this.ruleSets.add(draft.teamId(), draft.rules(), day, now(), coach, reason.strip());
			this.rows.end(id, RuleDraft.State.ADOPTED, now());
		}
		return problems;
	}

	/**
	 * The earliest day a new rule set of a team can take effect: the day after the latest
	 * today of the team and of any of its athletes, for this morning may be decided
	 * already in the zone that is farthest ahead (the safer reading); never before one
	 * adopted earlier.
	 * @param teamId the team
	 * @return a civil day
	 */
	@Transactional(readOnly = true)
	public LocalDate earliestDay(UUID teamId) {
		Stream<LocalDate> todays = this.squad.athletesIn(teamId).stream().map(this.today::of);
		LocalDate latest = Stream.concat(todays, Stream.of(this.today.ofTeam(teamId)))
			.max(Comparator.naturalOrder())
			.orElseThrow();
		return this.ruleSets.versionsOf(teamId)
			.stream()
			.map(RuleVersion::effectiveFrom)
			.reduce(latest.plusDays(1), (one, other) -> one.isAfter(other) ? one : other);
	}

	private List<Problem> whyNotAdopted(RuleDraft draft, LocalDate day, String reason) {
		List<Problem> problems = new ArrayList<>();
		LocalDate earliest = earliestDay(draft.teamId());
		LocalDate latest = earliest.plusDays(MOST_DAYS_AHEAD);
		if (day.isBefore(earliest)) {
			problems.add(Problem.of("day", "rules.adopt.day.early", earliest));
		}
		if (day.isAfter(latest)) {
			problems.add(Problem.of("day", "rules.adopt.day.far", latest));
		}
		if (reason.isBlank() || reason.length() > LONGEST_REASON) {
			problems.add(Problem.of("reason", "rules.adopt.reason", LONGEST_REASON));
		}
		RuleVersion newest = this.ruleSets.versionsOf(draft.teamId()).get(0);
		if (newest.writtenAt().isAfter(draft.startedAt())) {
			problems.add(Problem.of("", "rules.adopt.overtaken", newest.version()));
		}
		if (newest.rules().equals(draft.rules())) {
			problems.add(Problem.of("", "rules.adopt.same", newest.version()));
		}
		problems.addAll(RuleBounds.check(draft.rules()));
		return problems;
	}

	private RuleDraft locked(UUID id, PersonId coach) {
		RuleDraft draft = this.rows.lock(id).orElseThrow(() -> new NoSuchRules(id));
		coached(draft.teamId(), coach, id);
		return draft;
	}

	private Team coached(UUID teamId, PersonId coach, Object asked) {
		return this.squad.teamsLedBy(coach)
			.stream()
			.filter((team) -> team.id().equals(teamId))
			.findFirst()
			.orElseThrow(() -> new NoSuchRules(asked));
	}

	private static List<Problem> whyNotOpen(RuleDraft draft) {
		return draft.isOpen() ? List.of() : List.of(Problem.of("", "rules.draft." + draft.state()));
	}

	private Instant now() {
		return this.clock.instant().truncatedTo(ChronoUnit.MICROS);
	}

}
