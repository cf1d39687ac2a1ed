package org.fallow.measure;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.fallow.measure.HealthyShares.Alarm;
import org.fallow.measure.Windows.Decided;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleHash;

/**
 * The tables of docs/measured.md.
 */
final class MeasuredReport {

	/** The numbers to hold, from the end of the decision text. */
	static final double FULL = 0.88;

	static final double OPEN = 0.73;

	static final double WAIT_DAYS = 2;

	static final double BACK = 0.20;

	static final long STAGE_THREE_DAYS = 18;

	private static final List<Alarm> TOLD = List.of(Alarm.STARTS, Alarm.ABOVE_THE_LINE, Alarm.HIGH, Alarm.ANY_RHR);

	private final List<Measurement> measured;

	private final StringBuilder text = new StringBuilder();

	private MeasuredReport(List<Measurement> measured) {
		this.measured = measured;
	}

	static String of(List<Measurement> measured, List<Decided> open, Map<Noise, List<Decided>> feverish) {
		MeasuredReport report = new MeasuredReport(measured);
		report.line("Rule set `" + RuleHash.of(DefaultRules.ruleSet()) + "`.");
		report.numbersToHold();
		report.healthyMornings();
		report.falseAlarms();
		report.priceOfTheGate();
		report.onlyReasons();
		report.windows(open, feverish);
		return report.text.toString();
	}

	private void numbersToHold() {
		heading("The numbers to hold");
		row("Full on healthy mornings, at least 88 %", (m) -> held(m.full() >= FULL, percent(m.full())));
		row("numbers leave the gate into Stage 1 open, at least 73 %",
				(m) -> held(m.returns().openAtOnce() >= OPEN, percent(m.returns().openAtOnce())));
		row("mean wait for that gate, under 2 days",
				(m) -> held(m.returns().meanWait() < WAIT_DAYS, decimal(m.returns().meanWait())));
		row("stepped back by numbers within 14 days, under 20 %",
				(m) -> held(m.returns().backWithinFourteenDays() < BACK,
						percent(m.returns().backWithinFourteenDays())));
		row("three-week path, median days from the first well morning to Stage 3, at most 18",
				(m) -> held(m.returns().medianToStageThree() <= STAGE_THREE_DAYS,
						String.valueOf(m.returns().medianToStageThree())));
	}

	private void healthyMornings() {
		heading("Healthy mornings");
		row("people", (m) -> String.valueOf(m.healthy().people()));
		row("mornings with a baseline", (m) -> String.valueOf(m.healthy().mornings()));
		row("inside the band", (m) -> percent(m.healthy().inBand()));
		row("outside a fixed 3 bpm, for comparison", (m) -> percent(m.healthy().outsideThreeBpm()));
		row("Full", (m) -> percent(m.full()));
		row("Easy only", (m) -> percent(m.healthy().share(Clearance.EASY_ONLY)));
		row("Rest", (m) -> percent(m.healthy().share(Clearance.REST)));
	}

	private void falseAlarms() {
		heading("False alarms in a month of a person (30 mornings), and share of mornings");
		for (Alarm alarm : Alarm.values()) {
			row(alarm.words(),
					(m) -> hundredths(m.healthy().perMonth(alarm)) + " (" + percent(m.healthy().share(alarm)) + ")");
		}
	}

	private void priceOfTheGate() {
		heading("The price of the gates");
		row("planted illnesses", (m) -> String.valueOf(m.returns().illnesses()));
		row("gate into Stage 1 shut by resting heart rate", (m) -> percent(m.returns().shutByRhr()));
		row("gate into Stage 1 shut by HRV", (m) -> percent(m.returns().shutByHrv()));
		row("mean wait, days", (m) -> decimal(m.returns().meanWait()));
		row("days from the first well morning to Stage 3: a tenth, half, nine tenths (15 is the least)",
				(m) -> m.returns().quantile(0.1) + ", " + m.returns().quantile(0.5) + ", "
						+ days(m.returns().quantile(0.9)));
	}

	private void onlyReasons() {
		heading("Healthy mornings less than Full for one reason alone");
		this.measured.stream()
			.flatMap((m) -> m.healthy().onlyReasons().stream())
			.distinct()
			.sorted()
			.forEach((reason) -> row("`" + reason + "`", (m) -> percent(m.healthy().shareOnlyFor(reason))));
	}

	private void windows(List<Decided> open, Map<Noise, List<Decided>> feverish) {
		line("");
		line("### Around onset, with the placebo rate (by the numbers alone)");
		line("");
		line("| mornings | window | alarm | around onset | healthy windows of the same length |");
		line("|---|---|---|---|---|");
		for (Alarm alarm : TOLD) {
			windows("open data", open, "day −7 to −1", -7, 7, 3, alarm);
		}
		for (Alarm alarm : TOLD) {
			windows("open data", open, "day −3 to +7", -3, 11, 4, alarm);
		}
		for (Alarm alarm : TOLD) {
			windows("open data", open, "day 0 to +13", 0, 14, 5, alarm);
		}
		feverish.forEach((noise, people) -> {
			for (Alarm alarm : TOLD) {
				windows("made up, " + noise.name(), people, "day 0 to +6", 0, 7, 3, alarm);
			}
		});
	}

	private void windows(String mornings, List<Decided> people, String name, int from, int length, int least,
			Alarm alarm) {
		line("| " + mornings + " | " + name + " | " + alarm.words() + " | "
				+ share(Windows.aroundOnset(people, from, length, least, alarm)) + " | "
				+ share(Windows.healthy(people, length, least, alarm)) + " |");
	}

	private static String share(Windows windows) {
		return windows.with() + " of " + windows.windows() + ", " + percent(windows.share()) + " ("
				+ percent(windows.lower()) + " to " + percent(windows.upper()) + "); " + decimal(windows.filled())
				+ " mornings each";
	}

	private void heading(String title) {
		line("");
		line("### " + title);
		line("");
		line("| | " + this.measured.stream().map(Measurement::name).collect(Collectors.joining(" | ")) + " |");
		line("|---|" + "---|".repeat(this.measured.size()));
	}

	private void row(String name, Function<Measurement, String> value) {
		line("| " + name + " | " + this.measured.stream().map(value).collect(Collectors.joining(" | ")) + " |");
	}

	private void line(String line) {
		this.text.append(line).append('\n');
	}

	private static String held(boolean held, String value) {
		return held ? value : "**missed: " + value + "**";
	}

	private static String days(long days) {
		return (days > Returns.FOLLOWED) ? "later" : String.valueOf(days);
	}

	private static String percent(double share) {
		return String.format(Locale.ROOT, "%.1f %%", 100 * share);
	}

	private static String decimal(double value) {
		return String.format(Locale.ROOT, "%.1f", value);
	}

	private static String hundredths(double value) {
		return String.format(Locale.ROOT, "%.2f", value);
	}

}
