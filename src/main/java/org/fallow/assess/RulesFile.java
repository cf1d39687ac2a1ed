package org.fallow.assess;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBounds;
import org.fallow.rules.RuleJson;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * The rule set the command decides by.
 */
final class RulesFile {

	private static final long LARGEST = 1 << 20;

	private RulesFile() {
	}

	/**
	 * Reads a rule set.
	 * @param file its JSON; absent for the one Fallow comes with
	 * @return the rule set
	 * @throws BadInput if the file is none, names what is no rule, or leaves the safe
	 * bounds
	 */
	static RuleSet read(@Nullable Path file) {
		if (file == null) {
			return DefaultRules.ruleSet();
		}
		RuleSet rules = parsed(file);
		for (Problem problem : RuleBounds.check(rules)) {
			throw BadInput.file(file, "assess.rules.unsafe", problem.field(), problem.message());
		}
		return rules;
	}

	private static RuleSet parsed(Path file) {
		try {
			if (Files.size(file) > LARGEST) {
				throw BadInput.file(file, "assess.rules.no-rules", "");
			}
			return RuleJson.parse(Files.readString(file));
		}
		catch (IOException ex) {
			throw BadInput.file(file, "assess.file.unreadable");
		}
		catch (IllegalArgumentException ex) {
			throw BadInput.file(file, "assess.rules.no-rules", String.valueOf(ex.getMessage()));
		}
	}

}
