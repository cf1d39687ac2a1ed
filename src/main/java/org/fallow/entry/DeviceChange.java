package org.fallow.entry;

import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/**
 * A change of the device that measures, of its software or of the place where it is worn.
 * Readings before and after are different series.
 *
 * @param day the first morning after the change
 * @param recorded when it became known
 * @param what what changed
 * @param method the way of measuring it is about; absent for all of them
 */
public record DeviceChange(LocalDate day, Recorded recorded, What what, @Nullable Method method) implements Fact {

	/** What changed about the measuring. */
	public enum What {

		/** Another device. */
		DEVICE,
		/** New software of the same device. */
		SOFTWARE,
		/** Worn or held in another place. */
		PLACE

	}

	/**
	 * Whether readings of a way of measuring are another series since then.
	 * @param used the way
	 * @return true if the change is about it
	 */
	public boolean concerns(Method used) {
		return this.method == null || this.method == used;
	}

}
