package org.fallow.contact.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

import org.fallow.entry.Absence;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.StageChange;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Who needs a word, the most urgent first: clinician first, new illnesses, ticks told to
 * be slips, steps back, examined red flags, stalled returns, gone quiet, slow drifts;
 * within a matter who has waited longest. Each is told from what was decided anyway;
 * nothing is decided here.
 */
public final class Worklist {

	/**
	 * Days, that of the event included, for which a new illness or a step back is news
	 * (own, no source).
	 */
	public static final int NEWS_DAYS = 7;

	/** Mornings without an entry after which somebody is quiet (own, no source). */
	public static final int QUIET = 3;

	/** The same in an open episode (own, no source). */
	public static final int QUIET_IN_EPISODE = 2;

	/**
	 * A drift that is not told for fewer days than these and comes back is the same one
	 * (own, no source): a baseline wavers about its bound.
	 */
	static final int SAME_DRIFT_DAYS = 7;

	private static final Set<Decision.Kind> STEPS_BACK = EnumSet.of(Decision.Kind.RELAPSE,
			Decision.Kind.BACK_BY_SYMPTOMS, Decision.Kind.BACK_BY_NUMBERS);

	private static final Comparator<Need> ORDER = Comparator.comparing((Need need) -> need.key().matter())
		.thenComparing((need) -> need.key().arose());

	private Worklist() {
	}

	/**
	 * All that needs a word, marked or not.
	 * @param athletes what is known of them
	 * @return the most urgent first; equals in the order of the athletes
	 */
	public static List<Need> of(Collection<KnownAthlete> athletes) {
		List<Need> needs = new ArrayList<>();
		for (KnownAthlete one : athletes) {
			refer(one).ifPresent(needs::add);
			newIllness(one).ifPresent(needs::add);
			slip(one).ifPresent(needs::add);
			stepBack(one).ifPresent(needs::add);
			told(one, Matter.EXAMINED, "advised.examined", 1).ifPresent(needs::add);
			stalled(one).ifPresent(needs::add);
			quiet(one).ifPresent(needs::add);
			drift(one).ifPresent(needs::add);
		}
		needs.sort(ORDER);
		return List.copyOf(needs);
	}

	/**
	 * What of it still stands on the list.
	 * @param needs all that needs a word
	 * @param marks the last mark of each matter
	 * @return the same order
	 */
	public static List<Need> open(List<Need> needs, Map<MatterKey, Mark> marks) {
		return needs.stream().filter((need) -> !isOff(need.key(), marks.get(need.key()))).toList();
	}

	/**
	 * Whether a mark takes a matter off the list. None takes a hold off: it stays until
	 * it has ended (the safer reading). A new illness is new until the first mark.
	 * @param key the matter
	 * @param mark its last mark; absent if there is none
	 * @return true if it is off
	 */
	public static boolean isOff(MatterKey key, @Nullable Mark mark) {
		return switch (key.matter()) {
			case REFER -> false;
			case NEW_ILLNESS -> mark != null;
			default -> mark != null && mark.state() == MarkState.DONE;
		};
	}

	private static Optional<Need> refer(KnownAthlete one) {
		Predicate<AssessedDay> refers = (day) -> day.holding() || day.clearance() == Clearance.REFER;
		return begun(one, refers, 1).map((since) -> {
			List<Message> reasons = latest(one).reasons();
			return need(one, Matter.REFER, since,
					reasons.isEmpty() ? Message.of("clearance.REFER.means") : reasons.get(0));
		});
	}

	private static Optional<Need> newIllness(KnownAthlete one) {
		return opened(one).filter((day) -> isNews(day, one)).map((day) -> {
			List<Message> reasons = latest(one).reasons();
			return need(one, Matter.NEW_ILLNESS, day,
					reasons.isEmpty() ? Message.of("decided.OPENED") : reasons.get(0));
		});
	}

	/** The last opening of the open episode that is known of late. */
	private static Optional<LocalDate> opened(KnownAthlete one) {
		return !one.inEpisode() ? Optional.empty()
				: one.changes()
					.stream()
					.filter((change) -> change.decision().kind() == Decision.Kind.OPENED)
					.map(StageChange::day)
					.max(Comparator.naturalOrder());
	}

	/** The last step back of the open episode; a later one is another matter. */
	private static Optional<Need> stepBack(KnownAthlete one) {
		LocalDate opened = opened(one).orElse(LocalDate.MIN);
		return !one.inEpisode() ? Optional.empty() : one.changes()
			.stream()
			.filter((change) -> STEPS_BACK.contains(change.decision().kind()))
			.filter((change) -> isNews(change.day(), one) && !change.day().isBefore(opened))
			.reduce((first, last) -> last)
			.map((change) -> need(one, Matter.STEP_BACK, change.day(), Message.of("decided." + change.decision().kind(),
					change.decision().fromStage(), change.decision().toStage())));
	}

	private static boolean isNews(LocalDate day, KnownAthlete one) {
		return day.isAfter(one.today().minusDays(NEWS_DAYS));
	}

	/** One that waits for a coach comes first: it can be accepted today only. */
	private static Optional<Need> slip(KnownAthlete one) {
		return told(one, Matter.SLIP, "advised.slip-waits", 1).or(() -> told(one, Matter.SLIP, "advised.slip", 1));
	}

	private static Optional<Need> stalled(KnownAthlete one) {
		return told(one, Matter.STALLED, "advised.stalled", 1);
	}

	private static Optional<Need> drift(KnownAthlete one) {
		return told(one, Matter.DRIFT, "advised.drift", SAME_DRIFT_DAYS);
	}

	private static Optional<Need> told(KnownAthlete one, Matter matter, String notice, int apart) {
		return begun(one, (day) -> notice(day, notice).isPresent(), apart)
			.flatMap((since) -> notice(latest(one), notice).map((said) -> need(one, matter, since, said)));
	}

	private static Optional<Message> notice(AssessedDay day, String code) {
		return day.notices().stream().filter((notice) -> notice.code().equals(code)).findFirst();
	}

	/**
	 * Since when something holds that holds on the latest day.
	 * @param apart fewer days than these without it do not end it
	 */
	private static Optional<LocalDate> begun(KnownAthlete one, Predicate<AssessedDay> holds, int apart) {
		AssessedDay latest = one.latest();
		if (latest == null || !holds.test(latest)) {
			return Optional.empty();
		}
		LocalDate since = latest.day();
		for (int at = one.days().size() - 1; at >= 0; at--) {
			AssessedDay day = one.days().get(at);
			if (day.day().isBefore(since.minusDays(apart))) {
				break;
			}
			since = holds.test(day) ? day.day() : since;
		}
		return Optional.of(since);
	}

	/**
	 * Mornings are missed from the day after the latest entry on, today's among them, or
	 * from the day after an absence if that ended later. Who is away is not quiet.
	 */
	private static Optional<Need> quiet(KnownAthlete one) {
		LocalDate today = one.today();
		if (one.absences().stream().anyMatch((absence) -> absence.covers(today))) {
			return Optional.empty();
		}
		LocalDate heard = (one.lastEntry() == null) ? one.since() : one.lastEntry();
		for (Absence absence : one.absences()) {
			LocalDate until = absence.until();
			heard = (until != null && until.isAfter(heard) && until.isBefore(today)) ? until : heard;
		}
		long missed = today.toEpochDay() - heard.toEpochDay();
		if (missed < (one.inEpisode() ? QUIET_IN_EPISODE : QUIET)) {
			return Optional.empty();
		}
		return Optional.of(need(one, Matter.QUIET, heard.plusDays(1), Message.of("needs.missed", missed)));
	}

	private static Need need(KnownAthlete one, Matter matter, LocalDate arose, Message why) {
		return new Need(new MatterKey(one.athlete(), matter, arose), why);
	}

	private static AssessedDay latest(KnownAthlete one) {
		return one.days().get(one.days().size() - 1);
	}

}
