package org.fallow.measure;

/**
 * How much a healthy person's mornings scatter.
 *
 * @param name in the report
 * @param source where the numbers come from
 * @param bpm SD of resting heart rate from morning to morning, bpm; 0 if relative
 * @param share the same as a share of the person's own level; 0 if in bpm
 * @param ln SD of ln RMSSD from morning to morning
 * @param carried correlation of a morning with the one before
 */
record Noise(String name, String source, double bpm, double share, double ln, double carried) {

	static final Noise TWO_BPM = new Noise("2 bpm", "common practice, lower end of 2-3 bpm", 2, 0, 0.12, 0.3);

	static final Noise THREE_BPM = new Noise("3 bpm", "common practice, upper end of 2-3 bpm", 3, 0, 0.12, 0.3);

	static final Noise TEN_PERCENT = new Noise("10 % of the own level", "Buchheit 2014, table 1", 0, 0.10, 0.12, 0.3);

	double sdAt(double level) {
		return this.bpm + this.share * level;
	}

}
