package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;

import org.fallow.team.Athlete;

/**
 * The red flags that a physician has examined, which a morning's entry may tick as
 * unchanged. Whoever keeps clearances knows them.
 */
public interface ExaminedFlags {

	/**
	 * Those examined, as the clearance in force on a day names them.
	 * @param athlete whose
	 * @param day the morning's day
	 * @return in the order named; empty if there are none
	 */
	List<Symptom> on(Athlete athlete, LocalDate day);

}
