package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.Line;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Posture;
import org.fallow.illness.core.DayAssessment.Decision.Kind;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

/**
 * A day's decision computed again from its evidence and the rule set alone, written from
 * the decision text a second time and on purpose without the core's own functions.
 */
final class Recomputed {

	private static final Set<Kind> NO_GATE = Set.of(Kind.RELAPSE, Kind.BACK_BY_SYMPTOMS, Kind.BACK_BY_NUMBERS,
			Kind.RESUMED, Kind.OPENED);

	private final DayAssessment day;

	private final RuleSet rules;

	private final RhrEvidence rhr;

	private final Seen seen;

	private Recomputed(DayAssessment day, RuleSet rules) {
		this.day = day;
		this.rules = rules;
		this.rhr = day.rhr();
		this.seen = day.seen();
	}

	static void check(DayAssessment day, RuleSet rules) {
		Recomputed recomputed = new Recomputed(day, rules);
		recomputed.again();
		recomputed.deviation();
		recomputed.aboveTheLine();
		recomputed.kept();
		recomputed.hrv();
		recomputed.mark();
		recomputed.path();
		recomputed.gate();
		recomputed.clinic();
		assertThat(day.clearance()).as("clearance of %s", day.day()).isEqualTo(recomputed.clearance());
	}

	private void deviation() {
		RuleSet.Flags flags = this.rules.flags();
		boolean fast = this.rhr.reading() != null && this.rhr.reading() >= tooFast();
		if (this.rhr.dev() == null) {
			assertThat(this.rhr.flag()).isEqualTo(fast ? RhrFlag.VERY_HIGH : null);
			assertThat(this.rhr.starts()).isFalse();
			return;
		}
		double dev = this.rhr.reading() - this.rhr.baseline();
		double low = -Math.max(flags.lowFloor(), flags.lowSpreads() * this.rhr.spread());
		double high = Math.min(flags.highCeiling(),
				Math.max(flags.highFloor(), flags.highSpreads() * this.rhr.spread()));
		assertThat(this.rhr.dev()).isCloseTo(dev, within(1e-9));
		RhrFlag flag = (fast || atLeast(dev, Math.max(high, flags.veryHigh()))) ? RhrFlag.VERY_HIGH
				: atLeast(dev, high) ? RhrFlag.HIGH
						: atLeast(dev, lineBpm()) ? RhrFlag.RAISED : atLeast(dev, low) ? RhrFlag.WITHIN : RhrFlag.LOW;
		assertThat(this.rhr.flag()).isEqualTo(flag);
		State.Kept last = this.rhr.last();
		assertThat(this.rhr.lowAgain()).isEqualTo(flag == RhrFlag.LOW && last != null && last.flag() == RhrFlag.LOW
				&& daysSince(last.day()) <= flags.lowApartDays());
	}

	private double tooFast() {
		double usual = usual(this.rhr.series().posture());
		return (this.rhr.figure() == null) ? usual : Math.max(usual, this.rhr.figure().bpm());
	}

	private double usual(Posture posture) {
		return (posture == Posture.STANDING) ? this.rules.flags().standingBpm() : this.rules.flags().restingBpm();
	}

	private static double countFrom(Posture posture) {
		return (posture == Posture.STANDING) ? 140 : 120;
	}

	/** Which of several measurements of the morning is the reading. */
	private void again() {
		Repeat repeat = this.rhr.repeat();
		if (repeat == null) {
			assertThat(this.rhr.reading() == null || this.rhr.reading() < countFrom(this.rhr.series().posture()))
				.isTrue();
			return;
		}
		for (Repeat.Taken one : Arrays.asList(repeat.entered(), repeat.counted(), repeat.rested())) {
			if (one != null) {
				taken(one);
			}
		}
		Repeat.Taken used = switch (repeat.used()) {
			case ENTERED -> repeat.entered();
			case COUNTED -> repeat.counted();
			case RESTED -> repeat.rested();
		};
		boolean unused = repeat.used() == Repeat.Use.ENTERED && (used == null || repeat.unsure());
		assertThat(this.rhr.reading()).isEqualTo(unused ? null : Double.valueOf(used.bpm()));
		if (!unused) {
			assertThat(this.rhr.series()).isEqualTo(used.series());
			assertThat(this.rhr.dev()).isEqualTo(used.dev());
			assertThat(this.rhr.flag()).isEqualTo(used.flag());
		}
		assertThat(repeat.used()).isEqualTo(usedAgain(repeat));
	}

	private void taken(Repeat.Taken one) {
		RuleSet.Flags flags = this.rules.flags();
		boolean high = one.bpm() >= one.tooFastFrom();
		assertThat(one.tooFastFrom()).isGreaterThanOrEqualTo(usual(one.series().posture()));
		if (one.dev() != null) {
			assertThat(one.dev()).isCloseTo(one.bpm() - one.baseline(), within(1e-9));
			high |= atLeast(one.dev(),
					Math.min(flags.highCeiling(), Math.max(flags.highFloor(), flags.highSpreads() * one.spread())));
		}
		assertThat(one.high()).isEqualTo(high);
	}

	private Repeat.Use usedAgain(Repeat repeat) {
		Repeat.Taken entered = repeat.entered();
		boolean fast = entered != null && !repeat.unsure() && entered.bpm() >= countFrom(entered.series().posture());
		Repeat.Taken count = repeat.counted();
		assertThat(count == null || fast).isTrue();
		double figure = (count == null) ? 0
				: Math.min(countFrom(entered.series().posture()), countFrom(count.series().posture()));
		Repeat.Use first = (count != null && count.bpm() < figure) ? Repeat.Use.COUNTED : Repeat.Use.ENTERED;
		Repeat.Taken other = (first == Repeat.Use.COUNTED) ? count : repeat.unsure() ? null : entered;
		Repeat.Taken rested = repeat.rested();
		if (rested == null || rested.high()) {
			return (rested == null) ? first : Repeat.Use.RESTED;
		}
		boolean stays = !repeat.beside() || (fast && count == null)
				|| (other != null && (!other.high() || (other.dev() != null && rested.dev() == null)));
		return stays ? first : Repeat.Use.RESTED;
	}

	/** After a high first reading, or one corrected since: not good, and easy at best. */
	private boolean givesWay() {
		Repeat repeat = this.rhr.repeat();
		return repeat != null && repeat.rested() != null && !(repeat.beside() && repeat.unsure());
	}

	/** In exact decimals: what differs by less than a billionth is the same. */
	private static boolean atLeast(double one, double other) {
		return one >= other - 1e-9;
	}

	/** L from the readings it came from; what a working level replaces is the median. */
	private double lineBpm() {
		Line line = this.rhr.line();
		RuleSet.Line numbers = this.rules.line();
		double own = (this.rhr.own() != null) ? this.rhr.own() : this.rhr.baseline();
		int rank = (line.n() >= numbers.thirdFrom()) ? 3 : (line.n() >= numbers.secondFrom()) ? 2 : 1;
		assertThat(line.highest()).isSortedAccordingTo(Comparator.reverseOrder());
		assertThat(line.leftOut() != null && line.n() >= numbers.secondFrom()).isFalse();
		double expected = numbers.ceiling();
		if (line.highest().size() == rank) {
			double upper = line.highest().get(rank - 1) - own;
			assertThat(line.upper()).isCloseTo(upper, within(1e-9));
			double above = Math.min(numbers.ceiling(), Math.max(numbers.floor(), upper + numbers.margin()));
			expected = (line.n() < numbers.leastReadings()) ? numbers.ceiling() : above;
		}
		assertThat(line.bpm()).isCloseTo(expected, within(1e-9));
		return expected;
	}

	private void aboveTheLine() {
		RuleSet.Line line = this.rules.line();
		Episode during = this.day.during();
		boolean without = during != null && (!during.tracked() || during.symptomsOnly());
		assertThat(this.rhr.starts()).isEqualTo(this.rhr.dev() != null && !without && startsByItsReading());
		LocalDate before = this.rhr.aboveBefore();
		LocalDate stands = this.rhr.starts() ? ((before == null) ? this.day.day() : before)
				: (this.rhr.dev() != null && this.rhr.dev() < line.endsBelow()) ? null : before;
		if (without) {
			assertThat(this.rhr.above()).isNull();
		}
		else if (this.rhr.baseline() != null) {
			assertThat(this.rhr.above()).isEqualTo(stands);
		}
		else {
			assertThat(this.rhr.above()).as("unless no series has a baseline").isIn(stands, null);
		}
	}

	private boolean startsByItsReading() {
		double dev = this.rhr.dev();
		double l = this.rhr.line().bpm();
		RuleSet.Line line = this.rules.line();
		double least = Math.max(line.pairFloor(), l - line.pairBelow());
		boolean pair = false;
		boolean between = false;
		for (int i = this.rhr.before().size() - 1; i >= 0; i--) {
			State.PastDeviation one = this.rhr.before().get(i);
			if (one.series().equals(this.rhr.series()) && daysSince(one.day()) <= line.apartDays() && !between) {
				pair |= atLeast((dev + one.dev()) / 2, l) && atLeast(dev, least) && atLeast(one.dev(), least);
				between = !one.late();
			}
		}
		return pair || atLeast(dev, line.aloneFactor() * l) || this.rhr.flag() == RhrFlag.HIGH
				|| this.rhr.flag() == RhrFlag.VERY_HIGH;
	}

	private void kept() {
		if (this.rhr.keptFlag() != null) {
			assertThat(this.rhr.dev()).isNull();
			LocalDate fast = (this.rhr.reading() == null) ? this.rhr.tooFastBefore() : null;
			assertThat(this.rhr.keptFlag()).isEqualTo((fast != null) ? RhrFlag.VERY_HIGH : this.rhr.last().flag());
			assertThat(this.rhr.keptFrom()).isEqualTo((fast != null) ? fast : this.rhr.last().day());
			assertThat(daysSince(this.rhr.keptFrom())).isBetween(1L, (long) this.rules.flags().keptMornings());
		}
		if (this.rhr.leftOut()) {
			assertThat(daysSince(this.rhr.keptFrom())).isGreaterThan(this.rules.flags().keptMornings());
		}
	}

	private void hrv() {
		HrvEvidence hrv = this.day.hrv();
		boolean enough = hrv.values().size() >= this.rules.hrv().leastReadings();
		assertThat(hrv.recent() != null).isEqualTo(enough);
		if (enough) {
			double mean = hrv.values().stream().mapToDouble(Double::doubleValue).sum() / hrv.values().size();
			assertThat(hrv.recent()).isCloseTo(mean, within(1e-9));
		}
		HrvFlag flag = (!enough || hrv.mean() == null) ? null
				: (hrv.recent() < hrv.mean() - this.rules.hrv().suppressedSds() * hrv.sd()) ? HrvFlag.SUPPRESSED
						: HrvFlag.NORMAL;
		assertThat(hrv.flag()).isEqualTo(flag);
	}

	private boolean isSick() {
		return this.seen.fever() || this.seen.stomach() || this.seen.other() || this.seen.aboveTheNeck()
				|| this.seen.redFlag() || this.seen.medicine() == FeverMedicine.ILLNESS;
	}

	private void mark() {
		assertThat(this.day.mark()).as("mark of %s", this.day.day()).isEqualTo(expectedMark());
	}

	private Mark expectedMark() {
		if (this.seen.recordedAt() == null) {
			return Mark.NONE;
		}
		Episode during = this.day.during();
		boolean high = (this.rhr.flag() != null && this.rhr.flag().compareTo(RhrFlag.HIGH) >= 0)
				|| (this.rhr.keptFlag() != null && this.rhr.keptFlag().compareTo(RhrFlag.HIGH) >= 0);
		if (isSick() || (during != null && this.seen.reported()) || high || this.rhr.starts()) {
			return Mark.BAD;
		}
		if (this.seen.besides().askedFrom() != null || this.seen.besides().ownWords() || givesWay()) {
			return Mark.NEITHER;
		}
		boolean tracked = during != null && during.tracked() && !during.symptomsOnly();
		return ((!tracked || isQuiet()) && this.seen.slip() == null) ? Mark.GOOD : Mark.NEITHER;
	}

	private boolean isQuiet() {
		if (this.rhr.dev() == null || this.rhr.flag() == RhrFlag.LOW || this.rhr.flag() == RhrFlag.HIGH
				|| this.rhr.flag() == RhrFlag.VERY_HIGH) {
			return false;
		}
		RuleSet.Gates gates = this.rules.gates();
		double l = this.rhr.line().bpm();
		double wide = Math.max(gates.quietFloor(), gates.quietSpreads() * this.rhr.spread() + gates.quietMargin());
		double below = (this.rhr.line().n() < this.rules.line().leastReadings()) ? gates.quietFloor()
				: Math.min(l, wide);
		return this.rhr.above() == null && !atLeast(this.rhr.dev(), below);
	}

	private void path() {
		PathEvidence from = this.day.judgedFrom();
		assertThat(from == null).isEqualTo(this.day.during() == null);
		if (from == null) {
			return;
		}
		RuleSet.Limits limits = this.rules.limits();
		boolean light = !from.other() && !from.fever();
		boolean nose = light && from.aboveTheNeck() && !from.stomach() && !from.asthma();
		boolean gut = light && from.stomach() && !from.aboveTheNeck() && !from.asthma();
		boolean lungs = light && from.asthma() && !from.aboveTheNeck() && !from.stomach();
		boolean cold = light && !from.stomach() && !from.asthma() && !from.covidUntold()
				&& from.illDays() <= limits.covidColdDays();
		assertThat(from.covidUntold() && (!from.covid() || from.aboveTheNeck())).isFalse();
		PathName own = PathName.THREE_WEEK;
		if ((nose || lungs) && !from.covid() && from.coldDays() <= limits.shortDays()) {
			own = PathName.SHORT;
		}
		if (gut && !from.covid() && from.illDays() <= limits.stomachDays()) {
			own = PathName.STOMACH;
		}
		if (from.vaccination() != null) {
			assertThat(from.illDays()).isBetween(1L, (long) limits.vaccinationDays());
			assertThat(from.aboveTheNeck() || from.stomach() || from.covid()).isFalse();
			long after = this.day.during().firstOnset().toEpochDay() - from.vaccination().toEpochDay();
			assertThat(after).isBetween(1L, (long) limits.vaccinationWithinDays());
			own = PathName.VACCINATION;
		}
		if ((from.covid() && !cold) || from.feverDays() >= limits.feverDays() || from.chestDays() > limits.chestDays()
				|| from.illDays() > limits.illDays()) {
			own = PathName.LONG;
		}
		int judged = Arrays.stream(new int[] { own.ordinal(), from.floor().ordinal(), from.before().ordinal() })
			.max()
			.orElseThrow();
		assertThat(from.judged()).isEqualTo(PathName.values()[judged]);
		assertThat(this.day.during().path()).isEqualTo(from.judged());
	}

	private void gate() {
		Episode during = this.day.during();
		GateSheet sheet = (this.day.opened() != null) ? this.day.opened() : this.day.gate();
		assertThat(sheet == null).isEqualTo(during == null);
		if (sheet == null) {
			return;
		}
		sheet.criteria().forEach(this::criterion);
		boolean barred = this.day.decisions().stream().anyMatch((d) -> NO_GATE.contains(d.kind()));
		boolean open = sheet.criteria().stream().noneMatch(Criterion::shuts) && !barred;
		assertThat(this.day.opened() != null).as("gate of %s", this.day.day()).isEqualTo(open);
		assertThat(sheet.from()).isEqualTo(during.stage());
		Episode after = this.day.state().episode();
		boolean closes = open && during.stage() == this.rules.path(during.path()).stages().size();
		assertThat(after == null).isEqualTo(closes);
		if (after != null) {
			assertThat(after.stage()).isEqualTo(open ? during.stage() + 1 : during.stage());
		}
	}

	/** Holds, the clearance in force and ceilings say what the short fields say. */
	private void clinic() {
		ClinicEvidence clinic = this.day.clinic();
		ClinicEvidence.InForce clearance = clinic.clearance();
		assertThat(this.day.holding()).isEqualTo(!clinic.standing().isEmpty());
		assertThat(this.seen.clinicianCeiling()).isEqualTo((clearance == null) ? null : clearance.ceiling());
		assertThat(this.seen.coachCeiling()).isEqualTo(clinic.ceilings()
			.stream()
			.map(ClinicEvidence.Ceiling::ceiling)
			.min(Clearance::compareTo)
			.orElse(Clearance.FULL_TRAINING));
		assertThat(clinic.ceilings()).allMatch((one) -> !one.until().isBefore(this.day.day()));
		if (clearance != null) {
			clinic.standing()
				.forEach((hold) -> assertThat(hold.recorded().at()).isAfterOrEqualTo(clearance.recordedAt()));
		}
		for (Examined examined : clinic.examined()) {
			assertThat(this.day.during()).as("outside an episode").isNull();
			assertThat(this.seen.redFlag()).isTrue();
			assertThat(clearance).isNotNull();
			assertThat(daysSince(examined.since())).isLessThan(90);
		}
	}

	private void criterion(Criterion criterion) {
		Episode during = this.day.during();
		switch (criterion.code()) {
			case "entered" -> is(criterion, this.seen.recordedAt() != null);
			case "meanwhile" ->
				is(criterion, this.seen.besides().askedFrom() == null && this.seen.besides().owedSince() == null);
			case "no-hold" -> is(criterion, !this.day.holding());
			case "no-slip" -> {
				assertThat(this.seen.slip()).isNotNull();
				is(criterion, false);
			}
			case "not-bad" -> {
				assertThat(expectedMark()).isEqualTo(Mark.BAD);
				is(criterion, false);
			}
			case "no-repeat" -> {
				assertThat(this.day.rhr().repeat()).isNotNull();
				assertThat(this.day.rhr().repeat().rested()).isNotNull();
				is(criterion, false);
			}
			case "symptom-free", "runs", "counted", "least-days" ->
				is(criterion, number(criterion.observed()) >= number(criterion.required()));
			case "no-bad-morning", "after-session" -> is(criterion, number(criterion.observed()) == 0);
			case "good-morning" -> is(criterion, expectedMark() == Mark.GOOD);
			case "feels-able" -> {
				if (criterion.state() != CriterionState.NOT_AVAILABLE) {
					is(criterion, this.seen.feels() != Feels.UNWELL);
				}
				assertThat(criterion.state() == CriterionState.NOT_AVAILABLE)
					.isEqualTo(this.seen.feels() == null && !this.day.clinic().saidAble());
			}
			case "hrv" -> {
				boolean told = this.day.hrv().flag() != null;
				assertThat(criterion.state() == CriterionState.NOT_AVAILABLE).isEqualTo(!told);
				if (told) {
					is(criterion, this.day.hrv().flag() == HrvFlag.NORMAL);
				}
			}
			case "quiet" -> {
				if (!during.tracked() || during.symptomsOnly()) {
					assertThat(criterion.state()).isEqualTo(CriterionState.NOT_APPLICABLE);
				}
				else if (this.rhr.dev() == null) {
					assertThat(criterion.state()).isEqualTo(CriterionState.NOT_AVAILABLE);
				}
				else {
					is(criterion, isQuiet());
				}
			}
			case "no-fever", "eating", "effort" -> assertThat(criterion.shuts()).isEqualTo(
					criterion.state() == CriterionState.NOT_MET || (criterion.state() == CriterionState.NOT_AVAILABLE));
			default -> throw new AssertionError("a criterion that nobody recomputes: " + criterion.code());
		}
		if (criterion.code().equals("counted")) {
			assertThat(number(criterion.observed())).isEqualTo(during.counted());
		}
		if (criterion.code().equals("no-bad-morning")) {
			LocalDate from = this.day.day().minusDays(this.rules.gates().badFreeMornings() - 1L);
			long bad = this.day.marks().stream().filter((m) -> m.mark() == Mark.BAD && !m.day().isBefore(from)).count();
			assertThat((long) number(criterion.observed())).isEqualTo(bad + ((this.day.mark() == Mark.BAD) ? 1 : 0));
		}
		assertThat(criterion.since()).isBeforeOrEqualTo(this.day.day());
	}

	private static void is(Criterion criterion, boolean met) {
		assertThat(criterion.state()).as(criterion.code()).isEqualTo(met ? CriterionState.MET : CriterionState.NOT_MET);
		assertThat(criterion.shuts()).as(criterion.code()).isEqualTo(!met);
	}

	private static double number(List<String> values) {
		return Double.parseDouble(values.get(0));
	}

	private Clearance clearance() {
		List<Clearance> seenToday = new ArrayList<>(List.of(Clearance.FULL_TRAINING, this.seen.coachCeiling()));
		add(seenToday, this.day.holding(), Clearance.REFER);
		add(seenToday, !this.day.clinic().examined().isEmpty(), Clearance.EASY_ONLY);
		if (this.seen.clinicianCeiling() != null) {
			seenToday.add(this.seen.clinicianCeiling());
		}
		add(seenToday, this.seen.withdrawn(), Clearance.EASY_ONLY);
		add(seenToday, this.seen.slip() != null || this.seen.unasked() != null, Clearance.EASY_ONLY);
		add(seenToday, this.seen.injured(), Clearance.NOT_ASSESSED);
		boolean entered = this.seen.recordedAt() != null;
		add(seenToday, !entered, Clearance.NOT_ASSESSED);
		add(seenToday, this.seen.restStands() != null, Clearance.REST);
		add(seenToday, this.seen.fever() || this.seen.stomach() || this.seen.other()
				|| this.seen.medicine() == FeverMedicine.ILLNESS, Clearance.REST);
		add(seenToday, this.seen.besides().owedSince() != null, Clearance.REST);
		add(seenToday, this.seen.besides().complaint() || this.seen.besides().ownWords()
				|| (entered && this.seen.besides().askedFrom() != null), Clearance.EASY_ONLY);
		add(seenToday, this.seen.aboveTheNeck() || this.seen.feels() == Feels.UNWELL
				|| this.seen.medicine() == FeverMedicine.OTHER, Clearance.EASY_ONLY);
		RhrFlag flag = (this.rhr.flag() != null) ? this.rhr.flag() : this.rhr.keptFlag();
		add(seenToday, flag == RhrFlag.HIGH || flag == RhrFlag.VERY_HIGH, Clearance.REST);
		add(seenToday, this.rhr.above() != null || this.rhr.lowAgain() || this.rhr.keptLow()
				|| (this.rhr.leftOut() && entered) || this.day.hrv().flag() == HrvFlag.SUPPRESSED, Clearance.EASY_ONLY);
		Repeat repeat = this.rhr.repeat();
		Repeat.Taken first = (repeat == null) ? null : repeat.entered();
		add(seenToday, givesWay(), Clearance.EASY_ONLY);
		add(seenToday, first != null && !repeat.unsure() && repeat.counted() == null
				&& first.bpm() >= countFrom(first.series().posture()), Clearance.REST);
		stage(seenToday);
		return seenToday.stream().min(Clearance::compareTo).orElseThrow();
	}

	private void stage(List<Clearance> seenToday) {
		Episode after = this.day.state().episode();
		if (after == null) {
			return;
		}
		int last = this.rules.path(after.path()).stages().size();
		add(seenToday, after.stage() == 0, Clearance.REST);
		add(seenToday, after.stage() < last, Clearance.EASY_ONLY);
		boolean bad = this.day.mark() == Mark.BAD;
		add(seenToday, bad && after.stage() == 1, Clearance.REST);
		add(seenToday, bad, Clearance.EASY_ONLY);
	}

	private static void add(List<Clearance> all, boolean holds, Clearance clearance) {
		if (holds) {
			all.add(clearance);
		}
	}

	private long daysSince(LocalDate earlier) {
		return this.day.day().toEpochDay() - earlier.toEpochDay();
	}

}
