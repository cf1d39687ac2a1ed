package org.fallow.illness.core;

import org.fallow.rules.PathName;

/**
 * What the return path was judged from, all of it seen since the first onset.
 *
 * @param aboveTheNeck symptoms of nose and throat
 * @param moreThanMild whether any of these was more than mild
 * @param stomach vomiting or diarrhoea
 * @param other anything else below the neck, of the whole body, or a red flag
 * @param fever fever, or medicine for it
 * @param covid COVID-19 reported
 * @param illDays days from the onset to the last sick one before Stage 1, both counted
 * @param feverDays first to last day of fever before Stage 1, both counted
 * @param chestDays first to last day of chest symptoms before Stage 1, both counted
 * @param floor the shortest path allowed, after holds and relapses
 * @param before the path until now
 * @param judged what follows
 */
public record PathEvidence(boolean aboveTheNeck, boolean moreThanMild, boolean stomach, boolean other, boolean fever,
		boolean covid, long illDays, long feverDays, long chestDays, PathName floor, PathName before, PathName judged) {
}
