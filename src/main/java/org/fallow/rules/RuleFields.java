package org.fallow.rules;

import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.RuleField.Looser;
import org.fallow.rules.RuleField.Mark;
import org.fallow.rules.RuleField.Unit;

/**
 * The one table of the numbers of a rule set that are not of a path: name, default, least
 * and most allowed, which way is looser, unit, and how sure it is. The looser end of each
 * is never looser than the protocol's own minimum; where the protocol names none, the
 * default is the bound. Numbers that the core remembers no longer, or that change nothing
 * towards safety, are fixed. A new number is a member of its group and a row here, under
 * the next format: texts of earlier ones are read with its default.
 */
final class RuleFields {

	private static final int FIRST = 1;

	private static final int SECOND = 2;

	private static final int THIRD = 3;

	private static final List<Row> ROWS = rows();

	private final List<Row> rows = new ArrayList<>();

	private String group = "";

	private int format = FIRST;

	private RuleFields() {
	}

	/** In the order of a rule set's members. */
	static List<RuleField> general() {
		return ROWS.stream().map(Row::field).toList();
	}

	/** The number of the newest format: that of the text that has every row. */
	static int newestFormat() {
		return ROWS.stream().mapToInt(Row::format).max().orElse(FIRST);
	}

	/** The numbers that came with a later format than a text's. */
	static List<RuleField> newerThan(int format) {
		return ROWS.stream().filter((row) -> row.format() > format).map(Row::field).toList();
	}

	/** Greatest value that any rule set may give a number. */
	static int mostOf(String pointer) {
		return ROWS.stream()
			.map(Row::field)
			.filter((field) -> field.pointer().equals(pointer))
			.mapToInt((field) -> (int) field.most())
			.findFirst()
			.orElseThrow();
	}

	private static List<Row> rows() {
		RuleFields fields = new RuleFields();
		fields.baseline();
		fields.flags();
		fields.line();
		fields.hrv();
		fields.opening();
		fields.gates();
		fields.limits();
		fields.workingLevel();
		fields.advice();
		fields.slips();
		fields.words();
		fields.told();
		return List.copyOf(fields.rows);
	}

	private void group(String name, int format) {
		this.group = name;
		since(format);
	}

	/** The rows that follow came with this format. */
	private void since(int format) {
		this.format = format;
	}

	private void baseline() {
		group("baseline", FIRST);
		add("windowDays", 28, 28, 42, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("fewReadings", 14, 14, 28, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("fallbackReadings", 14, 14, 28, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("fallbackDays", 60, 60, 60, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		add("provisionalFrom", 7, 7, 7, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("establishedFrom", 14, 14, 28, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("marginDays", 3, 3, 3, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("leastSpreadBpm", 1, 0.5, 1, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("madScale", 1.4826, 1, 1.4826, Looser.HIGHER, Unit.FACTOR, Mark.R);
		add("leastLnSd", 0.05, 0.02, 0.05, Looser.HIGHER, Unit.LN, Mark.OWN);
		add("releaseReadings", 7, 7, 14, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("releaseDays", 60, 60, 60, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		add("driftBpm", 4, 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("driftDays", 56, 56, 56, Looser.NEITHER, Unit.DAYS, Mark.OWN);
	}

	private void flags() {
		group("flags", FIRST);
		add("lowFloor", 5, 3, 5, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("lowSpreads", 2, 1, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("highFloor", 10, 6, 10, Looser.HIGHER, Unit.BPM, Mark.TRADE);
		add("highCeiling", 15, 8, 15, Looser.HIGHER, Unit.BPM, Mark.TRADE);
		add("highSpreads", 2.5, 1.5, 2.5, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("veryHigh", 20, 12, 20, Looser.HIGHER, Unit.BPM, Mark.TRADE);
		add("restingBpm", 100, 90, 100, Looser.HIGHER, Unit.BPM, Mark.M);
		add("standingBpm", 120, 105, 120, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("askFloor", 5, 3, 5, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("askCeiling", 8, 5, 8, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("askBpm", 90, 80, 90, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("keptMornings", 3, 3, 3, Looser.NEITHER, Unit.MORNINGS, Mark.OWN);
		add("lowApartDays", 3, 3, 7, Looser.LOWER, Unit.DAYS, Mark.OWN);
	}

	private void line() {
		group("line", SECOND);
		add("days", 28, 28, 28, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		add("leastReadings", 5, 3, 5, Looser.HIGHER, Unit.READINGS, Mark.OWN);
		add("secondFrom", 11, 6, 11, Looser.HIGHER, Unit.READINGS, Mark.OWN);
		add("thirdFrom", 21, 12, 21, Looser.HIGHER, Unit.READINGS, Mark.OWN);
		add("margin", 1.5, 0.5, 1.5, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("floor", 4, 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("ceiling", 8, 5, 8, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("apartDays", 3, 3, 7, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("pairFloor", 4, 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("pairBelow", 2, 2, 4, Looser.LOWER, Unit.BPM, Mark.OWN);
		add("aloneFactor", 2, 1, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("endsBelow", 4, 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
	}

	private void hrv() {
		group("hrv", FIRST);
		add("days", 7, 7, 7, Looser.NEITHER, Unit.MORNINGS, Mark.R);
		add("leastReadings", 3, 3, 3, Looser.NEITHER, Unit.READINGS, Mark.R);
		add("suppressedSds", 1, 0.5, 1, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("drawnSds", 2, 0.5, 3, Looser.NEITHER, Unit.FACTOR, Mark.OWN);
	}

	private void opening() {
		group("opening", FIRST);
		add("coldMornings", 3, 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("coldWithinDays", 7, 7, 14, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("feverCelsius", 38, 37.5, 38, Looser.HIGHER, Unit.CELSIUS, Mark.R);
		add("restStandsDays", 1, 1, 3, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("withdrawalAfterFeverDays", 1, 1, 7, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
	}

	private void gates() {
		group("gates", FIRST);
		add("untrackedMornings", 4, 4, 14, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("quietFloor", 4, 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("quietSpreads", 2, 1, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("quietMargin", 1, 0, 1, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("badFreeMornings", 3, 3, 3, Looser.NEITHER, Unit.MORNINGS, Mark.OWN);
		add("sessionDays", 4, 4, 10, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("badMorningsBack", 3, 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("symptomStepEvery", 3, 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
	}

	private void limits() {
		group("limits", FIRST);
		add("shortDays", 7, 1, 7, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("stomachDays", 3, 1, 3, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("feverDays", 3, 1, 3, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("chestDays", 7, 3, 7, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("illDays", 10, 5, 10, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("moderateWorst", 7, 1, 7, Looser.HIGHER, Unit.SEVERITY, Mark.R);
		add("covidColdDays", 7, 0, 7, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("vaccinationDays", 2, 0, 2, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("vaccinationWithinDays", 2, 1, 2, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("vaccinationEveryDays", 21, 21, 60, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("vaccinationCelsius", 39, 38.5, 39, Looser.HIGHER, Unit.CELSIUS, Mark.OWN);
		since(THIRD);
		add("wheezeDays", 14, 14, 60, Looser.LOWER, Unit.DAYS, Mark.OWN);
	}

	private void workingLevel() {
		group("workingLevel", FIRST);
		add("shutMornings", 15, 15, 21, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("ofMornings", 21, 21, 28, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("medianMornings", 14, 14, 21, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("mostDeviation", 10, 3, 10, Looser.HIGHER, Unit.BPM, Mark.OWN);
	}

	private void advice() {
		group("advice", FIRST);
		add("clinicianIllDays", 10, 5, 10, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("clinicianFeverDays", 3, 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("highFeverCelsius", 39.5, 38.5, 39.5, Looser.HIGHER, Unit.CELSIUS, Mark.OWN);
		add("stalledFactor", 2, 1.5, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("longAwayDays", 28, 14, 28, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("stomachApartDays", 2, 2, 2, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		since(THIRD);
		add("throatDays", 5, 1, 5, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("afterSessionDays", 7, 7, 28, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("longAwayToldDays", 14, 14, 28, Looser.LOWER, Unit.DAYS, Mark.OWN);
	}

	private void slips() {
		group("slips", THIRD);
		add("redFlagMinutes", 30, 5, 30, Looser.HIGHER, Unit.MINUTES, Mark.OWN);
		add("redFlagEveryDays", 90, 90, 366, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("otherEveryDays", 14, 14, 90, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("afterDays", 14, 14, 60, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("entries", 3, 3, 14, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("toldDays", 7, 7, 28, Looser.LOWER, Unit.DAYS, Mark.OWN);
	}

	private void words() {
		group("words", THIRD);
		add("examinedDays", 90, 14, 90, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("toldByAthleteDays", 14, 1, 14, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("ceilingDays", 60, 28, 60, Looser.NEITHER, Unit.DAYS, Mark.OWN);
	}

	private void told() {
		group("told", THIRD);
		add("silentMornings", 3, 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("knownDays", 30, 7, 30, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("cycleMornings", 5, 1, 5, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
	}

	private void add(String name, double usual, double least, double most, Looser looser, Unit unit, Mark mark) {
		RuleField field = new RuleField("/" + this.group + "/" + name, this.group + "." + name, usual, least, most,
				looser, unit, mark);
		this.rows.add(new Row(field, this.format));
	}

	/** A number, and the number of the format of rules texts that it came with. */
	private record Row(RuleField field, int format) {
	}

}
