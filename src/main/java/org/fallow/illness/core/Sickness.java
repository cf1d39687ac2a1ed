package org.fallow.illness.core;

import java.util.List;

import org.fallow.entry.FeverMedicine;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.SymptomClass;

/**
 * What a morning entry says about illness, known symptoms passed over.
 *
 * @param aboveTheNeck nose and throat
 * @param moreThanMild whether any of these is more than mild
 * @param stomach vomiting or diarrhoea
 * @param other below the neck apart from the stomach, or the whole body
 * @param chest of the chest
 * @param fever fever in the last 24 hours
 * @param medicine medicine that lowers fever, for whatever reason
 * @param medicineForIllness the same, for the illness
 * @param smell loss of smell or taste
 * @param redFlag a red flag
 */
record Sickness(boolean aboveTheNeck, boolean moreThanMild, boolean stomach, boolean other, boolean chest,
		boolean fever, boolean medicine, boolean medicineForIllness, boolean smell, boolean redFlag) {

	static final Sickness NONE = new Sickness(false, false, false, false, false, false, false, false, false, false);

	static Sickness of(MorningEntry entry, List<KnownSymptom> known, double feverCelsius) {
		Double temperature = entry.temperatureC();
		boolean fever = entry.feverLast24h() || (temperature != null && temperature >= feverCelsius);
		boolean medicine = entry.feverMedicine() != FeverMedicine.NONE;
		if (entry.symptoms().isEmpty() && !fever && !medicine) {
			return NONE;
		}
		List<ReportedSymptom> felt = felt(entry, known);
		boolean chest = false;
		boolean moreThanMild = false;
		for (ReportedSymptom s : felt) {
			chest |= s.symptom().isOfTheChest(s.severity());
			moreThanMild |= s.symptomClass() == SymptomClass.ABOVE_THE_NECK && s.severity() != Severity.MILD;
		}
		return new Sickness(has(felt, SymptomClass.ABOVE_THE_NECK), moreThanMild, has(felt, SymptomClass.STOMACH),
				has(felt, SymptomClass.BELOW_THE_NECK) || has(felt, SymptomClass.WHOLE_BODY), chest,
				fever || has(felt, SymptomClass.FEVER), medicine, entry.feverMedicine() == FeverMedicine.ILLNESS,
				has(felt, SymptomClass.SMELL), has(felt, SymptomClass.RED_FLAG));
	}

	private static List<ReportedSymptom> felt(MorningEntry entry, List<KnownSymptom> known) {
		if (known.isEmpty()) {
			return entry.symptoms();
		}
		return entry.symptoms()
			.stream()
			.filter((symptom) -> known.stream().noneMatch((k) -> k.covers(symptom, entry.day())))
			.toList();
	}

	private static boolean has(List<ReportedSymptom> felt, SymptomClass symptomClass) {
		for (ReportedSymptom symptom : felt) {
			if (symptom.symptomClass() == symptomClass) {
				return true;
			}
		}
		return false;
	}

	/** Opens an episode by itself. */
	boolean opens() {
		return this.fever || this.medicineForIllness || this.stomach || this.other;
	}

	/** Sends a returning athlete back to ill. */
	boolean relapses() {
		return opens() || this.redFlag;
	}

	/** An illness symptom; loss of smell alone is none, for it does not block. */
	boolean isSick() {
		return relapses() || this.aboveTheNeck;
	}

	/** Keeps the morning out of every baseline and mean. */
	boolean isOutOfBaseline() {
		return isSick() || this.smell || this.medicine;
	}

}
