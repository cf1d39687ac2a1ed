package org.fallow.rules;

import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.RuleField.Looser;
import org.fallow.rules.RuleField.Mark;
import org.fallow.rules.RuleField.Unit;
import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;
import org.jspecify.annotations.Nullable;

/**
 * The numbers of a path with their bounds: no number may be looser than its definition
 * has it, ours or the published one.
 */
final class PathFields {

	private static final int MOST_ILL_DAYS = 60;

	private static final int MOST_MORNINGS = 21;

	private static final int MOST_STAGE_DAYS = 60;

	private static final int MOST_RUNS = 14;

	private static final int LEAST_MINUTES = 5;

	private final List<RuleField> fields = new ArrayList<>();

	private final String path;

	private final Mark mark;

	private PathFields(Path path) {
		this.path = "/paths/" + path.name().ordinal();
		this.mark = (path.definedBy() == Protocol.OURS) ? Mark.OWN : Mark.R2;
	}

	/** Of a path by the definition it must not be looser than. */
	static List<RuleField> of(Path definition) {
		PathFields fields = new PathFields(definition);
		fields.path(definition);
		for (int i = 0; i < definition.stages().size(); i++) {
			fields.stage(fields.path + "/stages/" + i, definition.stages().get(i));
		}
		return List.copyOf(fields.fields);
	}

	private void path(Path path) {
		add(this.path, "path.illDays", path.illDays(), MOST_ILL_DAYS, Looser.LOWER, Unit.DAYS, this.mark);
		add(this.path, "path.symptomFreeMornings", path.symptomFreeMornings(), MOST_MORNINGS, Looser.LOWER,
				Unit.MORNINGS, this.mark);
	}

	private void stage(String at, Stage stage) {
		add(at, "stage.days", stage.days(), MOST_STAGE_DAYS, Looser.LOWER, Unit.DAYS,
				(stage.clearance() == Clearance.FULL_TRAINING) ? Mark.OWN : this.mark);
		add(at, "stage.runs", stage.runs(), MOST_RUNS, Looser.LOWER, Unit.RUNS, Mark.OWN);
		optional(at, "stage.effortCeiling", 1, stage.effortCeiling(), Unit.CR10);
		optional(at, "stage.heartRateCeiling", 0.5, stage.heartRateCeiling(), Unit.SHARE);
		add(at, "stage.volumeShare", 0.1, stage.volumeShare(), Looser.HIGHER, Unit.SHARE, Mark.OWN);
		add(at, "stage.longRunShare", 0.1, stage.longRunShare(), Looser.HIGHER, Unit.SHARE, Mark.OWN);
		optional(at, "stage.longRunMinutes", LEAST_MINUTES, stage.longRunMinutes(), Unit.MINUTES);
		optional(at, "stage.borgCeiling", BorgScale.LEAST, stage.borgCeiling(), Unit.BORG);
		for (int day = 0; day < stage.firstRunMinutes().size(); day++) {
			this.fields.add(new RuleField(at + "/firstRunMinutes/" + day, "stage.firstRunMinutes",
					stage.firstRunMinutes().get(day), LEAST_MINUTES, stage.firstRunMinutes().get(day), Looser.HIGHER,
					Unit.MINUTES, this.mark));
		}
	}

	private void optional(String at, String label, double least, @Nullable Number most, Unit unit) {
		if (most != null) {
			add(at, label, least, most.doubleValue(), Looser.HIGHER, unit, this.mark);
		}
	}

	private void add(String at, String label, double least, double most, Looser looser, Unit unit, Mark mark) {
		double usual = (looser == Looser.LOWER) ? least : most;
		this.fields.add(new RuleField(at + label.substring(label.indexOf('.')).replace('.', '/'), label, usual, least,
				most, looser, unit, mark));
	}

}
