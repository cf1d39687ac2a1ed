package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * What an athlete answered when asked, after mornings without an entry, about an illness
 * meanwhile.
 *
 * @param ill whether there was one
 * @param since first day of the illness; absent without one, or where not told
 */
public record Meanwhile(boolean ill, @Nullable LocalDate since) {

	/** Not ill meanwhile; so is taken what a file says that cannot tell. */
	public static final Meanwhile NO = new Meanwhile(false, null);

	/**
	 * Refuses a first day of no illness.
	 */
	public Meanwhile {
		if (!ill && since != null) {
			throw new IllegalArgumentException("no illness has no first day");
		}
	}

	/**
	 * Ill meanwhile.
	 * @param since first day of the illness; absent where not told
	 * @return the answer
	 */
	public static Meanwhile ill(@Nullable LocalDate since) {
		return new Meanwhile(true, since);
	}

}
