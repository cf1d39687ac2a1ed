package org.fallow.illness;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.entry.HistoryTime;
import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Measurements;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Mornings;
import org.fallow.entry.Recorded;
import org.fallow.entry.Saved;
import org.fallow.entry.SmallFacts;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Submission;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.FastAtRest;
import org.fallow.team.Athlete;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Measuring again on the same morning: checked when it is recorded, trusted by the fold.
 * The athlete alone does it, on the morning itself and in time; what is stored stays
 * beside the entry, and only a higher one takes its place.
 */
@Service
@Transactional
public class MeasuringAgain {

	private static final String TABLE = Measurements.TABLE;

	private final SmallFacts facts;

	private final Mornings mornings;

	private final Replays replays;

	private final Squad squad;

	MeasuringAgain(SmallFacts facts, Mornings mornings, Replays replays, Squad squad) {
		this.facts = facts;
		this.mornings = mornings;
		this.replays = replays;
		this.squad = squad;
	}

	/**
	 * What today's entry asks.
	 * @param id whose
	 * @return what is asked; nothing without an entry
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public AskedAgain asked(PersonId id) {
		return asked(this.squad.athlete(id));
	}

	private AskedAgain asked(Athlete athlete) {
		LocalDate today = this.facts.today(athlete);
		List<StoredMorning> revisions = this.mornings.of(athlete.id(), today, today);
		DayAssessment day = revisions.isEmpty() ? null : this.replays.changed(athlete, today, (facts) -> facts);
		if (day == null || !day.day().equals(today)) {
			return new AskedAgain(today, null, null, false, false, false, null, null, false);
		}
		MorningEntry entry = revisions.get(revisions.size() - 1).entry();
		return AskedAgain.of(day, entry, since(revisions, entry));
	}

	/** When this very reading was first recorded. */
	private static Instant since(List<StoredMorning> revisions, MorningEntry entry) {
		Instant since = entry.recorded().at();
		for (int i = revisions.size() - 1; i >= 0; i--) {
			MorningEntry one = revisions.get(i).entry();
			boolean same = one.method() == entry.method() && one.posture() == entry.posture()
					&& Objects.equals(one.rhrBpm(), entry.rhrBpm());
			if (!same) {
				break;
			}
			since = one.recorded().at();
		}
		return since;
	}

	/**
	 * Stores a measurement beside the entry's.
	 * @param id whose
	 * @param measured what was measured
	 * @param submission who sends it, and which sending it is
	 * @return stored; refused with what is wrong and what stands
	 */
	@OfAthlete
	public Saved save(PersonId id, NewMeasurement measured, Submission submission) {
		Athlete athlete = this.facts.begin(id);
		Optional<Saved> before = this.facts.before(TABLE, id, submission);
		if (before.isPresent()) {
			return before.get();
		}
		Recorded recorded = this.facts.recorded(athlete, measured.day(), null, submission, HistoryTime.EVENT);
		double bpm = BigDecimal.valueOf(measured.rhrBpm()).setScale(1, RoundingMode.HALF_UP).doubleValue();
		AskedAgain asked = asked(athlete);
		Double stored = (measured.kind() == MeasuredAgain.Kind.RESTED) ? asked.restedBpm() : asked.countedBpm();
		if (measured.day().equals(asked.day()) && stored != null && stored == bpm) {
			return new Saved.Stored(submission.requestId().toString(), 1, true);
		}
		List<Problem> problems = new ArrayList<>();
		check(problems, asked, measured, bpm, stored);
		if (!submission.actor().equals(id)) {
			problems.add(Problem.of("", "again.own"));
		}
		if (problems.isEmpty()) {
			time(problems, asked, measured.kind(), recorded.at());
		}
		if (!problems.isEmpty()) {
			return new Saved.Refused(problems);
		}
		MeasuredAgain fact = new MeasuredAgain(measured.day(), recorded, measured.kind(), measured.method(),
				measured.posture(), bpm);
		return this.facts.add(TABLE, athlete, null, fact, submission, "kind, method, posture, rhr_bpm", fact.kind(),
				fact.method(), fact.posture(), fact.rhrBpm());
	}

	private static void check(List<Problem> problems, AskedAgain asked, NewMeasurement measured, double bpm,
			@Nullable Double stored) {
		boolean rested = measured.kind() == MeasuredAgain.Kind.RESTED;
		if (!(bpm >= MorningEntry.LOWEST_RHR && bpm <= MorningEntry.HIGHEST_RHR)) {
			problems.add(Problem.of(rested ? "rhr" : "beats", "entry.rhr.range", MorningEntry.LOWEST_RHR,
					MorningEntry.HIGHEST_RHR));
		}
		if (!measured.kind().allows(measured.method(), measured.posture())) {
			problems.add(Problem.of("method", rested ? "again.lying" : "again.by-finger"));
		}
		if (!measured.day().equals(asked.day())) {
			problems.add(Problem.of("", "again.day"));
		}
		else if (stored != null && bpm < stored) {
			problems.add(Problem.of("", "again.stands", stored));
		}
		else if (rested && asked.counts()) {
			problems.add(Problem.of("", "again.count-first"));
		}
		else if (rested ? !asked.high() : !(asked.counts() || asked.countedBpm() != null)) {
			problems.add(Problem.of("", "again.not-asked"));
		}
	}

	/**
	 * By the server's clock: lain down for long enough, and still a morning's reading.
	 */
	private static void time(List<Problem> problems, AskedAgain asked, MeasuredAgain.Kind kind, Instant now) {
		Instant since = Objects.requireNonNull(asked.since());
		if (kind == MeasuredAgain.Kind.RESTED && now.isBefore(since.plus(Duration.ofMinutes(FastAtRest.LIE_MINUTES)))) {
			problems.add(Problem.of("", "again.too-soon", FastAtRest.LIE_MINUTES));
		}
		if (now.isAfter(since.plus(Duration.ofMinutes(FastAtRest.WITHIN_MINUTES)))) {
			problems.add(Problem.of("", "again.too-late", FastAtRest.WITHIN_MINUTES / 60));
		}
	}

}
