package org.fallow.illness;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Words;
import org.fallow.illness.core.Ceilings;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.IllnessEvent.Stricter;
import org.fallow.illness.core.Spoken;
import org.fallow.rules.Clearance;
import org.fallow.team.ByCoach;
import org.fallow.team.ByFullCoach;
import org.fallow.team.OfAthlete;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Ceilings of coaches: stricter than the rules, to a last day, and lifted by name. A
 * deputy sets them; lifting one loosens, so a deputy does not.
 */
@Service
@Transactional
public class CeilingFacts {

	private final EventStore store;

	private final EventRows rows;

	CeilingFacts(EventStore store, EventRows rows) {
		this.store = store;
		this.rows = rows;
	}

	/**
	 * Is stricter than the rules.
	 * @param id whose
	 * @param stricter the most allowed, and how long
	 * @param submission who sends it, and which sending it is
	 * @return stored, or refused
	 */
	@ByCoach
	public Saved stricter(PersonId id, NewStricter stricter, Submission submission) {
		return this.store.add(id, submission, stricter.from(), null,
				(problems, athlete) -> check(problems, stricter,
						this.store.earliest(athlete, stricter.from(), submission),
						this.store.rules(athlete).words().ceilingDays()),
				(recorded) -> new Stricter(stricter.from(), stricter.until(), recorded, stricter.ceiling(),
						stricter.reason(), submission.requestId().toString(), stricter.word()));
	}

	private static void check(List<Problem> problems, NewStricter stricter, LocalDate earliest, int days) {
		LocalDate until = stricter.until();
		LocalDate last = earliest.plusDays(days);
		if (stricter.from().isBefore(earliest)) {
			problems.add(Problem.of("from", "stricter.back-dated", earliest));
		}
		if (until.isBefore(stricter.from())) {
			problems.add(Problem.of("until", "stricter.until.past", until, stricter.from(), last));
		}
		if (until.isAfter(last)) {
			problems.add(Problem.of("until", "stricter.until.late", until, last, days));
		}
		if (stricter.ceiling() != Clearance.REST && stricter.ceiling() != Clearance.EASY_ONLY) {
			problems.add(Problem.of("ceiling", "stricter.ceiling"));
		}
		Words.require(problems, "reason", stricter.reason());
		who(problems, stricter.word());
	}

	private static void who(List<Problem> problems, @Nullable Spoken word) {
		if (word != null) {
			Words.require(problems, "who", word.who());
		}
	}

	/**
	 * Lifts one ceiling from now on, and sets another in its place if there is one.
	 * @param id whose
	 * @param key names the ceiling
	 * @param reason why
	 * @param word the clinician's or guardian's word it is lifted on; absent where it is
	 * the coach's own
	 * @param instead the ceiling in its place; absent where none is
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused if there is no such ceiling, or without the word it needs
	 */
	@ByFullCoach
	public Saved lift(PersonId id, String key, String reason, @Nullable Spoken word, @Nullable NewStricter instead,
			Submission submission) {
		LocalDate today = this.store.today(id);
		Saved saved = this.store.add(id, submission, today, null, (problems, athlete) -> {
			Words.require(problems, "reason", reason);
			who(problems, word);
			nameable(problems, holding(id, today), key, word);
			if (instead != null) {
				check(problems, instead, today, this.store.rules(athlete).words().ceilingDays());
			}
		}, (recorded) -> new IllnessEvent.Lifted(today, recorded, key, reason, word));
		if (saved instanceof Saved.Stored && instead != null) {
			byte[] name = (submission.requestId() + "instead").getBytes(StandardCharsets.UTF_8);
			stricter(id, instead, new Submission(submission.actor(), submission.role(), submission.source(),
					UUID.nameUUIDFromBytes(name)));
		}
		return saved;
	}

	private static void nameable(List<Problem> problems, List<Stricter> holding, String key, @Nullable Spoken word) {
		Stricter named = holding.stream().filter((one) -> one.key().equals(key)).findFirst().orElse(null);
		Spoken needed = (named == null) ? null : named.word();
		if (named == null) {
			problems.add(Problem.of("names", "lift.unknown"));
		}
		else if (needed != null && (word == null || word.by() != needed.by())) {
			problems.add(Problem.of("wordBy", "lift.word." + needed.by()));
		}
	}

	private List<Stricter> holding(PersonId id, LocalDate today) {
		return Ceilings.from(this.rows.of(id).stream().map(StoredEvent::event).toList(), today);
	}

	/**
	 * The ceilings that hold on a day or later, as known by its end, with who set them.
	 * @param id whose
	 * @param day the day
	 * @return in the order recorded
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<StoredEvent> from(PersonId id, LocalDate day) {
		List<StoredEvent> known = this.rows.of(id)
			.stream()
			.filter((stored) -> !stored.event().recorded().on().isAfter(day))
			.toList();
		List<Stricter> holding = Ceilings.from(known.stream().map(StoredEvent::event).toList(), day);
		return known.stream()
			.filter((stored) -> stored.event() instanceof Stricter one && holding.contains(one))
			.toList();
	}

	/**
	 * Notes that an athlete said today to feel able or to eat normally.
	 * @param id whose
	 * @param said what was said
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused for under-18s and where nothing was said
	 */
	@ByFullCoach
	public Saved saidToday(PersonId id, NewSaid said, Submission submission) {
		LocalDate today = this.store.today(id);
		return this.store.add(id, submission, today, null, (problems, athlete) -> {
			Words.require(problems, "reason", said.reason());
			if (!said.able() && !said.eating()) {
				problems.add(Problem.of("reason", "said-today.nothing"));
			}
			if (athlete.isUnder18(today)) {
				problems.add(Problem.of("reason", "said-today.minor"));
			}
		}, (recorded) -> new IllnessEvent.SaidToday(today, recorded, said.able(), said.eating(), said.reason()));
	}

}
