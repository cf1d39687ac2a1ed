package org.fallow.account.web;

import java.util.Arrays;

import org.fallow.team.Basis;
import org.fallow.team.Guardian;
import org.fallow.team.Kept;
import org.fallow.team.NameKey;
import org.fallow.team.NewAthlete;
import org.jspecify.annotations.Nullable;

import org.springframework.validation.BindingResult;

/**
 * An athlete to keep on file, as typed.
 *
 * @param name the athlete's
 * @param teamId which team
 * @param groupId which group; empty for none
 * @param birthDate empty when not known
 * @param basis on whose word the data are kept
 * @param guardian name of the guardian whose word it is; empty for another
 * @param guardianRole what the guardian is to the athlete
 * @param another the name, where it was confirmed to be another person's
 */
public record PersonForm(@Nullable String name, @Nullable String teamId, @Nullable String groupId,
		@Nullable String birthDate, @Nullable String basis, @Nullable String guardian, @Nullable String guardianRole,
		@Nullable String another) {

	static PersonForm blank() {
		return new PersonForm(null, null, null, null, null, null, null, null);
	}

	static String text(@Nullable String typed) {
		return (typed == null) ? "" : typed.strip();
	}

	/**
	 * A name as it is kept. What is wrong with it is rejected: the field's own error says
	 * what.
	 */
	static String name(@Nullable String typed, String field, BindingResult result) {
		String name = NameKey.cleaned(text(typed));
		if (NameKey.hasControl(name)) {
			result.rejectValue(field, "name.control");
		}
		else if (name.isEmpty() || name.length() > NewAthlete.LONGEST_NAME) {
			result.rejectValue(field, "name.length", new Object[] { NewAthlete.LONGEST_NAME }, null);
		}
		return name;
	}

	/** On whose word the data are kept; what is missing or not enough is rejected. */
	@Nullable Kept kept(boolean under18, BindingResult result) {
		Basis word = Arrays.stream(Basis.values())
			.filter((one) -> one.name().equals(text(this.basis)))
			.findFirst()
			.orElse(null);
		if (word == null) {
			result.rejectValue("basis", "basis.missing");
			return null;
		}
		try {
			Kept kept = new Kept(word,
					(word == Basis.GUARDIAN_WORD) ? new Guardian(text(this.guardian), text(this.guardianRole)) : null);
			if (!kept.isEnough(under18)) {
				result.rejectValue("basis", "people.own-word-under-18");
			}
			return kept;
		}
		catch (IllegalArgumentException ex) {
			result.rejectValue("guardian", "people.guardian.missing");
			return null;
		}
	}

}
