package org.fallow.entry.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.Method;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.RrSeries;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Reads a typed morning: either a morning to save, or what is wrong with it. Nothing that
 * was typed or ticked is dropped silently: what cannot be understood is a problem.
 */
final class MorningReader {

	private static final String UNKNOWN = "entry.code.unknown";

	private final MorningForm form;

	private final double feverCelsius;

	private final List<Problem> problems = new ArrayList<>();

	private final @Nullable RrSeries series;

	private @Nullable NewMorning morning;

	/** Reads a form where there is fever from a temperature on, degrees Celsius. */
	MorningReader(MorningForm form, double feverCelsius) {
		this.form = form;
		this.feverCelsius = feverCelsius;
		this.series = series();
		read();
	}

	List<Problem> problems() {
		return this.problems;
	}

	/** The morning; only without problems. */
	NewMorning morning() {
		NewMorning read = this.morning;
		if (read == null) {
			throw new IllegalStateException("the form has problems");
		}
		return read;
	}

	/** Whether RR intervals were given that should be measured once more. */
	boolean isLowQuality() {
		return this.series != null && this.series.isLowQuality();
	}

	private void read() {
		Optional<LocalDate> day = Typed.day(this.form.day(), "day", this.problems);
		MeasuredValues values = MeasuredValues.of(this.form, this.series, this.problems);
		Double temperature = Typed.number(this.form.temperature(), "temperature", this.problems);
		List<ReportedSymptom> symptoms = symptoms();
		FeverMedicine medicine = known(FeverMedicine.class, this.form.feverMedicine(), "feverMedicine");
		List<ContextTag> tags = tags();
		Feels feels = feels(temperature);
		Method method = known(Method.class, this.form.method(), "method");
		Posture posture = known(Posture.class, this.form.posture(), "posture");
		Meanwhile meanwhile = meanwhile();
		if (day.isEmpty() || !this.problems.isEmpty()) {
			return;
		}
		boolean measured = values.any();
		this.morning = new NewMorning(day.get(), this.form.basedOn(), measured ? method : null,
				measured ? posture : null, values.rhrBpm(), values.rmssdMs(), intervals(), isLowQuality(), temperature,
				symptoms, MorningForm.isTrue(this.form.fever()), (medicine == null) ? FeverMedicine.NONE : medicine,
				eating(), feels, MorningForm.isTrue(this.form.soreness()) ? Severity.MILD : null, tags,
				Typed.wordsOrNull(this.form.note()), null, meanwhile);
	}

	private @Nullable Meanwhile meanwhile() {
		if (!this.form.saysMeanwhile()) {
			return null;
		}
		boolean told = this.form.saysIllMeanwhile() && !Typed.words(this.form.meanwhileSince()).isEmpty();
		LocalDate since = told ? Typed.day(this.form.meanwhileSince(), "meanwhileSince", this.problems).orElse(null)
				: null;
		return new Meanwhile(this.form.saysIllMeanwhile(), since);
	}

	private @Nullable RrSeries series() {
		String text = Typed.words(this.form.rr());
		if (text.isEmpty()) {
			return null;
		}
		try {
			return RrSeries.parse(Typed.intervals(text));
		}
		catch (IllegalArgumentException ex) {
			this.problems.add(Problem.of("rr", "morning.rr.unreadable"));
			return null;
		}
	}

	private List<Integer> intervals() {
		return (this.series == null) ? List.of() : this.series.milliseconds();
	}

	private @Nullable Feels feels(@Nullable Double temperature) {
		Feels chosen = known(Feels.class, this.form.feels(), "feels");
		if (MorningForm.isTrue(this.form.allWell())) {
			boolean hot = temperature != null && temperature >= this.feverCelsius;
			if (hot || this.form.saysUnwell()) {
				this.problems.add(Problem.of("", "morning.all-well.contradicted"));
			}
			return Feels.WELL;
		}
		if (Typed.words(this.form.feels()).isEmpty() && this.form.redFlags().isEmpty()) {
			this.problems.add(Problem.of("feels", "morning.feels.missing"));
		}
		return chosen;
	}

	private @Nullable Boolean eating() {
		String text = Typed.words(this.form.eatingNormally());
		return text.isEmpty() ? null : Boolean.valueOf("true".equals(text));
	}

	private List<ContextTag> tags() {
		List<ContextTag> tags = new ArrayList<>();
		List<String> given = this.form.tags();
		for (String code : (given == null) ? List.<String>of() : given) {
			ContextTag tag = known(ContextTag.class, code, "tags");
			if (tag != null && !tags.contains(tag)) {
				tags.add(tag);
			}
		}
		return tags.stream().sorted().toList();
	}

	private List<ReportedSymptom> symptoms() {
		List<ReportedSymptom> symptoms = new ArrayList<>();
		for (Map.Entry<String, String> ticked : this.form.ticked().entrySet()) {
			Optional<Symptom> symptom = Typed.oneOf(Symptom.class, ticked.getKey());
			Optional<Severity> severity = Typed.oneOf(Severity.class, ticked.getValue());
			if (symptom.isEmpty() || severity.isEmpty() || symptom.get().isInOwnWords()) {
				this.problems.add(Problem.of("", UNKNOWN));
			}
			else {
				symptoms.add(ReportedSymptom.of(symptom.get(), severity.get()));
			}
		}
		symptoms.sort((one, other) -> one.symptom().compareTo(other.symptom()));
		other().ifPresent(symptoms::add);
		return symptoms;
	}

	/** The symptom in own words; moderate where only its words are given. */
	private Optional<ReportedSymptom> other() {
		String words = Typed.words(this.form.otherSymptom());
		Severity severity = known(Severity.class, this.form.otherSeverity(), "otherSeverity");
		if (words.isEmpty() && severity != null) {
			this.problems.add(Problem.of("otherSymptom", "entry.other-symptom.missing"));
		}
		return words.isEmpty() ? Optional.empty() : Optional.of(ReportedSymptom
			.inOwnWords((severity == null) ? Severity.MODERATE : severity, words, this.form.saysNoIllness()));
	}

	private <E extends Enum<E>> @Nullable E known(Class<E> type, @Nullable String code, String field) {
		Optional<E> value = Typed.oneOf(type, code);
		if (value.isEmpty() && !Typed.words(code).isEmpty()) {
			this.problems.add(Problem.of(field, UNKNOWN));
		}
		return value.orElse(null);
	}

}
