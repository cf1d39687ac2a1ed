package org.fallow.rules.web;

import java.util.Arrays;
import java.util.List;

import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.RuleSet;

/**
 * A return path that would follow another definition, with what that means at least.
 *
 * @param name the path
 * @param before whose definition it follows
 * @param after whose it would follow
 * @param stagesBefore its stages
 * @param stagesAfter stages it would have
 * @param daysBefore least days from the first stage to the last
 * @param daysAfter the same under the draft
 */
public record PathChange(PathName name, Protocol before, Protocol after, int stagesBefore, int stagesAfter,
		int daysBefore, int daysAfter) {

	static List<PathChange> all(RuleSet before, RuleSet after) {
		return Arrays.stream(PathName.values())
			.filter((name) -> before.path(name).definedBy() != after.path(name).definedBy())
			.map((name) -> of(before.path(name), after.path(name)))
			.toList();
	}

	private static PathChange of(RuleSet.Path before, RuleSet.Path after) {
		return new PathChange(before.name(), before.definedBy(), after.definedBy(), before.stages().size(),
				after.stages().size(), days(before), days(after));
	}

	private static int days(RuleSet.Path path) {
		return path.stages().stream().limit(path.stages().size() - 1L).mapToInt(RuleSet.Stage::days).sum();
	}

	/**
	 * Whether athletes could be back sooner after the first stage.
	 * @return true if the draft's path takes fewer days from there
	 */
	public boolean isQuicker() {
		return this.daysAfter < this.daysBefore;
	}

}
