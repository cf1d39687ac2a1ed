package org.fallow.baseline;

import java.util.Arrays;
import java.util.List;

import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * The line of a day: how far above the baseline a morning has to be before it is more
 * than one of the athlete's own higher mornings. It follows those of the last four weeks,
 * for a person's spread hardly predicts how high the higher mornings are.
 *
 * @param n eligible readings of the days the line looks at
 * @param leftOut the reading before, left out where readings are few, for it would hide
 * its own pair, bpm; absent where none is
 * @param highest the highest of the others, highest first, as many as the rank: upper is
 * measured at the last one; fewer where there are not as many
 * @param upper that one minus the baseline, bpm; absent where no reading is left
 * @param bpm L, bpm above the baseline
 */
public record Line(int n, @Nullable Double leftOut, List<Double> highest, @Nullable Double upper, double bpm) {

	/**
	 * Copies the readings and refuses what no mornings give.
	 * @throws IllegalArgumentException if a number is not finite, n negative, or L not
	 * above 0
	 */
	public Line {
		highest = List.copyOf(highest);
		if (n < 0 || !(bpm > 0 && Double.isFinite(bpm)) || (upper != null && !Double.isFinite(upper))) {
			throw new IllegalArgumentException("no line: " + n + ", " + upper + ", " + bpm);
		}
	}

	/**
	 * The line over some readings. Worked example: baseline 50 and 21 readings whose
	 * third-highest is 53: upper 3, L = 3 + 1.5 = 4.5.
	 * @param readings eligible readings of the line's days in the order of their days,
	 * bpm
	 * @param before which of them is the reading before today's, without which few
	 * readings are looked at; -1 if none is
	 * @param baseline the day's baseline, bpm
	 * @param rules line numbers
	 * @return the line
	 */
	public static Line of(double[] readings, int before, double baseline, RuleSet.Line rules) {
		int n = readings.length;
		boolean without = before >= 0 && n < rules.secondFrom();
		double[] sorted = readings.clone();
		if (without) {
			sorted[before] = sorted[n - 1];
			sorted = Arrays.copyOf(sorted, n - 1);
		}
		Arrays.sort(sorted);
		int rank = rank(n, rules);
		double[] highest = new double[Math.min(rank, sorted.length)];
		for (int i = 0; i < highest.length; i++) {
			highest[i] = sorted[sorted.length - 1 - i];
		}
		double at = (highest.length < rank) ? Double.NaN : highest[rank - 1];
		return new Line(n, without ? Double.valueOf(readings[before]) : null, Arrays.stream(highest).boxed().toList(),
				Double.isNaN(at) ? null : Double.valueOf(upper(at, baseline)), bpm(n, at, baseline, rules));
	}

	/** Which of the highest readings counts, 1 the highest. */
	static int rank(int n, RuleSet.Line rules) {
		return (n >= rules.thirdFrom()) ? 3 : (n >= rules.secondFrom()) ? 2 : 1;
	}

	/**
	 * L of a rank's reading.
	 * @param n eligible readings of the line's days
	 * @param at the reading upper is measured at; not a number where there is none
	 */
	static double bpm(int n, double at, double baseline, RuleSet.Line rules) {
		if (n < rules.leastReadings() || Double.isNaN(at)) {
			return rules.ceiling();
		}
		double above = Exact.decimal(upper(at, baseline) + rules.margin());
		return Math.min(rules.ceiling(), Math.max(rules.floor(), above));
	}

	private static double upper(double at, double baseline) {
		return Exact.decimal(at - baseline);
	}

	/**
	 * Whether a morning and the reading before are together above the line.
	 * @param dev today's deviation, bpm
	 * @param before that of the reading before in the same series, bpm
	 * @param line today's L, bpm
	 * @param rules line numbers
	 * @return true if they average at least L and neither is far below it
	 */
	public static boolean isPair(double dev, double before, double line, RuleSet.Line rules) {
		double least = Math.max(rules.pairFloor(), Exact.decimal(line - rules.pairBelow()));
		return Exact.decimal(dev + before) >= Exact.decimal(2 * line) && dev >= least && before >= least;
	}

	/**
	 * Whether a morning is above the line by itself.
	 * @param dev its deviation, bpm
	 * @param line its L, bpm
	 * @param rules line numbers
	 * @return true from the rules' multiple of L
	 */
	public static boolean isFarAbove(double dev, double line, RuleSet.Line rules) {
		return dev >= Exact.decimal(rules.aloneFactor() * line);
	}

	/**
	 * The deviation below which a morning is quiet for the return, low ones apart.
	 * @param n eligible readings of the line's days
	 * @param spread the baseline's spread, bpm
	 * @param line L, bpm
	 * @param rules all numbers
	 * @return bpm, exclusive
	 */
	public static double quietBelow(int n, double spread, double line, RuleSet rules) {
		RuleSet.Gates gates = rules.gates();
		if (n < rules.line().leastReadings()) {
			return gates.quietFloor();
		}
		double wide = Exact.decimal(gates.quietSpreads() * spread + gates.quietMargin());
		return Math.min(line, Math.max(gates.quietFloor(), wide));
	}

}
