package org.fallow.baseline;

/**
 * Decimals as they are meant. Readings are decimals of a few places, and what is computed
 * from them is compared with limits that are decimals too: 54.1 - 50.1 is 4 and not
 * 3.9999999999999996.
 */
final class Exact {

	/** Parts of a bpm that are told apart; readings have far fewer places. */
	private static final double PARTS = 1e9;

	private Exact() {
	}

	/**
	 * The decimal a result of few operations on decimals stands for.
	 * @param value a finite number below a million
	 * @return the double nearest to that decimal, of nine places at most
	 */
	static double decimal(double value) {
		return Math.rint(value * PARTS) / PARTS;
	}

}
