package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.rules.PathName;
import org.jspecify.annotations.Nullable;

/**
 * What the return path was judged from, all of it seen since the first onset.
 *
 * @param aboveTheNeck symptoms of nose and throat, none of them severe
 * @param stomach vomiting or diarrhoea
 * @param other anything else below the neck, of the whole body, or a red flag; not
 * cramps, aches and tiredness on a morning with vomiting or diarrhoea, nor a wheeze of
 * asthma alone
 * @param fever fever, or medicine for it
 * @param covid COVID-19 reported
 * @param covidUntold COVID-19 reported, a morning entered since, and never a symptom of
 * nose and throat told: nothing says that it is no worse than a cold
 * @param asthma a wheeze worse than the one noted for asthma, alone on its morning
 * @param vaccination day of the vaccination that explains all of it so far; absent if
 * none does
 * @param illDays days from the onset to the last sick one before Stage 1, both counted
 * @param coldDays the same to the last one with more than a lone mild cough
 * @param feverDays first to last day of fever before Stage 1, both counted
 * @param chestDays first to last day of chest symptoms before Stage 1, both counted
 * @param floor the shortest path allowed, after holds and relapses
 * @param before the path until now
 * @param judged what follows
 */
public record PathEvidence(boolean aboveTheNeck, boolean stomach, boolean other, boolean fever, boolean covid,
		boolean covidUntold, boolean asthma, @Nullable LocalDate vaccination, long illDays, long coldDays,
		long feverDays, long chestDays, PathName floor, PathName before, PathName judged) {
}
