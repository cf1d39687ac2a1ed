package org.fallow.rules;

import java.util.List;

import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;

/**
 * Published protocols in the form of our return paths. They keep their own days, minutes,
 * shares of HRmax and exertion. Ours in both are: the criteria of each gate (they only
 * hold back), the runs asked for, the shares of volume and long run, and the watch days
 * of the last stage, which is our watched full training. Neither study proves that a gate
 * is safe.
 */
public final class PublishedPaths {

	/** Days of the last stage: ours, as on the long path. */
	private static final int WATCHED = 14;

	private PublishedPaths() {
	}

	/**
	 * A path as a protocol defines it.
	 * @param protocol which
	 * @param name the path it is taken for
	 * @return the path; of {@link Protocol#OURS}, the default one
	 */
	public static Path of(Protocol protocol, PathName name) {
		return switch (protocol) {
			case OURS -> DefaultRules.ruleSet().path(name);
			case ELLIOTT_2020 -> elliott2020(name);
			case SALMAN_2021 -> salman2021(name);
		};
	}

	/**
	 * Elliott and others 2020: rest for at least 10 days from onset and 7 days without
	 * symptoms; then below 70 % of HRmax for 15 minutes at most on 2 days, below 80 % for
	 * 30 on 1, 45 on 1 and 60 on 2; normal training not before day 17, where the day of
	 * onset is day 1. Caps and minutes R; day counts M, corroborated R. The efforts are
	 * ours: 3 and 4 of 10, as our own stages have them at such shares of HRmax.
	 * @param name the path it is taken for
	 * @return five stages, the last one watched
	 */
	public static Path elliott2020(PathName name) {
		return new Path(
				name, 10, false, 7, false, List.of(minutes(2, 0.70, 3.0, 15, 0.5), minutes(1, 0.80, 4.0, 30, 0.5),
						minutes(1, 0.80, 4.0, 45, 0.5), minutes(2, 0.80, 4.0, 60, 0.75), watched()),
				Protocol.ELLIOTT_2020);
	}

	/**
	 * Salman and others 2021: 7 days without symptoms, then five phases of at least 7
	 * days at ratings of perceived exertion of 6-8, 6-11, 12-14, 12-14 and from 15; the
	 * last one not before day 35 after symptoms end, the last symptomatic morning being
	 * day 0. Key box R; phases R2. Its first two phases are walking and work about the
	 * house (M), so we ask for no run in them. It names no minutes and no share of HRmax.
	 * @param name the path it is taken for
	 * @return five stages, the last one watched
	 */
	public static Path salman2021(PathName name) {
		return new Path(name, 7, true, 7, false,
				List.of(exertion(8, 0, 0.5), exertion(11, 0, 0.5), exertion(14, 3, 0.5), exertion(14, 3, 1), watched()),
				Protocol.SALMAN_2021);
	}

	private static Stage minutes(int days, double heartRate, double effort, int minutes, double volume) {
		return new Stage(days, Clearance.EASY_ONLY, 1, effort, heartRate, Intensity.EASY, volume, 1, minutes, List.of(),
				null);
	}

	private static Stage exertion(int borg, int runs, double share) {
		return new Stage(7, Clearance.EASY_ONLY, runs, BorgScale.cr10Ceiling(borg), null, Intensity.EASY, share, share,
				null, List.of(), borg);
	}

	private static Stage watched() {
		return new Stage(WATCHED, Clearance.FULL_TRAINING, 0, null, null, null, 1, 1, null, List.of(), null);
	}

}
