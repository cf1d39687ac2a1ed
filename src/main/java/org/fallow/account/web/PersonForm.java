package org.fallow.account.web;

import org.jspecify.annotations.Nullable;

/**
 * An athlete to keep on file, as typed.
 *
 * @param name the athlete's
 * @param teamId which team
 * @param groupId which group; empty for none
 * @param birthDate empty when not known
 * @param agreed whether the athlete, or a guardian, has agreed
 */
public record PersonForm(@Nullable String name, @Nullable String teamId, @Nullable String groupId,
		@Nullable String birthDate, @Nullable Boolean agreed) {

	static PersonForm blank() {
		return new PersonForm(null, null, null, null, null);
	}

	static String text(@Nullable String typed) {
		return (typed == null) ? "" : typed.strip();
	}

}
