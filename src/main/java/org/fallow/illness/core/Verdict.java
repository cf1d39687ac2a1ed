package org.fallow.illness.core;

import java.time.LocalDate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.rules.Clearance;
import org.fallow.wording.Message;

/**
 * The day's clearance: every row of both tables that applies, the worst one wins, all are
 * kept.
 *
 * @param clearance the strictest of the rows
 * @param reasons all rows that keep it from full training, strictest first
 * @param ownRest whether it is Rest on the day's own account, so that it stands the next
 * day without an entry
 */
record Verdict(Clearance clearance, List<Message> reasons, boolean ownRest) {

	private record Row(Clearance clearance, Message reason, boolean own) {
	}

	static Verdict of(DayFold fold) {
		List<Row> rows = new ArrayList<>();
		people(fold, rows);
		if (fold.seen.entered()) {
			symptoms(fold.seen, rows);
		}
		else {
			silence(fold.seen, rows);
		}
		besides(fold.seen, rows);
		numbers(fold, rows, fold.seen.entered());
		episode(fold, rows);
		Clearance clearance = Clearance.FULL_TRAINING;
		boolean ownRest = false;
		for (Row row : rows) {
			clearance = clearance.stricterOf(row.clearance());
			ownRest |= row.own() && row.clearance() == Clearance.REST;
		}
		rows.sort(Comparator.comparing(Row::clearance));
		List<Message> reasons = new ArrayList<>(rows.size());
		rows.forEach((row) -> reasons.add(row.reason()));
		return new Verdict(clearance, reasons, ownRest);
	}

	/** Adds a row, unless it speaks for full training: such a one is no reason. */
	private static void row(List<Row> rows, Clearance clearance, String code, Object... arguments) {
		if (clearance != Clearance.FULL_TRAINING) {
			rows.add(new Row(clearance, Message.of(code, arguments), true));
		}
	}

	private static void people(DayFold fold, List<Row> rows) {
		for (HoldState hold : fold.standing) {
			row(rows, Clearance.REFER, "reason.hold", hold.cause(), hold.day());
		}
		Clearance clinician = fold.seen.clinicianCeiling();
		if (clinician != null) {
			row(rows, clinician, isTold(fold) ? "reason.told-ceiling" : "reason.clinician-ceiling", clinician.name());
		}
		for (ClinicEvidence.Ceiling coach : fold.clinic.ceilings()) {
			row(rows, coach.ceiling(), "reason.coach-ceiling", coach.ceiling().name(), coach.until());
		}
		for (Examined examined : fold.clinic.examined()) {
			row(rows, Clearance.EASY_ONLY, "reason.examined", examined.ticked().symptom().name(), examined.since());
		}
		if (fold.seen.withdrawn()) {
			row(rows, Clearance.EASY_ONLY, "reason.withdrawn-today");
		}
		slip(fold, rows);
		if (fold.seen.injured()) {
			row(rows, Clearance.NOT_ASSESSED, "reason.injury");
		}
	}

	/** Whether the clearance in force is told by the athlete. */
	private static boolean isTold(DayFold fold) {
		ClinicEvidence.InForce clearance = fold.clinic.clearance();
		return clearance != null && clearance.word().by() == ClinicianWord.By.ATHLETE;
	}

	private static void besides(Seen seen, List<Row> rows) {
		Besides besides = seen.besides();
		LocalDate owed = besides.owedSince();
		if (owed != null) {
			row(rows, Clearance.REST, "reason.report-owed", owed);
		}
		LocalDate asked = besides.askedFrom();
		if (asked != null && seen.entered()) {
			row(rows, Clearance.EASY_ONLY, "reason.meanwhile", asked);
		}
		if (besides.complaint()) {
			row(rows, Clearance.EASY_ONLY, "reason.complaint");
		}
		if (besides.ownWords()) {
			row(rows, Clearance.EASY_ONLY, "reason.complaint-in-doubt");
		}
	}

	/** The day of a slip, and after one of a red flag until somebody has asked. */
	private static void slip(DayFold fold, List<Row> rows) {
		String code = fold.seen.slip();
		if (code != null) {
			row(rows, Clearance.EASY_ONLY, "reason.slip", code);
		}
		LocalDate unasked = fold.seen.unasked();
		if (unasked != null) {
			row(rows, Clearance.EASY_ONLY, fold.seen.asking() ? "reason.slip-unasked" : "reason.slip-entries", unasked,
					fold.rules.slips().entries());
		}
	}

	private static void silence(Seen seen, List<Row> rows) {
		row(rows, Clearance.NOT_ASSESSED, "reason.no-entry");
		LocalDate restStands = seen.restStands();
		if (restStands != null) {
			rows.add(new Row(Clearance.REST, Message.of("reason.rest-stands", restStands), false));
		}
	}

	private static void symptoms(Seen seen, List<Row> rows) {
		if (seen.fever()) {
			row(rows, Clearance.REST, "reason.fever");
		}
		if (seen.medicine() == FeverMedicine.ILLNESS) {
			row(rows, Clearance.REST, "reason.fever-medicine-illness");
		}
		if (seen.stomach() || seen.other()) {
			row(rows, Clearance.REST, "reason.symptoms");
		}
		if (seen.aboveTheNeck()) {
			row(rows, Clearance.EASY_ONLY, "reason.above-the-neck");
		}
		if (seen.feels() == Feels.UNWELL) {
			row(rows, Clearance.EASY_ONLY, "reason.feels-unwell");
		}
		if (seen.medicine() == FeverMedicine.OTHER) {
			row(rows, Clearance.EASY_ONLY, "reason.fever-medicine-other");
		}
	}

	private static void numbers(DayFold fold, List<Row> rows, boolean entered) {
		RhrEvidence rhr = fold.rhr;
		RhrFlag flag = rhr.flag();
		if (flag != null && flag.isHigh()) {
			high(rhr, flag, rows);
		}
		if (rhr.lowAgain()) {
			row(rows, Clearance.EASY_ONLY, "reason.rhr-low-again", Decimals.tenths(rhr.dev()));
		}
		kept(rhr, rows, entered);
		aboveTheLine(rhr, Decimals.tenths(fold.rules.line().endsBelow()), rows);
		if (fold.hrv.flag() == HrvFlag.SUPPRESSED) {
			row(rows, Clearance.EASY_ONLY, "reason.hrv-suppressed");
		}
	}

	private static void high(RhrEvidence rhr, RhrFlag flag, List<Row> rows) {
		Double dev = rhr.dev();
		if (dev == null || (flag == RhrFlag.VERY_HIGH && rhr.high() != null && dev < rhr.high())) {
			row(rows, Clearance.REST, "reason.rhr-too-fast", Decimals.tenths(rhr.reading()));
		}
		else {
			row(rows, Clearance.REST, (flag == RhrFlag.HIGH) ? "reason.rhr-high" : "reason.rhr-very-high",
					Decimals.tenths(dev));
		}
	}

	/** What a high morning starts is told by it; from the next one on it stands. */
	private static void aboveTheLine(RhrEvidence rhr, String endsBelow, List<Row> rows) {
		LocalDate above = rhr.above();
		RhrFlag flag = rhr.flag();
		if (above == null) {
			return;
		}
		if (rhr.starts() && (flag == null || !flag.isHigh())) {
			row(rows, Clearance.EASY_ONLY, "reason.above-the-line", Decimals.tenths(rhr.dev()),
					Decimals.tenths(rhr.lineBpm()), endsBelow);
		}
		else if (rhr.aboveBefore() != null) {
			row(rows, Clearance.EASY_ONLY, "reason.above-the-line-stands", above, endsBelow);
		}
	}

	/**
	 * A flag kept for a left-out reading works on silent mornings too (the safer
	 * reading), but a Rest that comes from it alone does not stand for another day.
	 */
	private static void kept(RhrEvidence rhr, List<Row> rows, boolean entered) {
		RhrFlag kept = rhr.keptFlag();
		if (kept != null && rhr.keptFrom() != null) {
			if (kept.isHigh()) {
				rows.add(new Row(Clearance.REST, Message.of("reason.rhr-high-kept", rhr.keptFrom()), entered));
			}
			else if (rhr.keptLow()) {
				row(rows, Clearance.EASY_ONLY, "reason.rhr-low-kept", rhr.keptFrom());
			}
		}
		if (entered && rhr.leftOut() && rhr.keptFrom() != null) {
			row(rows, Clearance.EASY_ONLY, "reason.rhr-left-out", rhr.keptFrom());
		}
	}

	private static void episode(DayFold fold, List<Row> rows) {
		Draft episode = fold.episode;
		if (episode == null) {
			return;
		}
		if (episode.stage == 0) {
			row(rows, Clearance.REST, "reason.ill", episode.firstOnset);
			return;
		}
		Clearance usual = episode.path(fold.rules).stages().get(episode.stage - 1).clearance();
		row(rows, usual, "reason.stage", episode.stage);
		if (fold.mark == Mark.BAD) {
			Clearance bad = (episode.stage == 1) ? Clearance.REST : Clearance.EASY_ONLY;
			row(rows, usual.stricterOf(bad), "reason.bad-morning", episode.stage);
		}
	}

}
