package org.fallow.contact.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.UUID;

import org.fallow.entry.Submission;
import org.jspecify.annotations.Nullable;

/** Reads what forms send. */
final class Typed {

	private Typed() {
	}

	static @Nullable LocalDate day(@Nullable String typed) {
		try {
			return LocalDate.parse(String.valueOf(typed));
		}
		catch (DateTimeException ex) {
			return null;
		}
	}

	static <E extends Enum<E>> @Nullable E one(E[] values, @Nullable String typed) {
		return Arrays.stream(values).filter((one) -> one.name().equals(typed)).findFirst().orElse(null);
	}

	/** The sending's id; one that cannot be read is taken for a new sending. */
	static UUID request(@Nullable String typed) {
		try {
			return UUID.fromString(String.valueOf(typed));
		}
		catch (IllegalArgumentException ex) {
			return Submission.newRequestId();
		}
	}

}
