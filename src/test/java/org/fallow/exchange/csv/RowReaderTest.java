package org.fallow.exchange.csv;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.SymptomClass;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

class RowReaderTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	private static final Map<ImportField, Integer> ALL = Arrays.stream(ImportField.values())
		.collect(Collectors.toMap((field) -> field, ImportField::ordinal));

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			2026-11-26 | 50   |       | DAY   | entry.day.future
			1999-12-31 | 50   |       | DAY   | entry.day.too-old
			26.11.2026 | 50   |       | DAY   | importRow.no-date
			2026-02-30 | 50   |       | DAY   | importRow.no-date
			''         | 50   |       | DAY   | importRow.no-day
			2026-11-25 | 0    |       | RHR   | entry.rhr.range
			2026-11-25 | 19   |       | RHR   | entry.rhr.range
			2026-11-25 | 19.9 |       | RHR   | entry.rhr.range
			2026-11-25 | 221  |       | RHR   | entry.rhr.range
			2026-11-25 | -50  |       | RHR   | entry.rhr.range
			2026-11-25 | fifty|       | RHR   | importRow.no-number
			2026-11-25 | 52,5 |       | RHR   | importRow.decimal-comma
			2026-11-25 | 5e1  |       | RHR   | importRow.no-number
			2026-11-25 | NaN  |       | RHR   | importRow.no-number
			2026-11-25 | =1+1 |       | RHR   | importRow.no-number
			2026-11-25 | 50   | -1    | RMSSD | entry.rmssd.range
			2026-11-25 | 50   | 0     | RMSSD | entry.rmssd.range
			2026-11-25 | 50   | 301   | RMSSD | entry.rmssd.range
			2026-11-25 | 50   | 300.1 | RMSSD | entry.rmssd.range
			2026-11-25 | 50   | 48,5  | RMSSD | importRow.decimal-comma
			""")
	void refusesWithColumnValueAndReason(String day, String rhr, @Nullable String rmssd, ImportField field,
			String code) {
		String second = (rmssd == null) ? "" : rmssd;
		ReadRow row = read("P", day, rhr, second, "strap", "lying");
		assertThat(row.morning()).isNull();
		assertThat(row.problems()).singleElement().satisfies((problem) -> {
			assertThat(problem.line()).isEqualTo(7);
			assertThat(problem.field()).isEqualTo(field);
			assertThat(problem.reason().code()).isEqualTo(code);
			assertThat(problem.value())
				.isEqualTo(Map.of(ImportField.DAY, day, ImportField.RHR, rhr, ImportField.RMSSD, second).get(field));
			assertThat(problem.notice()).isFalse();
		});
	}

	@ParameterizedTest
	@CsvSource({ "20, 0.001", "220, 300", "52.5, 48.25", "50.0, 1" })
	void takesTheEdgesOfTheRanges(String rhr, String rmssd) {
		NewMorning morning = read("P", "2026-11-25", rhr, rmssd, "strap", "lying").goodMorning();
		assertThat(morning.rhrBpm()).isEqualTo(Double.valueOf(rhr));
		assertThat(morning.rmssdMs()).isEqualTo(Double.valueOf(rmssd));
		assertThat(morning.method()).isEqualTo(Method.STRAP);
		assertThat(morning.posture()).isEqualTo(Posture.LYING);
	}

	@Test
	void findsEverythingThatIsWrong() {
		ReadRow row = read("", "2026-11-26", "fifty", "-1", "guess", "floating");
		assertThat(row.problems()).extracting(RowProblem::field)
			.containsExactly(ImportField.PERSON, ImportField.DAY, ImportField.RHR, ImportField.RMSSD,
					ImportField.METHOD, ImportField.POSTURE);
	}

	@Test
	void asksForMethodAndPostureOnlyWithAMeasurement() {
		assertThat(read("P", "2026-11-25", "50", "", "", "").problems()).extracting(RowProblem::field)
			.containsExactly(ImportField.METHOD, ImportField.POSTURE);
		ReadRow felt = read(Map.of(ImportField.FEELS, "well"), null, null);
		assertThat(felt.problems()).isEmpty();
		assertThat(felt.goodMorning().method()).isNull();
	}

	@Test
	void fallsBackOnTheDefaultsOfTheMapping() {
		ReadRow row = read(Map.of(ImportField.RHR, "50"), Method.WORN, Posture.SITTING);
		assertThat(row.goodMorning().method()).isEqualTo(Method.WORN);
		assertThat(row.goodMorning().posture()).isEqualTo(Posture.SITTING);
	}

	@Test
	void takesNoRowThatSaysNothingForAGoodMorning() {
		ReadRow row = read(Map.of(ImportField.METHOD, "strap", ImportField.UNSURE, "0"), null, null);
		assertThat(row.morning()).isNull();
		assertThat(row.problems()).extracting((problem) -> problem.reason().code())
			.containsExactly("importRow.nothing");
	}

	@Test
	void readsAllThatAMorningCanSay() {
		NewMorning morning = read(Map.of(ImportField.RHR, "58", ImportField.METHOD, "count30", ImportField.POSTURE,
				"Sitting", ImportField.SYMPTOMS, "cough:mild; sore_throat:moderate", ImportField.FEVER, "1.0",
				ImportField.FEVER_MEDICINE, "illness", ImportField.FEELS, "unwell", ImportField.TAGS,
				"late_meal;alcohol", ImportField.NOTE, "=1+1", ImportField.UNSURE, "1.0"), null, null)
			.goodMorning();
		assertThat(morning.method()).isEqualTo(Method.COUNT_30);
		assertThat(morning.symptoms()).containsExactly(ReportedSymptom.of(Symptom.SORE_THROAT, Severity.MODERATE),
				ReportedSymptom.of(Symptom.COUGH, Severity.MILD));
		assertThat(morning.feverLast24h()).isTrue();
		assertThat(morning.feverMedicine()).isEqualTo(FeverMedicine.ILLNESS);
		assertThat(morning.feels()).isEqualTo(Feels.UNWELL);
		assertThat(morning.tags()).containsExactly(ContextTag.ALCOHOL, ContextTag.LATE_MEAL);
		assertThat(morning.note()).isEqualTo("=1+1");
		assertThat(morning.unsure()).isTrue();
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			itchy knees:mild            | MILD     | itchy knees
			itchy knees                 | MODERATE | itchy knees
			cough:awful                 | MODERATE | cough:awful
			itchy knees:mild;odd:severe | SEVERE   | itchy knees; odd
			""")
	void keepsUnknownSymptomsAsFreeTextBelowTheNeck(String text, Severity severity, String words) {
		NewMorning morning = read(Map.of(ImportField.SYMPTOMS, text), null, null).goodMorning();
		assertThat(morning.symptoms()).containsExactly(new ReportedSymptom(Symptom.OTHER, severity, words));
		assertThat(morning.symptoms().get(0).symptomClass()).isEqualTo(SymptomClass.BELOW_THE_NECK);
	}

	@Test
	void takesTheWorseOfASymptomNamedTwiceAndModerateWhereNoSeverityStands() {
		NewMorning morning = read(Map.of(ImportField.SYMPTOMS, "cough:mild;cough:severe;fatigue"), null, null)
			.goodMorning();
		assertThat(morning.symptoms()).containsExactly(ReportedSymptom.of(Symptom.COUGH, Severity.SEVERE),
				ReportedSymptom.of(Symptom.FATIGUE, Severity.MODERATE));
	}

	@ParameterizedTest
	@ValueSource(strings = { "smell:mild", "breathless:mild", "chest_pain:mild", "feverish:mild" })
	void knowsTheCodesOfTheList(String text) {
		assertThat(read(Map.of(ImportField.SYMPTOMS, text), null, null).goodMorning().symptoms()).singleElement()
			.satisfies((reported) -> assertThat(reported.symptom()).isNotEqualTo(Symptom.OTHER));
	}

	private static ReadRow read(String person, String day, String rhr, String rmssd, String method, String posture) {
		ColumnMapping mapping = new ColumnMapping(Map.of(ImportField.PERSON, 0, ImportField.DAY, 1, ImportField.RHR, 2,
				ImportField.RMSSD, 3, ImportField.METHOD, 4, ImportField.POSTURE, 5), null, null);
		return RowReader.read(mapping, List.of(person, day, rhr, rmssd, method, posture), 7, TODAY);
	}

	private static ReadRow read(Map<ImportField, String> cells, @Nullable Method method, @Nullable Posture posture) {
		List<String> texts = Arrays.stream(ImportField.values()).map((field) -> switch (field) {
			case PERSON -> "P";
			case DAY -> "2026-11-25";
			default -> cells.getOrDefault(field, "");
		}).toList();
		return RowReader.read(new ColumnMapping(ALL, method, posture), texts, 7, TODAY);
	}

}
