package org.fallow.entry;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * By its request id a row of a file is known again: the same morning has the same, and
 * whatever else it says gives another.
 */
class RequestIdTest {

	private static final LocalDate DAY = LocalDate.of(2026, 3, 1);

	private static final NewMorning MORNING = new NewMorning(DAY, 0, Method.STRAP, Posture.LYING, 50.0, 60.0,
			List.of(800), false, 36.6, List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MILD)), false,
			FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, List.of(ContextTag.ALCOHOL), "a note", DAY);

	@Test
	void sameMorningHasTheSameIdWhateverItWasBuiltOn() {
		assertThat(MORNING.basedOn(3).requestId(1)).isEqualTo(MORNING.requestId(1));
	}

	@Test
	void everyPartAndTheRevisionCount() {
		assertThat(Stream.concat(Stream.of(MORNING.requestId(1), MORNING.requestId(2)),
				others().map((other) -> other.requestId(1))))
			.doesNotHaveDuplicates()
			.hasSize(24);
	}

	private static Stream<NewMorning> others() {
		return Stream.of(with(DAY.plusDays(1), Method.STRAP, Posture.LYING, 50.0, 60.0, false),
				with(DAY, Method.COUNT_30, Posture.LYING, 50.0, 60.0, false),
				with(DAY, null, Posture.LYING, 50.0, 60.0, false),
				with(DAY, Method.STRAP, Posture.SITTING, 50.0, 60.0, false),
				with(DAY, Method.STRAP, Posture.LYING, 60.0, 50.0, false),
				with(DAY, Method.STRAP, Posture.LYING, null, 60.0, false),
				with(DAY, Method.STRAP, Posture.LYING, 50.0, null, false),
				with(DAY, Method.STRAP, Posture.LYING, 50.0, 60.0, true), say(List.of(), List.of(), "a note"),
				say(List.of(), List.of(ContextTag.ALCOHOL), "a note"),
				say(List.of(ReportedSymptom.of(Symptom.COUGH, Severity.SEVERE)), List.of(ContextTag.ALCOHOL), "a note"),
				say(List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MILD)), List.of(), "a note"),
				say(List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MILD)), List.of(ContextTag.ALCOHOL), null),
				say(List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MILD)), List.of(ContextTag.ALCOHOL), ""),
				felt(List.of(), 36.6, false, FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, DAY),
				felt(List.of(800, 801), 36.6, false, FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, DAY),
				felt(List.of(800), null, false, FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, DAY),
				felt(List.of(800), 36.6, true, FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, DAY),
				felt(List.of(800), 36.6, false, FeverMedicine.NONE, null, Feels.WELL, Severity.MILD, DAY),
				felt(List.of(800), 36.6, false, FeverMedicine.NONE, true, null, Severity.MILD, DAY),
				felt(List.of(800), 36.6, false, FeverMedicine.NONE, true, Feels.WELL, null, DAY),
				felt(List.of(800), 36.6, false, FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, null));
	}

	private static NewMorning with(LocalDate day, @Nullable Method method, Posture posture, @Nullable Double rhr,
			@Nullable Double rmssd, boolean unsure) {
		return new NewMorning(day, 0, method, posture, rhr, rmssd, List.of(800), unsure, 36.6,
				List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MILD)), false, FeverMedicine.NONE, true, Feels.WELL,
				Severity.MILD, List.of(ContextTag.ALCOHOL), "a note", DAY);
	}

	private static NewMorning say(List<ReportedSymptom> symptoms, List<ContextTag> tags, @Nullable String note) {
		return new NewMorning(DAY, 0, Method.STRAP, Posture.LYING, 50.0, 60.0, List.of(800), false, 36.6, symptoms,
				false, FeverMedicine.NONE, true, Feels.WELL, Severity.MILD, tags, note, DAY);
	}

	private static NewMorning felt(List<Integer> rr, @Nullable Double temperature, boolean fever,
			FeverMedicine medicine, @Nullable Boolean eating, @Nullable Feels feels, @Nullable Severity soreness,
			@Nullable LocalDate recordedOn) {
		return new NewMorning(DAY, 0, Method.STRAP, Posture.LYING, 50.0, 60.0, rr, false, temperature,
				List.of(ReportedSymptom.of(Symptom.COUGH, Severity.MILD)), fever, medicine, eating, feels, soreness,
				List.of(ContextTag.ALCOHOL), "a note", recordedOn);
	}

}
