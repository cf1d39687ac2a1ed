package org.fallow.entry.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
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
 * Reads a typed morning: either a morning to save, or what is wrong with it.
 */
final class MorningReader {

	private final MorningForm form;

	private final List<Problem> problems = new ArrayList<>();

	private @Nullable RrSeries series;

	private @Nullable NewMorning morning;

	MorningReader(MorningForm form) {
		this.form = form;
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
		RrSeries given = this.series;
		return given != null && given.isLowQuality();
	}

	private void read() {
		Optional<LocalDate> day = Typed.day(this.form.day(), "day", this.problems);
		Double rhr = Typed.number(this.form.rhr(), "rhr", this.problems);
		Double rmssd = Typed.number(this.form.rmssd(), "rmssd", this.problems);
		Double temperature = Typed.number(this.form.temperature(), "temperature", this.problems);
		readRr();
		RrSeries given = this.series;
		if (given != null) {
			rhr = (rhr == null) ? given.clean().heartRateBpm() : rhr;
			rmssd = (rmssd == null) ? given.clean().rmssdMs() : rmssd;
		}
		Feels feels = MorningForm.isTrue(this.form.allWell()) ? Feels.WELL
				: Typed.oneOf(Feels.class, this.form.feels()).orElse(null);
		if (MorningForm.isTrue(this.form.allWell()) && this.form.saysUnwell()) {
			this.problems.add(Problem.of("", "morning.all-well.contradicted"));
		}
		else if (feels == null && this.form.redFlags().isEmpty()) {
			this.problems.add(Problem.of("feels", "morning.feels.missing"));
		}
		if (day.isEmpty() || !this.problems.isEmpty()) {
			return;
		}
		boolean measured = rhr != null || rmssd != null;
		this.morning = new NewMorning(day.get(), revision(),
				measured ? Typed.oneOf(Method.class, this.form.method()).orElse(null) : null,
				measured ? Typed.oneOf(Posture.class, this.form.posture()).orElse(null) : null, rhr, rmssd, List.of(),
				isLowQuality(), temperature, symptoms(), MorningForm.isTrue(this.form.fever()),
				Typed.oneOf(FeverMedicine.class, this.form.feverMedicine()).orElse(FeverMedicine.NONE), eating(), feels,
				MorningForm.isTrue(this.form.soreness()) ? Severity.MILD : null, tags(),
				Typed.wordsOrNull(this.form.note()), null);
	}

	private void readRr() {
		String text = Typed.words(this.form.rr());
		if (text.isEmpty()) {
			return;
		}
		try {
			this.series = RrSeries.parse(text);
		}
		catch (IllegalArgumentException ex) {
			this.problems.add(Problem.of("rr", "morning.rr.unreadable"));
		}
	}

	private int revision() {
		String text = Typed.words(this.form.revision());
		return text.matches("\\d{1,6}") ? Integer.parseInt(text) : 0;
	}

	private @Nullable Boolean eating() {
		String text = Typed.words(this.form.eatingNormally());
		return text.isEmpty() ? null : Boolean.valueOf("true".equals(text));
	}

	private List<ContextTag> tags() {
		List<String> given = this.form.tags();
		return (given == null) ? List.of()
				: given.stream().flatMap((tag) -> Typed.oneOf(ContextTag.class, tag).stream()).sorted().toList();
	}

	private List<ReportedSymptom> symptoms() {
		List<ReportedSymptom> symptoms = new ArrayList<>();
		for (Map.Entry<String, String> ticked : this.form.ticked().entrySet()) {
			Optional<Symptom> symptom = Typed.oneOf(Symptom.class, ticked.getKey());
			Optional<Severity> severity = Typed.oneOf(Severity.class, ticked.getValue());
			if (symptom.isPresent() && severity.isPresent() && symptom.get() != Symptom.OTHER) {
				symptoms.add(ReportedSymptom.of(symptom.get(), severity.get()));
			}
		}
		symptoms.sort((one, other) -> one.symptom().compareTo(other.symptom()));
		String words = Typed.words(this.form.otherSymptom());
		if (!words.isEmpty()) {
			symptoms.add(new ReportedSymptom(Symptom.OTHER,
					Typed.oneOf(Severity.class, this.form.otherSeverity()).orElse(Severity.MODERATE), words));
		}
		return symptoms;
	}

}
