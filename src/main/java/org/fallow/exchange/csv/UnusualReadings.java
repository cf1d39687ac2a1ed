package org.fallow.exchange.csv;

import java.util.List;
import java.util.Objects;

import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Tells of resting heart rates that are possible and unlikely: 30 bpm or more away from
 * the median of the same person's readings in the file. They go in, and are listed: a
 * reading is a person's fact, not ours to drop. [own: on the open data this was tried on,
 * 30 bpm tells of both readings known to be wrong and of 4 others among 1,515; 25 bpm
 * tells of 14 others, 35 bpm of none.]
 */
public final class UnusualReadings {

	/** Bpm from the person's median from which a reading is told of. */
	public static final double FAR = 30;

	/** Readings of a person below which there is no telling. */
	public static final int FEWEST = 5;

	private UnusualReadings() {
	}

	/**
	 * Finds them.
	 * @param rows all good rows of one person
	 * @return a notice for each, in the order of the rows
	 */
	public static List<RowProblem> of(List<ReadRow> rows) {
		double[] readings = rows.stream()
			.map(UnusualReadings::reading)
			.filter(Objects::nonNull)
			.mapToDouble(Double::doubleValue)
			.sorted()
			.toArray();
		if (readings.length < FEWEST) {
			return List.of();
		}
		double median = (readings[(readings.length - 1) / 2] + readings[readings.length / 2]) / 2;
		return rows.stream().filter((row) -> isFar(row, median)).map((row) -> notice(row, median)).toList();
	}

	/**
	 * Tells of the rows that the file itself marks as not to be trusted: they go in, are
	 * kept and shown, and never used.
	 * @param rows all good rows of one person
	 * @return a notice for each, in the order of the rows
	 */
	public static List<RowProblem> marked(List<ReadRow> rows) {
		return rows.stream()
			.filter((row) -> row.goodMorning().unsure())
			.map((row) -> RowProblem.notice(row.line(), ImportField.UNSURE, String.valueOf(row.goodMorning().rhrBpm()),
					Message.of("importRow.unsure")))
			.toList();
	}

	private static @Nullable Double reading(ReadRow row) {
		return row.goodMorning().unsure() ? null : row.goodMorning().rhrBpm();
	}

	private static boolean isFar(ReadRow row, double median) {
		Double reading = reading(row);
		return reading != null && Math.abs(reading - median) >= FAR;
	}

	private static RowProblem notice(ReadRow row, double median) {
		return RowProblem.notice(row.line(), ImportField.RHR, String.valueOf(reading(row)),
				Message.of("importRow.unusual-rhr", median));
	}

}
