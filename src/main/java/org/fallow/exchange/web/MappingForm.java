package org.fallow.exchange.web;

import java.util.Arrays;
import java.util.Optional;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.jspecify.annotations.Nullable;

/**
 * What holds where a file does not say, as the page sends it; the columns are read apart.
 *
 * @param method how the heart rate was taken
 * @param posture posture
 */
record MappingForm(@Nullable String method, @Nullable String posture) {

	Optional<Method> takenBy() {
		return Arrays.stream(Method.values()).filter((one) -> one.name().equals(this.method)).findFirst();
	}

	Optional<Posture> takenIn() {
		return Arrays.stream(Posture.values()).filter((one) -> one.name().equals(this.posture)).findFirst();
	}

	/** Whether anything is told that is nothing that the page offers. */
	boolean isUnknown() {
		return (isTold(this.method) && takenBy().isEmpty()) || (isTold(this.posture) && takenIn().isEmpty());
	}

	private static boolean isTold(@Nullable String text) {
		return text != null && !text.isBlank();
	}

}
