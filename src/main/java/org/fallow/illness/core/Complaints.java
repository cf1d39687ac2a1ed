package org.fallow.illness.core;

import java.util.List;

import org.fallow.entry.Feels;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;

/**
 * The complaints of a morning, known ones passed over: no symptoms of illness. A mild one
 * of somebody who does not feel unwell has no consequence.
 *
 * @param any whether there is one
 * @param acts whether one is moderate or severe, or comes with feeling unwell
 * @param severe whether one is severe
 * @param limb whether a limb's pain is among those that act
 * @param inOwnWords whether one is told in the athlete's own words
 */
record Complaints(boolean any, boolean acts, boolean severe, boolean limb, boolean inOwnWords) {

	static final Complaints NONE = new Complaints(false, false, false, false, false);

	/**
	 * The complaints among what is felt.
	 * @param entry the morning
	 * @param felt its symptoms and complaints, known ones left out
	 */
	static Complaints of(MorningEntry entry, List<ReportedSymptom> felt) {
		Complaints found = NONE;
		for (ReportedSymptom reported : felt) {
			if (reported.symptom().isComplaint()) {
				found = found.and(reported, entry.feels() == Feels.UNWELL);
			}
		}
		return found;
	}

	private Complaints and(ReportedSymptom reported, boolean unwell) {
		boolean works = unwell || reported.severity() != Severity.MILD;
		return new Complaints(true, this.acts || works, this.severe || reported.severity() == Severity.SEVERE,
				this.limb || (works && reported.symptom() == Symptom.LIMB_PAIN),
				this.inOwnWords || reported.symptom() == Symptom.OTHER_COMPLAINT);
	}

}
