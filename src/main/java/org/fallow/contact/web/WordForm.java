package org.fallow.contact.web;

import java.time.LocalDate;
import java.util.Objects;

import org.fallow.contact.NeedLine;
import org.fallow.contact.core.MarkState;
import org.fallow.contact.core.Matter;
import org.jspecify.annotations.Nullable;

/**
 * A mark as typed.
 *
 * @param matter about what
 * @param arose the day it arose
 * @param state how far the coach has come
 * @param note what was said
 * @param share {@code true} where the athlete may read the note
 * @param requestId this form's sending
 */
public record WordForm(@Nullable String matter, @Nullable String arose, @Nullable String state, @Nullable String note,
		@Nullable String share, @Nullable String requestId) {

	@Nullable Matter about() {
		return Typed.one(Matter.values(), this.matter);
	}

	@Nullable LocalDate day() {
		return Typed.day(this.arose);
	}

	@Nullable MarkState marked() {
		return Typed.one(MarkState.values(), this.state);
	}

	/**
	 * What was typed as the note.
	 * @return the text, as it came
	 */
	public String words() {
		return Objects.requireNonNullElse(this.note, "");
	}

	/**
	 * Whether the athlete may read it.
	 * @return false unless ticked
	 */
	public boolean shares() {
		return "true".equals(this.share);
	}

	/**
	 * Whether this form was about a line.
	 * @param line of the worklist
	 * @return true if so
	 */
	public boolean isAbout(NeedLine line) {
		return line.key().matter() == about() && line.key().arose().equals(day());
	}

}
