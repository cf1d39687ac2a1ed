package org.fallow.entry;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What Fallow takes from the consensus of the International Olympic Committee on acute
 * respiratory illness in athletes (Schwellnus 2022, BJSM 56:1066): the bands of severity
 * and length (R), and our selection of its lists before and after exercise (tables 6 and
 * 7; the selection is from memory, M). Its lists ask for help; they diagnose nothing.
 */
public final class IocConsensus {

	/** Greatest worst rating, 0 to 10, that is mild. */
	public static final double MILD_TO = 3;

	/** Greatest worst rating, 0 to 10, that is moderate; above it is severe. */
	public static final double MODERATE_TO = 7;

	/** Days ill below which an illness is short. */
	public static final int SHORT_BELOW_DAYS = 3;

	/** Days ill above which an illness is long. */
	public static final int LONG_OVER_DAYS = 7;

	private static final double LEAST = 0;

	private static final double MOST = 10;

	private static final Set<Symptom> RED_FLAGS = EnumSet.range(Symptom.CHEST_PAIN, Symptom.STIFF_NECK);

	private IocConsensus() {
	}

	/**
	 * The band of an illness by its worst rating.
	 * @param worst 0 to 10
	 * @return 0-3 mild, above 3 to 7 moderate, above 7 severe
	 * @throws IllegalArgumentException outside 0 to 10
	 */
	public static Severity severity(double worst) {
		if (!(worst >= LEAST && worst <= MOST)) {
			throw new IllegalArgumentException("the worst rating is 0 to 10");
		}
		if (worst <= MILD_TO) {
			return Severity.MILD;
		}
		return (worst <= MODERATE_TO) ? Severity.MODERATE : Severity.SEVERE;
	}

	/**
	 * The band of an illness by its days.
	 * @param days days ill, at least 0
	 * @return under 3, 3 to 7, or over 7
	 * @throws IllegalArgumentException below 0
	 */
	public static Length length(int days) {
		if (days < 0) {
			throw new IllegalArgumentException("an illness has no negative days");
		}
		if (days < SHORT_BELOW_DAYS) {
			return Length.UNDER_3_DAYS;
		}
		return (days <= LONG_OVER_DAYS) ? Length.DAYS_3_TO_7 : Length.OVER_7_DAYS;
	}

	/**
	 * The list before exercise (table 6), as asked with a morning. The red flags are
	 * asked beside it and come from the American College of Cardiology (Gluckman 2022).
	 * @return in the order of the morning page; free text is not of the list
	 */
	public static List<Symptom> beforeExercise() {
		EnumSet<Symptom> list = EnumSet.complementOf(EnumSet.copyOf(RED_FLAGS));
		list.remove(Symptom.OTHER);
		return List.copyOf(list);
	}

	/**
	 * The list during and after exercise (table 7), as asked with a session. The page
	 * asks for red flags that are not of the list beside it.
	 * @return in the order of the session page; free text is not of the list
	 */
	public static List<AfterSession> afterExercise() {
		return List.copyOf(EnumSet.complementOf(EnumSet.of(AfterSession.COUGHING_BLOOD, AfterSession.CONFUSION,
				AfterSession.DARK_URINE, AfterSession.SEIZURE, AfterSession.OTHER)));
	}

	/** How long an illness lasted. */
	public enum Length {

		UNDER_3_DAYS, DAYS_3_TO_7, OVER_7_DAYS

	}

}
