package org.fallow.measure;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.fallow.measure.Beside.Share;
import org.fallow.measure.Beside.Text;

/**
 * The table of docs/measured.md that holds the first rule text beside the second.
 */
final class BesideReport {

	/** The numbers to hold, from the end of the decision text. */
	static final double ALARMS_AT_THREE = 0.35;

	static final double ALARMS_ON_OPEN = 0.85;

	static final double FOUND_AT_TWO = 0.92;

	static final double FOUND_AT_THREE = 0.77;

	static final double ASKED_AT_THREE = 0.90;

	static final double STILL_UP = 0.40;

	private static final String TWO = "made up, " + Noise.TWO_BPM.name();

	private static final String THREE = "made up, " + Noise.THREE_BPM.name();

	private static final String OPEN = "open data";

	private final List<Beside> all;

	private final StringBuilder text = new StringBuilder();

	private BesideReport(List<Beside> all) {
		this.all = all;
	}

	static String of(List<Beside> all) {
		BesideReport report = new BesideReport(all);
		report.line("### The first rule text beside the second, on the same mornings");
		report.line("");
		report.line("| | " + all.stream().map(Beside::name).collect(Collectors.joining(" | ")) + " |");
		report.line("|---|" + "---|".repeat(all.size()));
		report.rows();
		return report.text.toString();
	}

	private void rows() {
		row("mornings", (b) -> String.valueOf(b.mornings()));
		both("alarms in a month of a person", (b, text) -> number(text.perMonth(b.mornings())));
		row("second text: at most 0.35 at 3 bpm, 0.85 on open data", BesideReport::alarms);
		both("healthy mornings under alarm", (b, text) -> percent(text.share(b.mornings())));
		both("a rise of 8 bpm found by its second morning", (b, text) -> percent(text.steps));
		row("second text: in 92 % at 2 bpm, 77 % at 3 bpm", BesideReport::found);
		row("second text: asked about by its second morning, in 90 % at 3 bpm", BesideReport::asked);
		row("second text: times asked in a month of a person",
				(b) -> number(HealthyShares.MONTH * b.askedInHealth().value()));
		both("a rise of any shape found the day after its first morning; the same mornings with none",
				(b, text) -> percent(text.shapesNextDay) + "; " + percent(text.placeboNextDay));
		both("the same two days after",
				(b, text) -> percent(text.shapesSecondDay) + "; " + percent(text.placeboSecondDay));
		both("a lone morning still 6 bpm up called quiet", (b, text) -> percent(text.quietAlone));
		row("second text: at most 40 %", (b) -> held(b.second().quietAlone.value() <= STILL_UP));
		both("the third of three mornings 6 bpm up called quiet", (b, text) -> percent(text.quietThird));
		row("rises of 8 bpm, rises of any shape planted",
				(b) -> b.second().steps.of() + ", " + b.second().shapesNextDay.of());
	}

	private static String alarms(Beside b) {
		double rate = b.second().perMonth(b.mornings());
		return b.name().equals(OPEN) ? held(rate <= ALARMS_ON_OPEN)
				: b.name().equals(THREE) ? held(rate <= ALARMS_AT_THREE) : "";
	}

	private static String found(Beside b) {
		double share = b.second().steps.value();
		return b.name().equals(TWO) ? held(share >= FOUND_AT_TWO)
				: b.name().equals(THREE) ? held(share >= FOUND_AT_THREE) : "";
	}

	private static String asked(Beside b) {
		String share = percent(b.asked());
		return b.name().equals(THREE) ? share + ", " + held(b.asked().value() >= ASKED_AT_THREE) : share;
	}

	private void both(String what, Said said) {
		row("first text: " + what, (b) -> said.of(b, b.first()));
		row("second text: " + what, (b) -> said.of(b, b.second()));
	}

	private void row(String name, Function<Beside, String> value) {
		line("| " + name + " | " + this.all.stream().map(value).collect(Collectors.joining(" | ")) + " |");
	}

	private void line(String line) {
		this.text.append(line).append('\n');
	}

	private static String held(boolean held) {
		return held ? "held" : "**missed**";
	}

	private static String percent(Share share) {
		return (share.of() == 0) ? "none" : percent(share.value());
	}

	private static String percent(double share) {
		return String.format(Locale.ROOT, "%.1f %%", 100 * share);
	}

	private static String number(double value) {
		return String.format(Locale.ROOT, "%.2f", value);
	}

	@FunctionalInterface
	private interface Said {

		String of(Beside beside, Text text);

	}

}
