package org.fallow.training.web;

import java.util.List;
import java.util.UUID;

import org.fallow.entry.Submission;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * What somebody says of usual training, as typed.
 *
 * @param weekMinutes minutes of a usual week
 * @param longMinutes minutes of the usual long run
 * @param maximumBpm greatest heart rate reached
 * @param requestId this form's sending
 */
public record StatementForm(@Nullable String weekMinutes, @Nullable String longMinutes, @Nullable String maximumBpm,
		@Nullable String requestId) {

	static StatementForm blank() {
		return new StatementForm(null, null, null, null);
	}

	UUID request() {
		return request(this.requestId);
	}

	/** A sending's id; one that cannot be read is taken for a new sending. */
	static UUID request(@Nullable String typed) {
		try {
			return UUID.fromString(String.valueOf(typed));
		}
		catch (IllegalArgumentException ex) {
			return Submission.newRequestId();
		}
	}

	static @Nullable Integer number(String field, @Nullable String typed, List<Problem> problems) {
		String text = (typed == null) ? "" : typed.strip();
		if (text.isEmpty()) {
			return null;
		}
		if (!text.matches("\\d{1,6}")) {
			problems.add(Problem.of(field, "statement.number"));
			return null;
		}
		return Integer.valueOf(text);
	}

}
