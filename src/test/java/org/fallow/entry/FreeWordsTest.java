package org.fallow.entry;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

/** Words are invented; which matters they name is that of the text. */
class FreeWordsTest {

	@ParameterizedTest
	@ValueSource(strings = { "my CHEST feels odd", "Herzstolpern", "kaum Luft beim Gehen", "HeArT skips",
			"I nearly fainted", "che\u200Bst", "che😵st", "Ohnmaechtig geworden", "ohnmächtig", "Ohnma\u0308chtig",
			"short of breath", "bin umgekippt", "🫀 komisch", "blacked-out", "ＣＨＥＳＴ", "kurz Luft weg",
			"die Luft blieb mir weg", "Schwindelig", "light-headed", "felt dizzy", "😵", "Pulsrasen" })
	void findsHiddenRedFlagsInBothLanguages(String words) {
		assertThat(FreeWords.speakOfARedFlag(words)).isTrue();
		assertThat(ReportedSymptom.inOwnWords(Severity.MILD, words, true).symptom()).isEqualTo(Symptom.OTHER);
	}

	@ParameterizedTest
	@ValueSource(strings = { "a bruise on the elbow", "Zahnweh", "🙂", "", "...", "insect bite" })
	void takesOtherWordsForAComplaintWhereTheyBelongToNoIllness(String words) {
		assertThat(FreeWords.speakOfARedFlag(words)).isFalse();
		assertThat(ReportedSymptom.inOwnWords(Severity.MILD, words, true).symptom()).isEqualTo(Symptom.OTHER_COMPLAINT);
		assertThat(ReportedSymptom.inOwnWords(Severity.MILD, words, false).symptom()).isEqualTo(Symptom.OTHER);
	}

	@ParameterizedTest
	@CsvSource({ "Durchfall seit heute,DIARRHOEA", "bit of a COUGH,COUGH", "hab Übergeben,VOMITING",
			"uebergeben müssen,VOMITING", "Fieber,FEVERISH", "Kopfweh,SEVERE_HEADACHE", "sore throat,SORE_THROAT",
			"Wade dick,SWOLLEN_CALF", "🤒,FEVERISH", "blister on the heel,LIMB_PAIN" })
	void namesTheListedSymptom(String words, Symptom symptom) {
		assertThat(FreeWords.named(words)).contains(symptom);
	}

	@Test
	void namesNothingWhereNothingIsListed() {
		assertThat(FreeWords.named("insect bite")).isEmpty();
	}

}
