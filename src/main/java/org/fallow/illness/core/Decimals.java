package org.fallow.illness.core;

import java.math.BigDecimal;
import java.math.RoundingMode;

import org.jspecify.annotations.Nullable;

/**
 * Numbers as plain text for a sentence: a fixed number of places, halves rounded away
 * from zero, the sign kept.
 */
final class Decimals {

	private Decimals() {
	}

	/** One place; nothing for an absent number. */
	static String tenths(@Nullable Double value) {
		return (value == null) ? "" : text(value, 1);
	}

	static String hundredths(double value) {
		return text(value, 2);
	}

	private static String text(double value, int places) {
		String digits = BigDecimal.valueOf(Math.abs(value)).setScale(places, RoundingMode.HALF_UP).toPlainString();
		return (Double.compare(value, 0.0) < 0) ? "-" + digits : digits;
	}

}
