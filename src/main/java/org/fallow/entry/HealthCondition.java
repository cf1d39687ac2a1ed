package org.fallow.entry;

import java.time.LocalDate;

/**
 * A condition that makes any illness a clinician's matter, begun or ended. It is stated
 * to people and decides no clearance.
 *
 * @param day first day with, or without, it
 * @param recorded when it became known
 * @param kind which
 * @param present true from this day on, false when it ended
 */
public record HealthCondition(LocalDate day, Recorded recorded, Kind kind, boolean present) implements Fact {

	/**
	 * After the conditions of the IOC consensus of 2022, table 6, and pregnancy; the
	 * selection here is from memory.
	 */
	public enum Kind {

		/** Heart or circulation. */
		HEART,
		/** Lung, asthma among them. */
		LUNG,
		/** Diabetes or another disorder of metabolism or hormones. */
		METABOLIC,
		/** Kidney or liver. */
		KIDNEY_LIVER,
		/** Immune system weakened by illness or medicine. */
		IMMUNE,
		/** Blood, sickle cell trait among them. */
		BLOOD,
		/** Nervous system. */
		NERVES,
		/** Pregnancy. */
		PREGNANCY,
		/** Another lasting condition. */
		OTHER

	}

}
