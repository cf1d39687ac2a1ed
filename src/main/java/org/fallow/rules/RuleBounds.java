package org.fallow.rules;

import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.RuleField.Looser;
import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * The bounds of a rule set: how far a coach may move each number. A looser value than the
 * safe bound is refused, a stricter one is allowed up to a sane limit, and so is no
 * combination that makes no sense. Needs nothing but the rule set.
 */
public final class RuleBounds {

	private final RuleSet rules;

	private final RuleTree tree;

	private final List<Problem> problems = new ArrayList<>();

	private RuleBounds(RuleSet rules) {
		this.rules = rules;
		this.tree = RuleTree.of(rules);
	}

	/**
	 * What is wrong with a rule set.
	 * @param rules the rule set
	 * @return the problems, empty if it may be used; the field of each is a pointer into
	 * the canonical JSON, as in RFC 6901
	 */
	public static List<Problem> check(RuleSet rules) {
		RuleBounds bounds = new RuleBounds(rules);
		fields(rules).forEach(bounds::check);
		for (Path path : rules.paths()) {
			bounds.shape(path);
		}
		bounds.order();
		bounds.combinations();
		return List.copyOf(bounds.problems);
	}

	/**
	 * The greatest value that any rule set may give a whole number, for what has to be
	 * refused whatever a team's rules are.
	 * @param pointer where it stands in the canonical JSON
	 * @return its greatest value
	 */
	public static int mostOf(String pointer) {
		return RuleFields.mostOf(pointer);
	}

	/**
	 * Every number of a rule set with its bounds.
	 * @param rules the rule set; its paths' definitions decide which there are
	 * @return in the order of the members, paths last
	 */
	public static List<RuleField> fields(RuleSet rules) {
		List<RuleField> fields = new ArrayList<>(RuleFields.general());
		rules.paths().forEach((path) -> fields.addAll(PathFields.of(definition(path))));
		return List.copyOf(fields);
	}

	/**
	 * What the numbers of a rule set are by default: ours, and on each path those of its
	 * definition.
	 * @param rules the rule set
	 * @return the default of the same paths
	 */
	public static RuleSet defaults(RuleSet rules) {
		RuleSet defaults = DefaultRules.ruleSet();
		for (Path path : rules.paths()) {
			defaults = defaults.with(definition(path));
		}
		return defaults;
	}

	private static Path definition(Path path) {
		return PublishedPaths.of(path.definedBy(), path.name());
	}

	private void check(RuleField field) {
		Double value = this.tree.number(field.pointer());
		if (value == null) {
			add(field.pointer(), "rules.bound.missing");
		}
		else if (field.isFixed() && !field.allows(value)) {
			add(field.pointer(), "rules.bound.fixed", RuleTree.text(value), RuleTree.text(field.least()));
		}
		else if (field.isLooser(value)) {
			boolean lower = field.looser() == Looser.LOWER;
			add(field.pointer(), lower ? "rules.bound.looser-low" : "rules.bound.looser-high", RuleTree.text(value),
					RuleTree.text(lower ? field.least() : field.most()));
		}
		else if (!field.allows(value)) {
			add(field.pointer(), "rules.bound.beyond", RuleTree.text(value), RuleTree.text(field.least()),
					RuleTree.text(field.most()));
		}
	}

	/** What is no number of a path: as its definition has it, or stricter. */
	private void shape(Path path) {
		Path definition = definition(path);
		String at = "/paths/" + path.name().ordinal();
		if (!path.definedBy().mayDefine(path.name())) {
			add(at + "/protocol", "rules.path.protocol");
		}
		if (path.stages().size() != definition.stages().size()) {
			add(at + "/stages", "rules.path.stages", path.stages().size(), definition.stages().size());
			return;
		}
		if (definition.fromLastSymptom() && !path.fromLastSymptom()) {
			add(at + "/fromLastSymptom", "rules.path.from-last-symptom");
		}
		if (definition.eating() && !path.eating()) {
			add(at + "/eating", "rules.path.eating");
		}
		for (int i = 0; i < path.stages().size(); i++) {
			shape(at + "/stages/" + i, path.stages().get(i), definition.stages().get(i));
		}
	}

	private void shape(String at, Stage stage, Stage definition) {
		if (stage.clearance() != definition.clearance()) {
			add(at + "/clearance", "rules.stage.clearance");
		}
		if (definition.highest() != null
				&& (stage.highest() == null || stage.highest().compareTo(definition.highest()) > 0)) {
			add(at + "/highest", "rules.stage.highest");
		}
		if (stage.firstRunMinutes().size() > definition.firstRunMinutes().size()) {
			add(at + "/firstRunMinutes", "rules.stage.first-runs");
		}
		ceilings(at, stage, definition);
	}

	/** A ceiling the definition leaves open may be set, but to something sensible. */
	private void ceilings(String at, Stage stage, Stage definition) {
		added(at + "/effortCeiling", definition.effortCeiling(), stage.effortCeiling(), 1, 10);
		added(at + "/heartRateCeiling", definition.heartRateCeiling(), stage.heartRateCeiling(), 0.5, 1);
		added(at + "/longRunMinutes", definition.longRunMinutes(), stage.longRunMinutes(), 5, 600);
		added(at + "/borgCeiling", definition.borgCeiling(), stage.borgCeiling(), BorgScale.LEAST, BorgScale.MOST);
		Integer borg = stage.borgCeiling();
		Double effort = stage.effortCeiling();
		boolean sensible = borg != null && borg >= BorgScale.LEAST && borg <= BorgScale.MOST;
		if (borg != null && sensible && (effort == null || effort > BorgScale.cr10Ceiling(borg))) {
			add(at + "/effortCeiling", "rules.stage.borg", borg, RuleTree.text(BorgScale.cr10Ceiling(borg)));
		}
	}

	private void added(String pointer, @Nullable Number defined, @Nullable Number value, double least, double most) {
		if (defined == null && value != null && (value.doubleValue() < least || value.doubleValue() > most)) {
			add(pointer, "rules.bound.beyond", RuleTree.text(value.doubleValue()), RuleTree.text(least),
					RuleTree.text(most));
		}
	}

	/**
	 * A later path is never shorter than an earlier one: not in symptom-free mornings, to
	 * full training or to the close, and not in stages, for the stage is kept when the
	 * path is judged anew, and a later stage allows more. The first stage may begin
	 * earlier, where what it allows is less.
	 */
	private void order() {
		for (int i = 1; i < this.rules.paths().size(); i++) {
			Path earlier = this.rules.paths().get(i - 1);
			Path later = this.rules.paths().get(i);
			boolean shorter = later.symptomFreeMornings() < earlier.symptomFreeMornings()
					|| later.daysToLastStage() < earlier.daysToLastStage()
					|| later.daysToClose() < earlier.daysToClose() || later.stages().size() < earlier.stages().size();
			if (shorter) {
				add("/paths/" + i, "rules.path.shorter", later.name().name(), earlier.name().name());
			}
		}
	}

	private void combinations() {
		RuleSet.Baseline baseline = this.rules.baseline();
		RuleSet.Flags flags = this.rules.flags();
		atMost("/baseline/provisionalFrom", baseline.provisionalFrom(), "/baseline/establishedFrom",
				baseline.establishedFrom());
		atMost("/baseline/windowDays", baseline.windowDays(), "/baseline/fallbackDays", baseline.fallbackDays());
		atMost("/baseline/fewReadings", baseline.fewReadings(), "/baseline/windowDays", baseline.windowDays());
		atMost("/baseline/fewReadings", baseline.fewReadings(), "/baseline/fallbackReadings",
				baseline.fallbackReadings());
		atMost("/flags/highFloor", flags.highFloor(), "/flags/highCeiling", flags.highCeiling());
		below("/flags/highCeiling", flags.highCeiling(), "/flags/veryHigh", flags.veryHigh());
		atMost("/flags/restingBpm", flags.restingBpm(), "/flags/standingBpm", flags.standingBpm());
		atMost("/flags/askFloor", flags.askFloor(), "/flags/askCeiling", flags.askCeiling());
		line(flags, this.rules.line());
		atMost("/opening/coldMornings", this.rules.opening().coldMornings(), "/opening/coldWithinDays",
				this.rules.opening().coldWithinDays());
		atMost("/workingLevel/shutMornings", this.rules.workingLevel().shutMornings(), "/workingLevel/ofMornings",
				this.rules.workingLevel().ofMornings());
		atMost("/limits/shortDays", this.rules.limits().shortDays(), "/limits/illDays", this.rules.limits().illDays());
	}

	/**
	 * A line that no reading below High reaches would raise nobody, and one that a
	 * reading ends while it is still above would not stand.
	 */
	private void line(RuleSet.Flags flags, RuleSet.Line line) {
		atMost("/line/floor", line.floor(), "/line/ceiling", line.ceiling());
		below("/line/ceiling", line.ceiling(), "/flags/highFloor", flags.highFloor());
		atMost("/line/endsBelow", line.endsBelow(), "/line/floor", line.floor());
		atMost("/line/pairFloor", line.pairFloor(), "/line/floor", line.floor());
	}

	private void atMost(String pointer, double value, String other, double most) {
		if (value > most) {
			add(pointer, "rules.combination.at-most", RuleTree.text(value), other, RuleTree.text(most));
		}
	}

	private void below(String pointer, double value, String other, double above) {
		if (value >= above) {
			add(pointer, "rules.combination.below", RuleTree.text(value), other, RuleTree.text(above));
		}
	}

	private void add(String pointer, String code, Object... arguments) {
		this.problems.add(Problem.of(pointer, code, arguments));
	}

}
