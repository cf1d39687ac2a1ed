package org.fallow.illness.core;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;

import org.fallow.entry.FeverMedicine;
import org.fallow.entry.KnownCause;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.SymptomClass;
import org.fallow.rules.RuleSet;

/**
 * What a morning entry says about illness, known symptoms passed over.
 *
 * @param aboveTheNeck nose and throat
 * @param loneMildCough whether a mild cough is all there is
 * @param stomach vomiting or diarrhoea
 * @param belowTheNeck below the neck apart from the stomach
 * @param wholeBody of the whole body
 * @param cramped whether cramps, aches and tiredness, beside vomiting or diarrhoea, are
 * all there is of these two
 * @param asthma whether a wheeze worse than the one noted for asthma is all there is
 * @param chest of the chest
 * @param fever fever in the last 24 hours
 * @param medicine medicine that lowers fever, for whatever reason
 * @param medicineForIllness the same, for the illness
 * @param smell loss of smell or taste
 * @param redFlag a red flag
 * @param complaints complaints, which are no illness symptoms
 */
record Sickness(boolean aboveTheNeck, boolean loneMildCough, boolean stomach, boolean belowTheNeck, boolean wholeBody,
		boolean cramped, boolean asthma, boolean chest, boolean fever, boolean medicine, boolean medicineForIllness,
		boolean smell, boolean redFlag, Complaints complaints) {

	static final Sickness NONE = new Sickness(false, false, false, false, false, false, false, false, false, false,
			false, false, false, Complaints.NONE);

	private static final Set<Symptom> WITH_THE_STOMACH = EnumSet.of(Symptom.ABDOMINAL_PAIN, Symptom.MUSCLE_ACHES,
			Symptom.FATIGUE);

	static Sickness of(MorningEntry entry, PassedOver known, MorningsByDay mornings, RuleSet rules) {
		Double temperature = entry.temperatureC();
		boolean fever = entry.feverLast24h() || (temperature != null && temperature >= rules.opening().feverCelsius());
		boolean medicine = entry.feverMedicine() != FeverMedicine.NONE;
		if (entry.symptoms().isEmpty() && !fever && !medicine) {
			return NONE;
		}
		List<ReportedSymptom> felt = felt(entry, known, mornings, rules);
		List<ReportedSymptom> ill = felt.stream().filter((one) -> !one.symptom().isComplaint()).toList();
		boolean alone = ill.size() == 1 && !fever && !medicine;
		boolean stomach = has(ill, SymptomClass.STOMACH);
		boolean asthma = alone && ill.get(0).symptom() == Symptom.WHEEZE
				&& known.isNoted(Symptom.WHEEZE, KnownCause.ASTHMA, entry);
		return new Sickness(has(ill, SymptomClass.ABOVE_THE_NECK), alone && isMildCough(ill.get(0)), stomach,
				has(ill, SymptomClass.BELOW_THE_NECK), has(ill, SymptomClass.WHOLE_BODY),
				stomach && any(ill, Sickness::isOther) && !any(ill, (one) -> isOther(one) && !isWithTheStomach(one)),
				asthma, any(ill, (one) -> one.symptom().isOfTheChest(one.severity())),
				fever || has(ill, SymptomClass.FEVER), medicine, entry.feverMedicine() == FeverMedicine.ILLNESS,
				has(ill, SymptomClass.SMELL), has(ill, SymptomClass.RED_FLAG), Complaints.of(entry, felt));
	}

	private static List<ReportedSymptom> felt(MorningEntry entry, PassedOver known, MorningsByDay mornings,
			RuleSet rules) {
		if (known.isEmpty()) {
			return entry.symptoms();
		}
		return entry.symptoms()
			.stream()
			.filter((symptom) -> !known.covers(symptom, entry, mornings, rules.told()))
			.toList();
	}

	private static boolean isMildCough(ReportedSymptom reported) {
		return reported.symptom() == Symptom.COUGH && reported.severity() == Severity.MILD;
	}

	private static boolean isOther(ReportedSymptom reported) {
		SymptomClass found = reported.symptomClass();
		return found == SymptomClass.BELOW_THE_NECK || found == SymptomClass.WHOLE_BODY;
	}

	private static boolean isWithTheStomach(ReportedSymptom reported) {
		return WITH_THE_STOMACH.contains(reported.symptom());
	}

	private static boolean has(List<ReportedSymptom> felt, SymptomClass symptomClass) {
		return any(felt, (one) -> one.symptomClass() == symptomClass);
	}

	private static boolean any(List<ReportedSymptom> felt, Predicate<ReportedSymptom> wanted) {
		for (ReportedSymptom symptom : felt) {
			if (wanted.test(symptom)) {
				return true;
			}
		}
		return false;
	}

	/** Below the neck apart from the stomach, or of the whole body. */
	boolean other() {
		return this.belowTheNeck || this.wholeBody;
	}

	/** Opens an episode by itself. */
	boolean opens() {
		return this.fever || this.medicineForIllness || this.stomach || other();
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
		return isSick() || this.smell || this.medicine || this.complaints.acts();
	}

}
