package org.fallow.team;

/**
 * Who agreed for an athlete under 18.
 *
 * @param name the guardian's name, not blank
 * @param role what the guardian is to the athlete, not blank
 */
public record Guardian(String name, String role) {

	/**
	 * Checks both.
	 * @throws IllegalArgumentException if one is blank or longer than a name may be
	 */
	public Guardian {
		name = required(name);
		role = required(role);
	}

	private static String required(String text) {
		String stripped = NameKey.cleaned(text);
		if (stripped.isEmpty() || stripped.length() > NewAthlete.LONGEST_NAME || NameKey.hasControl(stripped)) {
			throw new IllegalArgumentException("a guardian has a name and a role");
		}
		return stripped;
	}

}
