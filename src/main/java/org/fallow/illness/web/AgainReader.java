package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.illness.NewMeasurement;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;

/**
 * Reads what was measured again; what cannot be read becomes a problem at its field.
 */
final class AgainReader {

	private final AgainForm form;

	private final List<Problem> problems = new ArrayList<>();

	AgainReader(AgainForm form) {
		this.form = form;
	}

	List<Problem> problems() {
		return this.problems;
	}

	/** The measurement; null with problems. */
	@Nullable NewMeasurement measurement() {
		Optional<MeasuredAgain.Kind> kind = Problems.oneOf(MeasuredAgain.Kind.class, this.form.kind());
		Optional<Method> method = Problems.oneOf(Method.class, this.form.method());
		boolean rested = kind.isPresent() && kind.get() == MeasuredAgain.Kind.RESTED;
		Optional<Posture> posture = rested ? Optional.of(Posture.LYING)
				: Problems.oneOf(Posture.class, this.form.posture());
		Optional<LocalDate> day = day();
		if (kind.isEmpty() || day.isEmpty()) {
			this.problems.add(Problem.of("", "again.unreadable"));
		}
		if (method.isEmpty()) {
			this.problems.add(Problem.of("method", "entry.method.missing"));
		}
		if (posture.isEmpty()) {
			this.problems.add(Problem.of("posture", "entry.posture.missing"));
		}
		Double bpm = rested ? typed() : counted(method.map(Method::stepBpm).orElse(1.0));
		if (!this.problems.isEmpty() || bpm == null) {
			return null;
		}
		return new NewMeasurement(day.orElseThrow(), kind.orElseThrow(), method.orElseThrow(), posture.orElseThrow(),
				bpm);
	}

	private Optional<LocalDate> day() {
		BindingResult result = new BeanPropertyBindingResult(this.form, "form");
		return Problems.day(result, "day", this.form.day());
	}

	/** With a decimal point or comma, whatever the page's language. */
	private @Nullable Double typed() {
		String text = Problems.words(this.form.rhr());
		if (!text.matches("\\d{1,3}([.,]\\d{1,6})?")) {
			this.problems.add(Problem.of("rhr", text.isEmpty() ? "again.rhr.missing" : "typed.no-number"));
			return null;
		}
		return Double.valueOf(text.replace(',', '.'));
	}

	private @Nullable Double counted(double step) {
		String text = Problems.words(this.form.beats());
		if (!text.matches("\\d{1,3}")) {
			this.problems.add(Problem.of("beats", text.isEmpty() ? "again.beats.missing" : "morning.counted.whole"));
			return null;
		}
		return Integer.parseInt(text) * step;
	}

}
