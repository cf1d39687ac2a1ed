package org.fallow.team;

import java.text.Normalizer;
import java.text.Normalizer.Form;
import java.util.List;
import java.util.Locale;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * One name in many spellings. The characters are those of the Unicode Standard: white
 * space (property White_Space), format characters (general category Cf), compatibility
 * forms (annex 15).
 */
public class NameKeyTest {

	/** The name of a person in a team. */
	public static final String NAME = "Ren\u00e9e O'Neill-\u00c5s";

	/** Thirty and more spellings that nobody who reads them tells from the name. */
	public static List<String> spellings() {
		String decomposed = Normalizer.normalize(NAME, Form.NFD);
		return List.of(decomposed, " " + NAME + " ", NAME.replace(" ", "  "), NAME.replace(' ', '\u00a0'),
				NAME.replace(' ', '\u2009'), NAME.replace(' ', '\u202f'), NAME.replace(' ', '\u3000'),
				NAME.replace(' ', '\u2003'), NAME.replace(" ", "\u2028"), NAME.replace(" ", "\t"),
				NAME.replace(" ", " \u00a0\u2007 "), NAME.replace(' ', '\u1680'), "\u200b" + NAME, NAME + "\u200b",
				NAME.replace(" ", "\u200b \u200b"), NAME.replace("n", "n\u200d"), NAME.replace("n", "n\u200c"),
				"\ufeff" + NAME, NAME.replace("ll", "l\u00adl"), NAME.replace("N", "\u2060N"),
				"\u202a" + NAME + "\u202c", "\u2067" + NAME + "\u2069", "\u200e" + NAME + "\u200f",
				NAME.replace("e", "e\ufe0f"), NAME.replace("n", "n\u034f"), NAME.replace("O", "\u2063O"),
				NAME.toUpperCase(Locale.ROOT), NAME.toLowerCase(Locale.ROOT), NAME.replace('\u00c5', '\u212b'),
				NAME.replace('\'', '\u2019'), NAME.replace('\'', '\u02bc'), NAME.replace('-', '\u2010'),
				NAME.replace('-', '\u2011'), NAME.replace("R", "\uff32"), NAME.replace("N", "\ud835\udc0d"),
				decomposed.toUpperCase(Locale.ROOT).replace(" ", "\u00a0\u200b"), NAME + "\udb40\udd00",
				NAME.replace("e", "e\u061c"));
	}

	@ParameterizedTest
	@MethodSource("spellings")
	void readsOneNameInEachSpelling(String spelling) {
		assertThat(spelling).isNotEqualTo(NAME);
		assertThat(NameKey.of(spelling)).isEqualTo(NameKey.of(NAME));
	}

	@Test
	void knowsThirtySpellings() {
		assertThat(spellings()).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(30);
	}

	@ParameterizedTest
	@CsvSource({ "José,Jose", "Åse,Ase", "Søren,Soren", "Łukasz,Lukasz", "Đorđe,Dorde", "İpek,ipek", "Νίκος,ΝΙΚΟΣ",
			"Андрей,Андреи" })
	void tellsAccentsApartInTheTextOnly(String one, String other) {
		assertThat(NameKey.of(one).text()).isNotEqualTo(NameKey.of(other).text());
		assertThat(NameKey.of(one).bare()).isEqualTo(NameKey.of(other).bare());
	}

	@ParameterizedTest
	@CsvSource({ "Strauß,STRAUSS", "Ιάσονας,ΙΆΣΟΝΑΣ", "ﬁnn,Finn", "Ǆemal,ǆemal", "ＡＮＮ,ann", "ID,id" })
	void foldsCapitalsAndForms(String one, String other) {
		assertThat(NameKey.of(one)).isEqualTo(NameKey.of(other));
	}

	@ParameterizedTest
	@CsvSource({ "Ann,Anna", "Bo Lee,Bolee", "がく,かく", "की,का", "Ann-Lee,Ann Lee" })
	void keepsDifferentNamesApart(String one, String other) {
		assertThat(NameKey.of(one).bare()).isNotEqualTo(NameKey.of(other).bare());
	}

	/** In Turkish a capital I would be another letter. */
	@Test
	void doesNotDependOnTheLocale() {
		Locale before = Locale.getDefault();
		try {
			Locale.setDefault(Locale.forLanguageTag("tr"));
			assertThat(NameKey.of("ILIA").text()).isEqualTo("ilia");
		}
		finally {
			Locale.setDefault(before);
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "", " ", "\u00a0", "\u200b", "\u200b \ufeff", "\u3164", "\u2800", "\u0000", "\u202e" })
	void findsNoNameWhereThereIsNothingToSee(String text) {
		assertThat(NameKey.of(text).isEmpty()).isTrue();
		assertThat(NameKey.cleaned(text)).isEmpty();
	}

	@Test
	void keepsANameWithSingleSpacesAndComposed() {
		assertThat(NameKey.cleaned("\u00a0 Rene\u0301e \t\u2003 Ash ")).isEqualTo("Ren\u00e9e Ash");
		assertThat(NameKey.cleaned("\u0645\u06cc\u200c\u062e")).isEqualTo("\u0645\u06cc\u200c\u062e");
	}

	@ParameterizedTest
	@ValueSource(strings = { "Ann\0", "Ann\nAshe", "\u0007Ann", "Ann\u009f" })
	void tellsControlCharacters(String text) {
		assertThat(NameKey.hasControl(text)).isTrue();
		assertThat(NameKey.hasControl(NAME)).isFalse();
	}

}
