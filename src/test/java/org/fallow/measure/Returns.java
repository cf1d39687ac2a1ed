package org.fallow.measure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

import org.fallow.illness.core.Criterion;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.illness.core.GateSheet;

/**
 * What the gates cost people who are well again, after a planted illness.
 */
final class Returns {

	/** Days an illness's course is followed from its onset. */
	static final int FOLLOWED = 90;

	private static final int BACK_DAYS = 14;

	private static final Set<String> NUMBERS = Set.of("quiet", "hrv");

	private static final long NEVER = FOLLOWED + 1L;

	private int ready;

	private int openAtOnce;

	private int shutByRhr;

	private int shutByHrv;

	private final List<Long> waits = new ArrayList<>();

	private int started;

	private int backByNumbers;

	private final List<Long> toStageThree = new ArrayList<>();

	void add(List<DayAssessment> days, LocalDate onset) {
		LocalDate firstWell = onset.plusDays(Diary.SICK_MORNINGS);
		List<DayAssessment> after = days.stream().filter((day) -> !day.day().isBefore(firstWell)).toList();
		after.stream().filter(Returns::onlyNumbersAreLeft).findFirst().ifPresent((day) -> addReady(day, after));
		LocalDate stageOne = reached(after, 1);
		if (stageOne != null) {
			this.started++;
			this.backByNumbers += after.stream().anyMatch((day) -> isBack(day, stageOne)) ? 1 : 0;
		}
		LocalDate stageThree = reached(after, 3);
		this.toStageThree.add((stageThree == null) ? NEVER : stageThree.toEpochDay() - firstWell.toEpochDay());
	}

	private void addReady(DayAssessment day, List<DayAssessment> after) {
		this.ready++;
		GateSheet sheet = sheet(day);
		this.openAtOnce += (day.opened() != null) ? 1 : 0;
		this.shutByRhr += shuts(sheet, "quiet") ? 1 : 0;
		this.shutByHrv += shuts(sheet, "hrv") ? 1 : 0;
		LocalDate opened = reached(after, 1);
		this.waits.add((opened == null) ? NEVER : opened.toEpochDay() - day.day().toEpochDay());
	}

	private static boolean onlyNumbersAreLeft(DayAssessment day) {
		GateSheet sheet = sheet(day);
		return sheet != null && sheet.from() == 0
				&& sheet.criteria().stream().noneMatch((c) -> c.shuts() && !NUMBERS.contains(c.code()));
	}

	private static GateSheet sheet(DayAssessment day) {
		return (day.opened() != null) ? day.opened() : day.gate();
	}

	private static boolean shuts(GateSheet sheet, String code) {
		return sheet.criteria().stream().filter((c) -> c.code().equals(code)).anyMatch(Criterion::shuts);
	}

	private static boolean isBack(DayAssessment day, LocalDate stageOne) {
		return day.day().toEpochDay() - stageOne.toEpochDay() <= BACK_DAYS
				&& day.decisions().stream().anyMatch((d) -> d.kind() == Decision.Kind.BACK_BY_NUMBERS);
	}

	private static LocalDate reached(List<DayAssessment> days, int stage) {
		return days.stream()
			.filter((day) -> day.decisions()
				.stream()
				.anyMatch((d) -> d.kind() == Decision.Kind.GATE && d.toStage() == stage))
			.map(DayAssessment::day)
			.findFirst()
			.orElse(null);
	}

	int illnesses() {
		return this.toStageThree.size();
	}

	/** Share whose gate the numbers leave open on the first morning all else is met. */
	double openAtOnce() {
		return this.openAtOnce / (double) this.ready;
	}

	double shutByRhr() {
		return this.shutByRhr / (double) this.ready;
	}

	double shutByHrv() {
		return this.shutByHrv / (double) this.ready;
	}

	double meanWait() {
		return this.waits.stream().mapToLong(Long::longValue).average().orElse(Double.NaN);
	}

	double backWithinFourteenDays() {
		return this.backByNumbers / (double) this.started;
	}

	/** Days from the first well morning to Stage 3; 91 stands for later or never. */
	long medianToStageThree() {
		return quantile(0.5);
	}

	long quantile(double share) {
		List<Long> sorted = this.toStageThree.stream().sorted().toList();
		return sorted.get((int) Math.min(sorted.size() - 1L, Math.round(share * (sorted.size() - 1))));
	}

}
