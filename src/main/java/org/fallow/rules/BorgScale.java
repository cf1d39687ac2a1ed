package org.fallow.rules;

/**
 * From ratings of perceived exertion on the scale of 6 to 20 to session RPE on CR-10, by
 * the words at the scales' own anchors: 11 is light, 2 is weak (light); 13 is somewhat
 * hard, 4 is somewhat strong; 15 is hard, 5 is strong. From memory (M). What lies between
 * two anchors takes the lower one (the safer reading). 9 is very light and 1 very weak;
 * below it sessions could only be logged as nothing at all, so 1 it stays.
 */
public final class BorgScale {

	/** Least rating. */
	public static final int LEAST = 6;

	/** Greatest rating. */
	public static final int MOST = 20;

	private static final int LIGHT = 11;

	private static final int SOMEWHAT_HARD = 13;

	private static final int HARD = 15;

	private static final int VERY_HARD = 17;

	private BorgScale() {
	}

	/**
	 * The CR-10 ceiling of a ceiling on the scale of 6 to 20.
	 * @param borg greatest rating, 6 to 20
	 * @return greatest session RPE, CR-10, never more than the same words allow
	 * @throws IllegalArgumentException outside 6 to 20
	 */
	public static double cr10Ceiling(int borg) {
		if (borg < LEAST || borg > MOST) {
			throw new IllegalArgumentException("ratings of perceived exertion are 6 to 20");
		}
		if (borg < LIGHT) {
			return 1;
		}
		if (borg < SOMEWHAT_HARD) {
			return 2;
		}
		return (borg < HARD) ? 4 : (borg < VERY_HARD) ? 5 : 7;
	}

}
