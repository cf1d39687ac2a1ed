package org.fallow.illness.core;

import java.util.Map;

/**
 * One combination of the values of the clearance table's columns; what they mean is said
 * at the head of the file.
 */
record TableDay(String hold, String coach, String clinician, String fever, String medicine, String body, String above,
		String rhr, String stage, String entry, String injury, String sustained, String hrv, String feels) {

	private static final String SILENCE = "---";

	private static final Map<String, String> MEASURED = Map.of("no baseline", "wwwW", "within", "WWWW", "low", "WWWL",
			"low again", "WWWLL", "raised", "WWWR", "action", "WWWRR", "high", "WWWH", "very high", "WWWV");

	private static final Map<String, String> LEFT_OUT = Map.ofEntries(Map.entry("kept within", "WWW"),
			Map.entry("kept low", "WWWL"), Map.entry("kept low again", "WWWLL"), Map.entry("kept raised", "WWWR"),
			Map.entry("kept action", "WWWRR"), Map.entry("kept high", "WWWH"), Map.entry("kept very high", "WWWV"),
			Map.entry("long quiet", "WWW---"), Map.entry("long action", "WWRR---"), Map.entry("long high", "WWWH---"));

	private static final Map<String, String> MEASURED_IN_A_RISE = Map.of("within", "HHLW", "low", "HHWL", "low again",
			"HHWLL", "raised", "HHWLR", "action", "HHWR", "high", "HHWH", "very high", "HHWV");

	private static final Map<String, String> LEFT_OUT_IN_A_RISE = Map.ofEntries(Map.entry("kept within", "HHW"),
			Map.entry("kept low", "HHWL"), Map.entry("kept low again", "HHWLL"), Map.entry("kept raised", "HHWLR"),
			Map.entry("kept action", "HHWR"), Map.entry("kept high", "HHWH"), Map.entry("kept very high", "HHWV"),
			Map.entry("long quiet", "HHW---"), Map.entry("long action", "HHWR---"), Map.entry("long high", "HHWH---"));

	static TableDay of(String[] v) {
		return new TableDay(v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7], v[8], v[9], v[10], v[11], v[12], v[13]);
	}

	boolean given() {
		return this.entry.equals("given");
	}

	boolean rises() {
		return this.sustained.equals("signal");
	}

	boolean held() {
		return this.hold.equals("standing");
	}

	boolean tracked() {
		return !this.rhr.equals("no baseline");
	}

	/** Whether today's reading is taken. */
	boolean measured() {
		return MEASURED.containsKey(this.rhr);
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
		if (rises() && !tracked()) {
			return "nothing rises above no baseline";
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
	 * The mornings before today, one letter each, the last one yesterday's: W within, R
	 * raised, H high, V very high, L low, w without a heart rate, - without an entry.
	 */
	String past() {
		String letters = tracked() ? pastOfRhr() : "www";
		boolean silent = letters.endsWith(SILENCE);
		String read = silent ? letters.substring(0, letters.length() - SILENCE.length()) : letters;
		if (this.above.equals("third")) {
			return silent ? read + "ww-" : (tracked() ? "WWWWW" : "wwwww").substring(Math.min(5, read.length())) + read;
		}
		return switch (this.entry) {
			case "missing" -> this.rhr.equals("kept action") ? letters + "--"
					: this.rhr.equals("long high") ? read + "w" + SILENCE : letters;
			case "missing-after-carried" -> silent ? letters : letters + "-";
			default -> letters;
		};
	}

	private String pastOfRhr() {
		if (measured()) {
			String letters = (rises() ? MEASURED_IN_A_RISE : MEASURED).get(this.rhr);
			return letters.substring(0, letters.length() - 1);
		}
		return (rises() ? LEFT_OUT_IN_A_RISE : LEFT_OUT).get(this.rhr);
	}

	/** Today's letter. */
	char today() {
		if (!given()) {
			return '-';
		}
		if (!tracked()) {
			return 'W';
		}
		String letters = measured() ? (rises() ? MEASURED_IN_A_RISE : MEASURED).get(this.rhr) : "w";
		return letters.charAt(letters.length() - 1);
	}

}
