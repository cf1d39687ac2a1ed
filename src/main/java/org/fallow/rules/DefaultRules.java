package org.fallow.rules;

import java.util.List;

import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;

/**
 * The rule set Fallow comes with. Each number's source, and how sure it is, stands in
 * docs/evidence.md.
 */
public final class DefaultRules {

	private static final RuleSet RULES = fromTheTable();

	private DefaultRules() {
	}

	/**
	 * The default rule set.
	 * @return the same at each call
	 */
	public static RuleSet ruleSet() {
		return RULES;
	}

	/** Numbers from the one table they stand in, {@link RuleFields}, and our paths. */
	private static RuleSet fromTheTable() {
		RuleTree tree = RuleTree.empty();
		RuleFields.general().forEach((field) -> tree.put(field.pointer(), field.usual()));
		return tree.rulesWith(paths());
	}

	private static List<Path> paths() {
		return List.of(new Path(PathName.VACCINATION, 1, false, 1, false, stages(1, 1, 2, 1, 1.0, List.of(30)), null),
				new Path(PathName.SHORT, 1, false, 1, false, stages(2, 2, 3, 1, 1.0, List.of(30)), null),
				new Path(PathName.STOMACH, 2, true, 2, true, stages(2, 2, 3, 1, 1.0, List.of(30)), null),
				new Path(PathName.THREE_WEEK, 2, false, 2, false, stages(7, 7, 7, 3, 1.0, List.of(30)), null),
				new Path(PathName.LONG, 10, false, 7, false, stages(7, 7, 14, 3, 0.75, List.of(15, 15, 30, 45)), null));
	}

	private static List<Stage> stages(int first, int second, int watched, int runs, double secondVolume,
			List<Integer> firstRuns) {
		return List.of(
				new Stage(first, Clearance.EASY_ONLY, runs, 3.0, 0.75, Intensity.EASY, 0.5, 0.5, 60, firstRuns, null),
				new Stage(second, Clearance.EASY_ONLY, runs, 4.0, 0.80, Intensity.STRIDES, secondVolume, 1, null,
						List.of(), null),
				new Stage(watched, Clearance.FULL_TRAINING, 0, null, null, null, 1, 1, null, List.of(), null));
	}

}
