package org.fallow.rules;

import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.RuleField.Looser;
import org.fallow.rules.RuleField.Mark;
import org.fallow.rules.RuleField.Unit;

/**
 * The numbers of a rule set that are not of a path, with their bounds. The looser end of
 * each is never looser than the protocol's own minimum; where the protocol names none,
 * the default is the bound. Numbers that the core remembers no longer, or that change
 * nothing towards safety, are fixed.
 */
final class RuleFields {

	private final List<RuleField> fields = new ArrayList<>();

	private String group = "";

	private RuleFields() {
	}

	/** In the order of a rule set's members. */
	static List<RuleField> general() {
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
		return List.copyOf(fields.fields);
	}

	private void baseline() {
		this.group = "baseline";
		add("windowDays", 28, 42, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("fewReadings", 14, 28, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("fallbackReadings", 14, 28, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("fallbackDays", 60, 60, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		add("provisionalFrom", 7, 7, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("establishedFrom", 14, 28, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("marginDays", 3, 3, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("leastSpreadBpm", 0.5, 1, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("madScale", 1, 1.4826, Looser.HIGHER, Unit.FACTOR, Mark.R);
		add("leastLnSd", 0.02, 0.05, Looser.HIGHER, Unit.LN, Mark.OWN);
		add("releaseReadings", 7, 14, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("releaseDays", 60, 60, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		add("driftBpm", 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("driftDays", 56, 56, Looser.NEITHER, Unit.DAYS, Mark.OWN);
	}

	private void flags() {
		this.group = "flags";
		add("lowFloor", 3, 5, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("lowSpreads", 1, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("highFloor", 6, 10, Looser.HIGHER, Unit.BPM, Mark.TRADE);
		add("highCeiling", 8, 15, Looser.HIGHER, Unit.BPM, Mark.TRADE);
		add("highSpreads", 1.5, 2.5, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("veryHigh", 12, 20, Looser.HIGHER, Unit.BPM, Mark.TRADE);
		add("restingBpm", 90, 100, Looser.HIGHER, Unit.BPM, Mark.M);
		add("standingBpm", 105, 120, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("askFloor", 3, 5, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("askCeiling", 5, 8, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("askBpm", 80, 90, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("keptMornings", 3, 3, Looser.NEITHER, Unit.MORNINGS, Mark.OWN);
		add("lowApartDays", 3, 7, Looser.LOWER, Unit.DAYS, Mark.OWN);
	}

	private void line() {
		this.group = "line";
		add("days", 28, 28, Looser.NEITHER, Unit.DAYS, Mark.OWN);
		add("leastReadings", 3, 5, Looser.HIGHER, Unit.READINGS, Mark.OWN);
		add("secondFrom", 6, 11, Looser.HIGHER, Unit.READINGS, Mark.OWN);
		add("thirdFrom", 12, 21, Looser.HIGHER, Unit.READINGS, Mark.OWN);
		add("margin", 0.5, 1.5, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("floor", 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("ceiling", 5, 8, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("apartDays", 3, 7, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("pairFloor", 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("pairBelow", 2, 4, Looser.LOWER, Unit.BPM, Mark.OWN);
		add("aloneFactor", 1, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("endsBelow", 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
	}

	private void hrv() {
		this.group = "hrv";
		add("days", 7, 7, Looser.NEITHER, Unit.MORNINGS, Mark.R);
		add("leastReadings", 3, 3, Looser.NEITHER, Unit.READINGS, Mark.R);
		add("suppressedSds", 0.5, 1, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("drawnSds", 0.5, 0.5, Looser.NEITHER, Unit.FACTOR, Mark.M);
	}

	private void opening() {
		this.group = "opening";
		add("coldMornings", 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("coldWithinDays", 7, 14, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("feverCelsius", 37.5, 38, Looser.HIGHER, Unit.CELSIUS, Mark.R);
		add("restStandsDays", 1, 3, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("withdrawalAfterFeverDays", 1, 7, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
	}

	private void gates() {
		this.group = "gates";
		add("untrackedMornings", 4, 14, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("quietFloor", 2, 4, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("quietSpreads", 1, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("quietMargin", 0, 1, Looser.HIGHER, Unit.BPM, Mark.OWN);
		add("badFreeMornings", 3, 3, Looser.NEITHER, Unit.MORNINGS, Mark.OWN);
		add("sessionDays", 4, 10, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("badMorningsBack", 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("symptomStepEvery", 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
	}

	private void limits() {
		this.group = "limits";
		add("shortDays", 1, 7, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("stomachDays", 1, 3, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("feverDays", 1, 3, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("chestDays", 3, 7, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("illDays", 5, 10, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("moderateWorst", 1, 7, Looser.HIGHER, Unit.SEVERITY, Mark.R);
		add("covidColdDays", 0, 7, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("vaccinationDays", 0, 2, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("vaccinationWithinDays", 1, 2, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("vaccinationEveryDays", 21, 60, Looser.LOWER, Unit.DAYS, Mark.OWN);
		add("vaccinationCelsius", 38.5, 39, Looser.HIGHER, Unit.CELSIUS, Mark.OWN);
	}

	private void workingLevel() {
		this.group = "workingLevel";
		add("shutMornings", 15, 21, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("ofMornings", 21, 28, Looser.LOWER, Unit.MORNINGS, Mark.OWN);
		add("medianMornings", 14, 21, Looser.LOWER, Unit.READINGS, Mark.OWN);
		add("mostDeviation", 3, 10, Looser.HIGHER, Unit.BPM, Mark.OWN);
	}

	private void advice() {
		this.group = "advice";
		add("clinicianIllDays", 5, 10, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("clinicianFeverDays", 1, 3, Looser.HIGHER, Unit.MORNINGS, Mark.OWN);
		add("highFeverCelsius", 38.5, 39.5, Looser.HIGHER, Unit.CELSIUS, Mark.OWN);
		add("stalledFactor", 1.5, 2, Looser.HIGHER, Unit.FACTOR, Mark.OWN);
		add("longAwayDays", 14, 28, Looser.HIGHER, Unit.DAYS, Mark.OWN);
		add("stomachApartDays", 2, 2, Looser.NEITHER, Unit.DAYS, Mark.OWN);
	}

	private void add(String name, double least, double most, Looser looser, Unit unit, Mark mark) {
		this.fields.add(
				new RuleField("/" + this.group + "/" + name, this.group + "." + name, least, most, looser, unit, mark));
	}

}
