package org.fallow.entry.web;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.UnaryOperator;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

class MorningReaderTest {

	private static final String ONE_MINUTE = String.join("\n", Collections.nCopies(35, "1000 1010"));

	private final Map<String, String> typed = new TreeMap<>(
			Map.of("day", "2026-03-10", "feels", "WELL", "method", "STRAP", "posture", "LYING"));

	private final Map<String, String> symptoms = new TreeMap<>();

	private double feverFrom = 38.0;

	@Test
	void readsAFullForm() {
		this.typed.putAll(Map.of("rhr", " 52.5 ", "rmssd", "61", "temperature", "36.8", "otherSymptom", " itch ",
				"otherSeverity", "MILD", "feverMedicine", "OTHER", "eatingNormally", "false", "note", " =1+1 ",
				"revision", "3"));
		this.symptoms.putAll(Map.of("SNEEZING", "MILD", "RUNNY_NOSE", "MODERATE"));
		NewMorning morning = read(List.of("TRAVEL", "ALCOHOL", "TRAVEL")).morning();
		assertThat(morning.rhrBpm()).isEqualTo(52.5);
		assertThat(morning.rmssdMs()).isEqualTo(61.0);
		assertThat(morning.temperatureC()).isEqualTo(36.8);
		assertThat(morning.method()).isEqualTo(Method.STRAP);
		assertThat(morning.posture()).isEqualTo(Posture.LYING);
		assertThat(morning.symptoms()).containsExactly(ReportedSymptom.of(Symptom.RUNNY_NOSE, Severity.MODERATE),
				ReportedSymptom.of(Symptom.SNEEZING, Severity.MILD),
				new ReportedSymptom(Symptom.OTHER, Severity.MILD, "itch"));
		assertThat(morning.feverMedicine()).isEqualTo(FeverMedicine.OTHER);
		assertThat(morning.eatingNormally()).isFalse();
		assertThat(morning.feels()).isEqualTo(Feels.WELL);
		assertThat(morning.tags()).containsExactly(ContextTag.ALCOHOL, ContextTag.TRAVEL);
		assertThat(morning.note()).isEqualTo("=1+1");
		assertThat(morning.basedOn()).isEqualTo(3);
		assertThat(morning.unsure()).isFalse();
	}

	@ParameterizedTest
	@CsvSource({ "36.8, 52.5", "'36,8', '52,5'", "'36,8', 52.5" })
	void takesADecimalPointAndADecimalComma(String temperature, String rhr) {
		this.typed.putAll(Map.of("temperature", temperature, "rhr", rhr, "rmssd", "61,25"));
		NewMorning morning = read().morning();
		assertThat(morning.temperatureC()).isEqualTo(36.8);
		assertThat(morning.rhrBpm()).isEqualTo(52.5);
		assertThat(morning.rmssdMs()).isEqualTo(61.25);
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "812,5 790,25|812.5 790.25", "812,5; 790,0;1001|812.5; 790.0;1001",
			"812,790,805|812,790,805", "812, 790|812, 790", "812.5,790|812.5,790", "812,1005|812,1005" })
	void tellsADecimalCommaFromOneBetweenIntervals(String text, String read) {
		assertThat(Typed.intervals(text)).isEqualTo(read);
	}

	@Test
	void takesMethodAndPostureWithAMeasurementOnly() {
		NewMorning morning = read().morning();
		assertThat(morning.method()).isNull();
		assertThat(morning.posture()).isNull();
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "rhr|fifty|typed.no-number", "rhr|1e2|typed.no-number", "rhr|NaN|typed.no-number",
					"rmssd|−1|typed.no-number", "rmssd|4 5|typed.no-number", "temperature|37,2,1|typed.no-number",
					"day|31.12.2026|day.unreadable", "day|2026-02-30|day.unreadable", "day||day.unreadable",
					"feels||morning.feels.missing", "feels|FINE|entry.code.unknown", "method|GUESS|entry.code.unknown",
					"posture|HANGING|entry.code.unknown", "feverMedicine|SOME|entry.code.unknown",
					"otherSeverity|MILD|entry.other-symptom.missing", "rr|1000 x|morning.rr.unreadable",
					"rr|1000|morning.rr.unreadable" })
	void saysWhatIsWrong(String field, @Nullable String value, String code) {
		this.typed.put(field, (value == null) ? "" : value);
		assertThat(read().problems()).extracting((problem) -> problem.message().code()).containsExactly(code);
		assertThatIllegalStateException().isThrownBy(() -> read().morning());
	}

	@Test
	void saysEverythingThatIsWrongAtItsField() {
		this.typed.putAll(Map.of("rhr", "fifty", "rmssd", "52,5,5", "day", "soon"));
		assertThat(read().problems()).extracting(Problem::field).containsExactlyInAnyOrder("rhr", "rmssd", "day");
	}

	@ParameterizedTest
	@CsvSource({ "CHEST_PAIN,banana", "MADE_UP,SEVERE", "OTHER,MILD" })
	void dropsNoSymptomItDoesNotKnow(String symptom, String severity) {
		this.symptoms.put(symptom, severity);
		assertThat(read().problems()).containsExactly(Problem.of("", "entry.code.unknown"));
	}

	@Test
	void countsWordsWithoutASeverityAsModerate() {
		this.typed.put("otherSymptom", "itch");
		assertThat(read().morning().symptoms())
			.containsExactly(new ReportedSymptom(Symptom.OTHER, Severity.MODERATE, "itch"));
	}

	@Test
	void takesAllWellForFeelingWell() {
		this.typed.putAll(Map.of("allWell", "true", "feels", ""));
		assertThat(read().morning().feels()).isEqualTo(Feels.WELL);
	}

	@ParameterizedTest
	@CsvSource({ "fever,true", "feverMedicine,ILLNESS", "feels,ABLE", "feels,UNWELL", "eatingNormally,false",
			"temperature,38.0", "otherSymptom,itch" })
	void contradictsAllWell(String field, String value) {
		this.typed.putAll(Map.of("allWell", "true", field, value));
		assertThat(read().problems()).containsExactly(Problem.of("", "morning.all-well.contradicted"));
	}

	/** A team whose fever begins at 37.5: the rule set says it, not the form. */
	@Test
	void contradictsAllWellFromWhereTheRuleSetSaysFeverBegins() {
		this.typed.putAll(Map.of("allWell", "true", "feels", "", "temperature", "37.6"));
		assertThat(read().problems()).isEmpty();
		this.feverFrom = 37.5;
		assertThat(read().problems()).containsExactly(Problem.of("", "morning.all-well.contradicted"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "SMELL_LOSS", "CHEST_PAIN" })
	void contradictsAllWellWithASymptom(String symptom) {
		this.typed.put("allWell", "true");
		this.symptoms.put(symptom, "MILD");
		assertThat(read().problems()).containsExactly(Problem.of("", "morning.all-well.contradicted"));
	}

	/** 70 beats of 1000 and 1010 ms in turn: mean 1005 ms, every difference 10 ms. */
	@Test
	void worksTheNumbersOutFromTheIntervals() {
		this.typed.put("rr", ONE_MINUTE);
		MorningReader reader = read();
		assertThat(reader.isLowQuality()).isFalse();
		assertThat(reader.morning().rhrBpm()).isCloseTo(60_000 / 1005.0, within(1e-9));
		assertThat(reader.morning().rmssdMs()).isCloseTo(10, within(1e-9));
		assertThat(reader.morning().rrMs()).hasSize(70).startsWith(1000, 1010);
	}

	@Test
	void acceptsATypedNumberThatIsTheSameReading() {
		this.typed.putAll(Map.of("rr", ONE_MINUTE, "rhr", "60"));
		assertThat(read().morning().rhrBpm()).isCloseTo(60_000 / 1005.0, within(1e-9));
	}

	@Test
	void choosesNeitherOfTwoDifferentReadings() {
		this.typed.putAll(Map.of("rr", ONE_MINUTE, "rhr", "48"));
		assertThat(read().problems()).singleElement().satisfies((problem) -> {
			assertThat(problem.field()).isEqualTo("rhr");
			assertThat(problem.message().code()).isEqualTo("morning.rr.differs");
		});
	}

	@Test
	void marksAShortMeasurement() {
		this.typed.put("rr", "1000 1010 1000 1010");
		MorningReader reader = read();
		assertThat(reader.isLowQuality()).isTrue();
		assertThat(reader.morning().unsure()).isTrue();
	}

	/** Beats over the time counted, from memory: 26 in half a minute are 52 a minute. */
	@ParameterizedTest
	@CsvSource({ "COUNT_30, 26, 52", "COUNT_60, 53, 53" })
	void worksOutACountedPulse(String method, String counted, double bpm) {
		this.typed.put("method", method);
		this.typed.put("counted", counted);
		assertThat(read().morning().rhrBpm()).isEqualTo(bpm);
	}

	@ParameterizedTest
	@CsvSource({ "COUNT_30, 26.5, , counted", "COUNT_30, many, , counted", "STRAP, 26, , method", "'', 26, , method",
			"COUNT_30, 26, 50, rhr", "COUNT_60, 1000, , counted" })
	void saysWhatIsWrongWithACount(String method, String counted, @Nullable String rhr, String field) {
		this.typed.put("method", method);
		this.typed.put("counted", counted);
		if (rhr != null) {
			this.typed.put("rhr", rhr);
		}
		assertThat(read().problems()).extracting(Problem::field).contains(field);
	}

	@Test
	void takesTheSameHeartRateBesideACount() {
		this.typed.putAll(Map.of("method", "COUNT_30", "counted", "26", "rhr", "52"));
		assertThat(read().morning().rhrBpm()).isEqualTo(52.0);
	}

	private MorningReader read() {
		return read(List.of());
	}

	private MorningReader read(List<String> tags) {
		UnaryOperator<@Nullable String> at = this.typed::get;
		return new MorningReader(new MorningForm(at.apply("day"), at.apply("method"), at.apply("posture"),
				at.apply("rhr"), at.apply("rmssd"), at.apply("rr"), at.apply("temperature"), this.symptoms,
				at.apply("otherSymptom"), at.apply("otherSeverity"), "true".equals(at.apply("fever")),
				at.apply("feverMedicine"), at.apply("eatingNormally"), at.apply("feels"), false, tags, at.apply("note"),
				null, at.apply("revision"), "true".equals(at.apply("allWell")), false, at.apply("counted"),
				at.apply("otherIllness"), null, at.apply("meanwhile"), at.apply("meanwhileSince")), this.feverFrom);
	}

}
