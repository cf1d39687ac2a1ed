package org.fallow.entry;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;

import org.fallow.entry.IocConsensus.Length;
import org.fallow.rules.DefaultRules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/** IOC consensus: Schwellnus 2022, BJSM 56:1066; bands R, selection of the lists M. */
class IocConsensusTest {

	@ParameterizedTest
	@CsvSource({ "0, MILD", "3, MILD", "3.1, MODERATE", "7, MODERATE", "7.1, SEVERE", "10, SEVERE" })
	void bandsAnIllnessByItsWorstRating(double worst, Severity severity) {
		assertThat(IocConsensus.severity(worst)).isEqualTo(severity);
	}

	@ParameterizedTest
	@CsvSource({ "0, UNDER_3_DAYS", "2, UNDER_3_DAYS", "3, DAYS_3_TO_7", "7, DAYS_3_TO_7", "8, OVER_7_DAYS" })
	void bandsAnIllnessByItsDays(int days, Length length) {
		assertThat(IocConsensus.length(days)).isEqualTo(length);
	}

	@ParameterizedTest
	@ValueSource(doubles = { -0.1, 10.1, Double.NaN })
	void takesNoOtherRating(double worst) {
		assertThatIllegalArgumentException().isThrownBy(() -> IocConsensus.severity(worst));
	}

	@Test
	void takesNoNegativeDays() {
		assertThatIllegalArgumentException().isThrownBy(() -> IocConsensus.length(-1));
	}

	@Test
	void isModerateWhereTheRulesSayModerate() {
		assertThat(IocConsensus.MODERATE_TO).isEqualTo(DefaultRules.ruleSet().limits().moderateWorst());
	}

	@Test
	void asksEachSymptomOnceAndRedFlagsBesideTheList() {
		List<Symptom> redFlags = Arrays.stream(Symptom.values()).filter(Symptom::isRedFlag).toList();
		EnumSet<Symptom> all = EnumSet.copyOf(IocConsensus.beforeExercise());
		assertThat(all).doesNotContainAnyElementsOf(redFlags)
			.contains(Symptom.RUNNY_NOSE, Symptom.SORE_THROAT, Symptom.COUGH, Symptom.VOMITING, Symptom.DIARRHOEA,
					Symptom.FATIGUE, Symptom.MUSCLE_ACHES, Symptom.SEVERE_HEADACHE, Symptom.SWOLLEN_GLANDS,
					Symptom.SHIVERING, Symptom.TOO_UNWELL);
		all.addAll(redFlags);
		all.add(Symptom.OTHER);
		assertThat(all).isEqualTo(EnumSet.allOf(Symptom.class));
	}

	@Test
	void asksAfterASessionForTheHeartAndForWhatLasts() {
		assertThat(IocConsensus.afterExercise()).containsExactly(AfterSession.CHEST_PAIN, AfterSession.BREATHLESSNESS,
				AfterSession.PALPITATIONS, AfterSession.FAINTING, AfterSession.HEART_RATE_HIGH,
				AfterSession.UNUSUAL_FATIGUE, AfterSession.HEADACHE, AfterSession.MUSCLE_PAIN,
				AfterSession.SYMPTOMS_RETURNED);
	}

}
