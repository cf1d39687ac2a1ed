package org.fallow.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

import org.fallow.wording.Problem;

/**
 * A rule set changed by what was typed, number by number.
 *
 * @param rules the changed rule set; unchanged in those numbers that could not be read
 * @param problems what is wrong, in words for the fields; empty if it may be stored
 */
public record RuleEdit(RuleSet rules, List<Problem> problems) {

	private static final Pattern NUMBER = Pattern.compile("-?\\d{1,6}([.,]\\d{1,6})?");

	/** Copies the problems. */
	public RuleEdit {
		problems = List.copyOf(problems);
	}

	/**
	 * Changes numbers.
	 * @param rules the rule set before
	 * @param typed what was typed, by pointer into the canonical JSON; what is no number
	 * of the rule set is passed over, and what is missing stays as it is
	 * @return the changed rule set and what is wrong with it
	 */
	public static RuleEdit of(RuleSet rules, Map<String, String> typed) {
		RuleTree tree = RuleTree.of(rules);
		List<Problem> problems = new ArrayList<>();
		for (RuleField field : RuleBounds.fields(rules)) {
			String text = typed.getOrDefault(field.pointer(), RuleTree.text(tree, field.pointer())).strip();
			boolean whole = !tree.hasDecimals(field.pointer());
			String plain = text.replace(',', '.');
			if (!NUMBER.matcher(text).matches()) {
				problems.add(Problem.of(field.pointer(), "rules.value.number"));
			}
			else if (whole && !plain.replaceFirst("\\.0+$", "").matches("-?\\d+")) {
				problems.add(Problem.of(field.pointer(), "rules.value.whole"));
			}
			else {
				tree.set(field.pointer(), RuleTree.text(Double.parseDouble(plain)));
			}
		}
		RuleSet changed = tree.rules();
		problems.addAll(RuleBounds.check(changed));
		return new RuleEdit(changed, problems);
	}

	/**
	 * The numbers of a rule set as text.
	 * @param rules the rule set
	 * @return by pointer into the canonical JSON, those of {@link RuleBounds#fields}
	 */
	public static Map<String, String> texts(RuleSet rules) {
		RuleTree tree = RuleTree.of(rules);
		LinkedHashMap<String, String> texts = new LinkedHashMap<>();
		RuleBounds.fields(rules).forEach((field) -> texts.put(field.pointer(), RuleTree.text(tree, field.pointer())));
		return texts;
	}

}
