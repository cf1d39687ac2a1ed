package org.fallow.illness.core;

import java.util.Map;

/**
 * One combination of the values of the clearance table's columns; what they mean is said
 * at the head of the file.
 */
record TableDay(String hold, String coach, String clinician, String fever, String medicine, String body, String above,
		String rhr, String stage, String entry, String injury, String line, String hrv, String feels) {

	private static final String SILENCE = "---";

	private static final Map<String, String> MEASURED = Map.of("no baseline", "wwwW", "within", "WWWW", "low", "WWWL",
			"low again", "WWWLL", "raised", "WWWR");

	private static final Map<String, String> LEFT_OUT = Map.of("kept within", "WWW", "kept low", "WWWL",
			"kept low again", "WWWLL", "kept raised", "WWWR", "long quiet", "WWW---");

	private static final Map<String, String> MEASURED_STANDING = Map.of("starts", "WWWRR", "high", "WWWH", "very high",
			"WWWV", "raised", "WH--wR", "within", "HSSS");

	private static final Map<String, String> LEFT_OUT_STANDING = Map.of("kept within", "HSS", "kept raised", "H--wR",
			"kept high", "WWWH", "kept very high", "WWWV", "long quiet", "HSS---", "long high", "WWWH---");

	static TableDay of(String[] v) {
		return new TableDay(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8], v[9], v[10], v[11], v[12], v[13]);
	}

	boolean given() {
		return this.entry.equals("given");
	}

	boolean stands() {
		return this.line.equals("stands");
	}

	boolean held() {
		return this.hold.equals("standing");
	}

	boolean tracked() {
		return !this.rhr.equals("no baseline");
	}

	/** Whether today's reading is taken. */
	boolean measured() {
		return MEASURED.containsKey(this.rhr) || MEASURED_STANDING.containsKey(this.rhr);
	}

	/** Whether this morning is one of illness. */
	boolean sick() {
		return this.fever.equals("yes") || this.medicine.equals("illness") || this.body.equals("yes")
				|| this.above.equals("third");
	}

	boolean inAStage() {
		return this.stage.length() == 1;
	}

	/** The stage before the morning's steps, 0 without an episode. */
	int stageBefore() {
		int back = this.above.equals("yes") ? 1 : 0;
		return inAStage() ? Integer.parseInt(this.stage) + back : 0;
	}

	/** Why no facts make this combination; empty where some do. */
	String impossible() {
		boolean said = this.fever.equals("yes") || !this.medicine.equals("none") || !this.body.equals("none")
				|| !this.above.equals("none") || !this.feels.equals("unanswered");
		boolean reads = measured() && tracked();
		if (!given() && (said || reads)) {
			return "a missing entry says and measures nothing";
		}
		if (stands() && !tracked()) {
			return "nothing stands above no baseline";
		}
		if (stands() && this.rhr.contains("low")) {
			return "a low reading ends it";
		}
		if (!stands() && (this.rhr.contains("high") || this.rhr.equals("starts"))) {
			return "what starts it stands, until a lower reading";
		}
		if (held() && !inAStage() && !this.stage.equals("ill")) {
			return "a hold opens an episode, and under a hold none is withdrawn";
		}
		if (this.fever.equals("yes") && this.stage.equals("withdrawn")) {
			return "none is withdrawn within 24 h of fever";
		}
		if (this.above.equals("third") && this.stage.equals("withdrawn")) {
			return "cold mornings count afresh after a withdrawal";
		}
		if (sick() && !this.stage.equals("ill") && !this.stage.equals("withdrawn")) {
			return "a morning of illness opens an episode or is a relapse";
		}
		if (this.above.equals("yes") && this.stage.equals("3")) {
			return "a symptom that comes back steps back from Stage 3";
		}
		boolean high = this.rhr.equals("kept high") || this.rhr.equals("kept very high");
		return (high && this.entry.equals("missing")) ? "the day after a High reading or its kept flag was Rest" : "";
	}

	/**
	 * The mornings before today, one letter each, the last one yesterday's: W within, S
	 * within but not below 4, R raised, H high, V very high, L low, w without a heart
	 * rate, - without an entry.
	 */
	String past() {
		String letters = tracked() ? pastOfRhr() : "www";
		boolean silent = letters.endsWith(SILENCE);
		String read = silent ? letters.substring(0, letters.length() - SILENCE.length()) : letters;
		if (this.above.equals("third")) {
			String before = tracked() ? "WWWWWW" : "wwwww";
			String spoken = read.replace("--w", "-ww");
			return silent ? read + "ww-" : before.substring(Math.min(before.length(), spoken.length())) + spoken;
		}
		return switch (this.entry) {
			case "missing" -> this.rhr.equals("long high") ? read + "w" + SILENCE : letters;
			case "missing-after-carried" -> silent ? letters : letters + "-";
			default -> letters;
		};
	}

	private String pastOfRhr() {
		if (measured()) {
			String letters = (stands() ? MEASURED_STANDING : MEASURED).get(this.rhr);
			return letters.substring(0, letters.length() - 1);
		}
		return (stands() ? LEFT_OUT_STANDING : LEFT_OUT).get(this.rhr);
	}

	/** Today's letter. */
	char today() {
		if (!given()) {
			return '-';
		}
		if (!tracked()) {
			return 'W';
		}
		String letters = measured() ? (stands() ? MEASURED_STANDING : MEASURED).get(this.rhr) : "w";
		return letters.charAt(letters.length() - 1);
	}

}
