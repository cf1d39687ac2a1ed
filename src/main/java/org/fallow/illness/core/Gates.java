package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.HrvFlag;
import org.fallow.entry.Activity;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.SessionLog;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * The criteria of the next gate, all evaluated.
 */
final class Gates {

	private final DayFold fold;

	private final Draft episode;

	private final RuleSet rules;

	private final RuleSet.Path path;

	private final List<Criterion> criteria = new ArrayList<>();

	private Gates(DayFold fold, Draft episode) {
		this.fold = fold;
		this.episode = episode;
		this.rules = fold.rules;
		this.path = episode.path(fold.rules);
	}

	static GateSheet evaluate(DayFold fold, Draft episode) {
		Gates gates = new Gates(fold, episode);
		int stages = gates.path.stages().size();
		boolean closes = episode.stage >= stages;
		gates.entered();
		gates.noHold();
		gates.told();
		gates.noSlip();
		if (episode.stage == 0) {
			gates.intoFirstStage();
		}
		else if (closes) {
			gates.counted();
			gates.goodMorning();
		}
		else {
			gates.upAStage();
		}
		return new GateSheet(episode.stage, episode.stage + 1, closes, gates.criteria, false, null);
	}

	private void add(Criterion criterion) {
		this.criteria.add(criterion);
	}

	private void entered() {
		add(Criterion.of("entered", this.fold.entry != null, "", ""));
	}

	private void noHold() {
		add(Criterion.of("no-hold", this.fold.standing.isEmpty(), String.valueOf(this.fold.standing.size()), "0"));
	}

	/** Asked only where something is still to be told about silent mornings. */
	private void told() {
		if (!this.fold.silence.isTold()) {
			add(Criterion.of("meanwhile", false, "", ""));
		}
	}

	/** Asked only on the day of a slip: no gate opens on it. */
	private void noSlip() {
		if (this.fold.known.isSlip(this.fold.day)) {
			add(Criterion.of("no-slip", false, "", ""));
		}
	}

	/**
	 * Asked only on a bad morning of somebody who is not tracked: the first stage begins
	 * on none, as one with a pulse too fast for anybody. Tracked, a bad one is not quiet.
	 */
	private void notBad() {
		if (!this.episode.tracksNow() && this.fold.mark == Mark.BAD) {
			add(Criterion.of("not-bad", false, "", ""));
		}
	}

	/**
	 * Asked only on a morning whose high first reading gave way to a second: the first
	 * stage begins on none, or a higher first reading would open what a raised one shuts
	 * (the safer reading).
	 */
	private void notRepeated() {
		Repeat repeat = this.fold.rhr.repeat();
		if (repeat != null && repeat.givesWay()) {
			add(Criterion.of("no-repeat", false, "", ""));
		}
	}

	private void intoFirstStage() {
		int needed = this.path.symptomFreeMornings();
		if (!this.episode.tracksNow()) {
			needed = Math.max(needed, this.rules.gates().untrackedMornings());
		}
		int free = symptomFreeInARow();
		add(Criterion.of("symptom-free", free >= needed, String.valueOf(free), String.valueOf(needed)));
		notBad();
		notRepeated();
		add(Criterion.of("no-fever", !isNearFever(this.fold), "", ""));
		LocalDate from = this.path.fromLastSymptom()
				? PathJudge.lastSick(this.episode, this.fold.known, this.rules, this.fold.day)
				: this.episode.latestOnset;
		long days = this.fold.day.toEpochDay() - from.toEpochDay();
		add(Criterion.of("least-days", days >= this.path.illDays(), String.valueOf(Math.max(0, days)),
				String.valueOf(this.path.illDays())));
		quiet();
		hrv();
		feelsAble();
		eating();
	}

	/**
	 * Symptom-free mornings since the latest onset, counted back from today: one missed
	 * morning neither counts nor breaks the row, two together break it. A morning entered
	 * late does not count, for it was missed when it was lived, nor does one of which a
	 * tick was a slip, or one with a complaint in own words, which in an episode may
	 * belong to the illness after all (the safer reading).
	 */
	private int symptomFreeInARow() {
		int free = 0;
		int missed = 0;
		for (LocalDate date = this.fold.day; date.isAfter(this.episode.latestOnset)
				&& missed < 2; date = date.minusDays(1)) {
			Morning morning = this.fold.known.morningOn(date);
			if (isSick(morning) || this.fold.isReported(date)) {
				return free;
			}
			boolean counts = morning != null && morning.isOnTime() && !this.fold.known.isSlip(date)
					&& !this.fold.sickness(morning.effective()).complaints().inOwnWords();
			free += counts ? 1 : 0;
			missed = counts ? 0 : missed + 1;
		}
		return free;
	}

	/**
	 * In any revision: a correction undoes nothing, only a slip does (the safer reading).
	 */
	private boolean isSick(@Nullable Morning morning) {
		return morning != null && morning.revisions().stream().anyMatch((entry) -> this.fold.sickness(entry).isSick());
	}

	/** Fever or fever medicine this morning or on the entered one before. */
	static boolean isNearFever(DayFold fold) {
		boolean reported = fold.isFeverReported(fold.day) || fold.isFeverReported(fold.day.minusDays(1));
		List<Morning> back = fold.known.backFrom(fold.day);
		for (int i = 0; i < Math.min(2, back.size()) && !reported; i++) {
			MorningEntry entry = back.get(i).effective();
			reported = fold.sickness(entry).fever() || entry.feverMedicine() != FeverMedicine.NONE;
		}
		return reported;
	}

	private void quiet() {
		String required = Decimals.tenths(Marking.quietBelow(this.fold));
		if (!this.episode.tracksNow()) {
			add(Criterion.notApplicable("quiet", required));
			return;
		}
		Double dev = this.fold.rhr.dev();
		if (dev == null) {
			add(Criterion.notAvailable("quiet", true, required));
			return;
		}
		add(Criterion.of("quiet", Marking.isQuiet(this.fold), Decimals.tenths(dev), required));
	}

	private void hrv() {
		HrvFlag flag = this.fold.hrv.flag();
		Double mean = this.fold.hrv.mean();
		Double sd = this.fold.hrv.sd();
		Double recent = this.fold.hrv.recent();
		if (flag == null || mean == null || sd == null || recent == null) {
			add(Criterion.notAvailable("hrv", false, ""));
			return;
		}
		add(Criterion.of("hrv", flag != HrvFlag.SUPPRESSED, Decimals.hundredths(recent),
				Decimals.hundredths(mean - this.rules.hrv().suppressedSds() * sd)));
	}

	private void feelsAble() {
		MorningEntry entry = this.fold.entry;
		Feels feels = (entry == null) ? null : entry.feels();
		if (feels == null && this.fold.clinic.saidAble()) {
			add(Criterion.of("feels-able", true, "SAID_TODAY", ""));
			return;
		}
		if (feels == null) {
			add(Criterion.notAvailable("feels-able", true, ""));
			return;
		}
		add(Criterion.of("feels-able", feels != Feels.UNWELL, feels.name(), ""));
	}

	/**
	 * Asked for on the stomach path; who says not to eat normally begins no stage on any
	 * path, for a longer one is not a lighter one (the safer reading).
	 */
	private void eating() {
		Boolean eating = (this.fold.entry == null) ? null : this.fold.entry.eatingNormally();
		eating = (eating == null && this.fold.clinic.saidEating()) ? Boolean.TRUE : eating;
		if (!this.path.eating() && !Boolean.FALSE.equals(eating)) {
			return;
		}
		add((eating == null) ? Criterion.notAvailable("eating", true, "") : Criterion.of("eating", eating, "", ""));
	}

	private void upAStage() {
		counted();
		goodMorning();
		int days = this.rules.gates().badFreeMornings();
		int bad = this.fold.badMornings(days);
		add(Criterion.of("no-bad-morning", bad == 0, String.valueOf(bad), String.valueOf(days)));
		runs();
		sessions();
	}

	private void counted() {
		int needed = stage().days();
		add(Criterion.of("counted", this.episode.counted >= needed, String.valueOf(this.episode.counted),
				String.valueOf(needed)));
	}

	private RuleSet.Stage stage() {
		return this.path.stages().get(Math.min(this.episode.stage, this.path.stages().size()) - 1);
	}

	private void goodMorning() {
		add(Criterion.of("good-morning", this.fold.mark == Mark.GOOD, this.fold.mark.name(), Mark.GOOD.name()));
	}

	private void runs() {
		int runs = 0;
		int waiting = 0;
		for (SessionLog s : this.fold.known.sessions(this.episode.stageSince, this.fold.day)) {
			boolean ran = s.activity() == Activity.RUN && !Integer.valueOf(0).equals(s.minutes());
			runs += (ran && isInByTheEntry(s)) ? 1 : 0;
			waiting += (ran && !isInByTheEntry(s)) ? 1 : 0;
		}
		add(Criterion.of("runs", runs >= stage().runs(), String.valueOf(runs), String.valueOf(stage().runs()))
			.waiting(waiting, this.fold.day.plusDays(1)));
	}

	private void sessions() {
		LocalDate from = this.fold.day.minusDays(this.rules.gates().sessionDays() - 1L);
		Double ceiling = stage().effortCeiling();
		int yes = 0;
		int above = 0;
		int waiting = 0;
		for (SessionLog session : this.fold.known.sessions(from, this.fold.day)) {
			if (session.day().isBefore(this.fold.day) || isInByTheEntry(session)) {
				yes += session.after().isEmpty() ? 0 : 1;
				above += (ceiling != null && isAbove(session, ceiling)) ? 1 : 0;
			}
			else {
				waiting++;
			}
		}
		LocalDate next = this.fold.day.plusDays(1);
		add(Criterion
			.of("after-session", yes == 0, String.valueOf(yes), String.valueOf(this.rules.gates().sessionDays()))
			.waiting(waiting, next));
		if (ceiling == null) {
			add(Criterion.notApplicable("effort", ""));
			return;
		}
		add(Criterion.of("effort", above == 0, String.valueOf(above), Decimals.tenths(ceiling)).waiting(waiting, next));
	}

	/**
	 * A gate opens with the morning's entry, so a session logged after it opens nothing
	 * that day, and one of the same day shuts nothing: it is judged the next morning.
	 */
	private boolean isInByTheEntry(SessionLog session) {
		MorningEntry entry = this.fold.entry;
		return entry == null || session.recorded().compareTo(entry.recorded()) <= 0;
	}

	private boolean isAbove(SessionLog session, double ceiling) {
		Double rpe = session.rpe();
		if (rpe != null && rpe > ceiling) {
			return true;
		}
		return session.intensity() != null && stage().highest() != null
				&& session.intensity().compareTo(stage().highest()) > 0;
	}

}
