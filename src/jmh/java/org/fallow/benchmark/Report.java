package org.fallow.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Locale;

/**
 * Where benchmarks tell what they measured: a line on standard output and the same line
 * at the end of {@code target/benchmarks/results.txt}.
 */
public final class Report {

	private static final Path FILE = Path.of("target", "benchmarks", "results.txt");

	private Report() {
	}

	/**
	 * Tells one line.
	 * @param format as {@link String#format}, in the root locale
	 * @param arguments its arguments
	 */
	public static void tell(String format, Object... arguments) {
		String line = String.format(Locale.ROOT, format, arguments);
		System.out.println(line);
		try {
			Files.createDirectories(FILE.getParent());
			Files.writeString(FILE, line + System.lineSeparator(), StandardOpenOption.CREATE,
					StandardOpenOption.APPEND);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/**
	 * A value that a share of the others do not exceed, by the nearest rank.
	 * @param values at least one, in any order
	 * @param share above 0, up to 1: 0.5 for the median, 0.99 for p99
	 * @return the value
	 */
	public static double percentile(double[] values, double share) {
		double[] sorted = values.clone();
		Arrays.sort(sorted);
		return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
	}

	/**
	 * The median.
	 * @param values at least one, in any order
	 * @return by the nearest rank
	 */
	public static double median(double[] values) {
		return percentile(values, 0.5);
	}

}
