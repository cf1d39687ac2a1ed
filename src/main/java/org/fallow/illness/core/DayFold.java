package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.Series;
import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.illness.core.State.PastMark;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Decides one day, in the order: events, withdrawal, opening, holds, flags, good or bad,
 * count, back by symptoms, back by numbers, gate, clearance.
 */
final class DayFold {

	private static final List<Decision.Kind> GONE_BACK = List.of(Decision.Kind.RELAPSE, Decision.Kind.BACK_BY_SYMPTOMS,
			Decision.Kind.BACK_BY_NUMBERS, Decision.Kind.RESUMED);

	final State before;

	final Known known;

	final LocalDate day;

	final RuleSet rules;

	final String ruleHash;

	final List<DayRange> out;

	final List<HoldState> holds;

	final List<Decision> decisions = new ArrayList<>();

	final @Nullable MorningEntry entry;

	@Nullable Draft episode;

	@Nullable Instant withdrawnAt;

	boolean withdrawnToday;

	@Nullable Held afterClose;

	@Nullable LocalDate closedOn;

	List<HoldState> standing = List.of();

	List<PastMark> marks;

	Mark mark = Mark.NONE;

	RhrEvidence rhr;

	HrvEvidence hrv;

	@Nullable PathEvidence judgedFrom;

	Seen seen;

	boolean raisedHoldToday;

	/** Whether a red flag ticked today is outside an episode. */
	boolean outside;

	final List<Examined> examined = new ArrayList<>();

	private final List<HoldState> passedOver = new ArrayList<>();

	final ClinicEvidence clinic;

	final Silence silence;

	private final Windows windows;

	DayFold(State before, Known known, RuleBook book, LocalDate day) {
		this.before = before;
		this.known = known;
		this.day = day;
		Episode open = before.episode();
		RuleBook.Entry inForce = (open != null) ? book.ofHash(open.ruleHash()) : book.on(day);
		this.rules = inForce.rules();
		this.ruleHash = inForce.hash();
		this.entry = known.morning(day);
		this.episode = (open == null) ? null : new Draft(open);
		this.out = new ArrayList<>(before.out());
		this.holds = new ArrayList<>(before.holds());
		this.withdrawnAt = before.withdrawnAt();
		this.afterClose = before.afterClose();
		this.closedOn = before.closedOn();
		this.windows = new Windows(known, this.out, this.rules);
		this.marks = before.marks();
		this.known.during((open == null) ? null : open.openedOn());
		events();
		withdraw();
		correctOnset();
		noIllness();
		open();
		resume();
		this.clinic = ClinicEvidence.of(this);
		this.known.during((this.episode == null) ? null : this.episode.openedOn);
		this.silence = Silence.of(this);
		Numbers numbers = numbers();
		this.rhr = numbers.rhr();
		this.hrv = numbers.hrv();
		this.marks = Marking.past(this, numbers);
		this.seen = Seen.of(this);
		this.mark = this.seen.besides().mark(Marking.of(this));
		count();
		BackBySymptoms.apply(this);
		backByNumbers();
		judgePath();
		Carry.apply(this);
	}

	/** Decides the day; without a forecast where the result only serves one. */
	DayAssessment decide(RuleBook book, boolean forecast) {
		Episode during = (this.episode == null) ? null : this.episode.toEpisode();
		GateSheet sheet = gate();
		GateSheet opened = (sheet != null && sheet.opened()) ? sheet : null;
		Verdict verdict = Verdict.of(this);
		Draft open = this.episode;
		GateSheet next = (open == null) ? null : (opened == null) ? sheet : evaluate(open);
		if (open != null && next != null) {
			open.standing = next.standing(this.day);
		}
		LevelOffer level = (open == null) ? null : WorkingLevels.after(this, open, (opened == null) ? next : null);
		State after = Carrying.over(this, verdict);
		if (next != null && forecast) {
			boolean mayRun = verdict.clearance().compareTo(Clearance.EASY_ONLY) >= 0;
			next = Forecast.of(this, after, mayRun, book, next);
		}
		return new DayAssessment(this.day, this.ruleHash, verdict.clearance(), verdict.reasons(),
				Notices.of(this, level), this.mark, this.marks, this.seen, this.rhr, this.hrv, during, this.judgedFrom,
				this.decisions, opened, next, level, open != null && mayGoBySymptoms(open), !this.standing.isEmpty(),
				this.clinic, after);
	}

	/** What is held since the last close, as it stands today. */
	private State heldBefore() {
		return this.before.holding(this.afterClose);
	}

	private Numbers numbers() {
		return new Numbers(heldBefore(), this.known, this.rules, this.day, this.episode, this.windows);
	}

	Sickness sickness(MorningEntry morning) {
		return this.known.sickness(morning, this.rules);
	}

	/** Whether an illness was reported on a day or is said to have begun on it. */
	boolean isReported(LocalDate date) {
		return isReported(date, false);
	}

	/** The same, of an illness with fever. */
	boolean isFeverReported(LocalDate date) {
		return isReported(date, true);
	}

	private boolean isReported(LocalDate date, boolean fever) {
		for (IllnessEvent event : this.known.events()) {
			if (event instanceof IllnessEvent.Report report && (!fever || report.kind() == ReportKind.FEVER)
					&& (report.day().equals(date) || report.recorded().on().equals(date))) {
				return true;
			}
		}
		return false;
	}

	int stageNow() {
		return (this.episode == null) ? -1 : this.episode.stage;
	}

	private void events() {
		stand();
		this.outside = this.episode == null || NoIllness.ends(this, this.episode);
		for (Fact fact : this.known.fresh()) {
			flags(fact);
			if (fact instanceof IllnessEvent.SymptomsOnly && this.episode != null) {
				this.episode.symptomsOnly = true;
			}
		}
		stand();
	}

	private void flags(Fact fact) {
		HoldState hold = Holds.openedBy(fact);
		Examined seen = Examined.of(this, fact);
		if (hold != null && seen != null) {
			this.examined.add(seen);
			this.passedOver.add(hold);
		}
		else {
			raise(hold);
		}
		raise(WheezeAfterVaccination.openedBy(fact, this.known, this.rules.limits().wheezeDays()));
	}

	private void raise(@Nullable HoldState hold) {
		if (hold != null) {
			this.holds.add(hold);
			this.raisedHoldToday = true;
		}
	}

	private void stand() {
		this.standing = Holds.standing(this.holds, this.known.events(), this.day);
		WorkingLevels.endOn(this);
	}

	/** Whether a fact of today opens a hold. */
	boolean opensHold(Fact fact) {
		boolean flagged = Holds.openedBy(fact) != null && Examined.of(this, fact) == null;
		return flagged || WheezeAfterVaccination.openedBy(fact, this.known, this.rules.limits().wheezeDays()) != null;
	}

	/**
	 * Whether a coach may let the episode go on by symptoms alone: only where method,
	 * posture or medicine changed. As long as the latest reading can be compared, it is
	 * (the safer reading); one pulse count is a changed method, so nobody is stuck. What
	 * was recorded holds: it is asked where a coach decides.
	 */
	private boolean mayGoBySymptoms(Draft open) {
		Series latest = this.windows.latestRhrSeries(this.day);
		return open.tracked && !open.symptomsOnly && latest != null && !latest.equals(open.held.series());
	}

	private void withdraw() {
		for (IllnessEvent.Withdrawal withdrawal : this.known.fresh(IllnessEvent.Withdrawal.class)) {
			Draft open = this.episode;
			boolean concerns = open != null || Opening.onset(this) != null;
			if (concerns && this.standing.isEmpty() && !isNearFever()) {
				if (open != null) {
					this.out.add(new DayRange(outFrom(open), this.day));
				}
				this.decisions.add(new Decision(Decision.Kind.WITHDRAWN, stageNow(), -1));
				this.episode = null;
				this.withdrawnAt = withdrawal.recorded().at();
				this.withdrawnToday = true;
			}
		}
	}

	private boolean isNearFever() {
		LocalDate from = this.day.minusDays(this.rules.opening().withdrawalAfterFeverDays());
		boolean entered = this.known.mornings(from, this.day.plusDays(1))
			.stream()
			.flatMap((morning) -> morning.revisions().stream())
			.anyMatch((morning) -> sickness(morning).fever());
		return entered || this.known.events(IllnessEvent.Report.class)
			.stream()
			.anyMatch((r) -> r.kind() == ReportKind.FEVER && !r.recorded().on().isBefore(from));
	}

	private LocalDate outFrom(Draft open) {
		return open.firstOnset.minusDays(this.rules.baseline().marginDays());
	}

	/**
	 * Before Stage 1 an earlier sick morning or report that comes in late moves onset.
	 */
	private void correctOnset() {
		Draft open = this.episode;
		Held after = this.afterClose;
		if (after != null && this.known.fresh().stream().anyMatch((fact) -> fact.day().isBefore(after.asOf()))) {
			this.afterClose = HeldBaselines.anew(after, this.windows);
		}
		if (open == null || this.known.fresh().isEmpty()) {
			return;
		}
		if (open.stage1First == null) {
			LocalDate earliest = Opening.earlierOnset(this, open.firstOnset);
			if (earliest != null && earliest.isBefore(open.firstOnset) && isAfterClose(earliest)) {
				open.latestOnset = open.latestOnset.equals(open.firstOnset) ? earliest : open.latestOnset;
				open.lengthFrom = open.lengthFrom.equals(open.firstOnset) ? earliest : open.lengthFrom;
				open.firstOnset = earliest;
			}
		}
		LocalDate asOf = open.firstOnset.minusDays(this.rules.baseline().marginDays());
		boolean touched = !asOf.equals(open.held.asOf())
				|| this.known.fresh().stream().anyMatch((fact) -> fact.day().isBefore(asOf));
		if (touched) {
			open.held = HeldBaselines.again(open.held, heldBefore(), this.windows, open.firstOnset);
		}
	}

	boolean isAfterClose(LocalDate date) {
		return this.closedOn == null || date.isAfter(this.closedOn);
	}

	/** A physician's word that it was no illness closes the episode the next morning. */
	private void noIllness() {
		Draft open = this.episode;
		if (open != null && NoIllness.ends(this, open)) {
			close(open, Decision.Kind.NO_ILLNESS);
		}
		else if (open != null) {
			passOverNothing();
		}
	}

	/** In an episode, one that opens today included, no red flag is passed over. */
	private void passOverNothing() {
		this.outside = false;
		if (!this.passedOver.isEmpty()) {
			this.passedOver.forEach(this::raise);
			this.passedOver.clear();
			this.examined.clear();
			stand();
		}
	}

	private void open() {
		LocalDate onset = (this.episode == null) ? Opening.onset(this) : null;
		if (onset != null) {
			passOverNothing();
			Held held = HeldBaselines.forOnset(heldBefore(), this.windows, onset, this.day);
			this.episode = Draft.opened(this.ruleHash, this.day, onset, held);
			this.decisions.add(new Decision(Decision.Kind.OPENED, -1, 0));
		}
		if (this.episode != null && (this.raisedHoldToday || !this.standing.isEmpty())) {
			this.episode.floor = later(this.episode.floor, PathName.THREE_WEEK);
		}
		boolean named = this.known.fresh(IllnessEvent.Report.class).stream().anyMatch((r) -> r.kind().opensHold());
		if (this.episode != null && named) {
			this.episode.floor = PathName.LONG;
		}
	}

	private static PathName later(PathName one, PathName other) {
		return (one.compareTo(other) >= 0) ? one : other;
	}

	/** A clearance that ends a hold resumes the episode in ill. */
	private void resume() {
		boolean lifted = false;
		for (int i = 0; i < this.holds.size(); i++) {
			HoldState hold = this.holds.get(i);
			boolean stands = this.standing.contains(hold);
			lifted |= !stands && !hold.resumed();
			this.holds.set(i, hold.asResumed(!stands));
		}
		Draft open = this.episode;
		if (lifted && open != null && !open.openedOn.equals(this.day)) {
			this.decisions.add(new Decision(Decision.Kind.RESUMED, open.stage, 0));
			if (open.stage != 0) {
				open.enter(0, this.day);
			}
		}
	}

	/** Bad mornings among the last ones, today included. */
	int badMornings(int days) {
		LocalDate from = this.day.minusDays(days - 1L);
		int bad = (this.mark == Mark.BAD) ? 1 : 0;
		for (PastMark past : this.marks) {
			bad += (past.mark() == Mark.BAD && !past.day().isBefore(from)) ? 1 : 0;
		}
		return bad;
	}

	/** A good morning counts when the next one begins. */
	private void count() {
		Draft open = this.episode;
		Episode yesterday = this.before.episode();
		boolean sameStage = open != null && yesterday != null && open.stage > 0 && open.stage == yesterday.stage()
				&& open.stageSince.equals(yesterday.stageSince());
		if (open != null && sameStage && this.standing.isEmpty()
				&& this.marks.contains(new PastMark(this.day.minusDays(1), Mark.GOOD))) {
			open.counted++;
		}
	}

	private void backByNumbers() {
		Draft open = this.episode;
		if (open == null) {
			return;
		}
		if (this.mark == Mark.GOOD) {
			open.badRun = 0;
		}
		else if (this.mark == Mark.BAD) {
			open.badRun++;
		}
		if (open.stage > 0 && this.standing.isEmpty() && open.badRun >= this.rules.gates().badMorningsBack()) {
			this.decisions.add(new Decision(Decision.Kind.BACK_BY_NUMBERS, open.stage, open.stage - 1));
			open.enter(open.stage - 1, this.day);
		}
	}

	private void judgePath() {
		Draft open = this.episode;
		if (open == null) {
			return;
		}
		this.judgedFrom = PathJudge.judge(open, this.known, this.rules, this.day);
		PathName judged = this.judgedFrom.judged();
		if (judged != open.path && !open.openedOn.equals(this.day)) {
			this.decisions.add(new Decision(Decision.Kind.LONGER_PATH, open.stage, open.stage));
		}
		open.path = judged;
	}

	private @Nullable GateSheet gate() {
		Draft open = this.episode;
		if (open == null) {
			return null;
		}
		GateSheet sheet = evaluate(open);
		if (!sheet.isOpen() || open.openedOn.equals(this.day) || hasGoneBack() || Carry.isOf(this)) {
			return sheet;
		}
		if (sheet.closes()) {
			close(open, Decision.Kind.CLOSED);
		}
		else {
			this.decisions.add(new Decision(Decision.Kind.GATE, open.stage, open.stage + 1));
			open.enter(open.stage + 1, this.day);
		}
		return new GateSheet(sheet.from(), sheet.to(), sheet.closes(), sheet.criteria(), true, this.day);
	}

	private GateSheet evaluate(Draft open) {
		return Gates.evaluate(this, open).since(open.standing, this.day);
	}

	/** No gate opens on a day of a step back or of a resumption (the safer reading). */
	private boolean hasGoneBack() {
		for (Decision decision : this.decisions) {
			if (GONE_BACK.contains(decision.kind())) {
				return true;
			}
		}
		return false;
	}

	private void close(Draft open, Decision.Kind kind) {
		this.decisions.add(new Decision(kind, open.stage, -1));
		this.out.add(new DayRange(outFrom(open), this.day));
		this.afterClose = open.held;
		this.closedOn = this.day;
		this.episode = null;
	}

}
