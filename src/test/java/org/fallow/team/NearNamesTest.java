package org.fallow.team;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

class NearNamesTest {

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "Nkechi Umeadi|Umeadi Nkechi", "Nkechi Umeadi|Umeadi, Nkechi", "Nkechi Umeadi|Nkechi Umedai",
					"Nkechi Umeadi|Nkechi Umeadie", "Nkechi Umeadi|Nkechi Umead", "Nkechi Umeadi|Nkechi Umeodi",
					"Nkechi Umeadi|Kechi Umeadi", "Nkechi Umeadi|Nkechi Ada Umeadi", "José Prats|Jose Prats",
					"Müller Jan|Mueller Jan", "Ann-Lee Moe|Ann Lee Moe", "O'Neill Mae|ONeill Mae", "Anna|Anne",
					"Ann|Anna" })
	void findsWhatIsNearlyTheSame(String one, String other) {
		assertThat(near(one, other)).isTrue();
		assertThat(near(other, one)).isTrue();
	}

	@ParameterizedTest
	@CsvSource({ "Nkechi Umeadi,Nkechi Okafor", "Ann Ashe,Ann Birch", "Ann,Ben", "Bo,Jo", "Bea,Lea", "P1,P2", "P1,P11",
			"A12,A21", "P 7,p7", "Umeadi,Nkechi Umeadi", "Anna Ash,Anne Asp" })
	void leavesOthersAlone(String one, String other) {
		assertThat(near(one, other)).isFalse();
		assertThat(near(other, one)).isFalse();
	}

	@Test
	void findsEachOnce() {
		NearNames<String> names = new NearNames<>();
		names.add("Ann Ashe", "a");
		names.add("Ashe Ann", "b");
		names.add("", "none");
		assertThat(names.near("Ann  Ashe")).containsExactlyInAnyOrder("a", "b");
		assertThat(names.near("")).isEmpty();
	}

	private static boolean near(String one, String other) {
		NearNames<String> names = new NearNames<>();
		names.add(one, "somebody");
		return !names.near(other).isEmpty();
	}

}
