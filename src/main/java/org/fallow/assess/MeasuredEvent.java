package org.fallow.assess;

import java.time.LocalDate;
import java.util.Optional;

import org.fallow.entry.Fact;
import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.exchange.csv.Codes;
import org.fallow.illness.core.FastAtRest;
import org.fallow.illness.core.OwnFigure;
import org.fallow.illness.core.OwnFigureEnded;
import org.jspecify.annotations.Nullable;

/**
 * Events of a file about a reading: measured again, counted by finger, a clinician's own
 * figure. Each is taken as checked.
 */
final class MeasuredEvent {

	private static final String FROM_FILE = "file";

	private MeasuredEvent() {
	}

	static Fact of(EventKind kind, LocalDate day, Recorded recorded, String arg, String value, Refusal refusal) {
		String[] words = arg.split(" +", 2);
		Optional<Method> method = Codes.method(words[0]);
		Optional<Posture> posture = (words.length == 1) ? Optional.of(Posture.LYING)
				: Codes.oneOf(Posture.values(), words[1]);
		if (method.isEmpty() || posture.isEmpty()) {
			throw bad(kind, "arg", refusal);
		}
		try {
			if (kind == EventKind.FIGURE) {
				return figure(day, recorded, method.get(), posture.get(), bpm(value));
			}
			Double bpm = bpm(value);
			if (bpm == null) {
				throw bad(kind, "value", refusal);
			}
			MeasuredAgain.Kind again = (kind == EventKind.AGAIN) ? MeasuredAgain.Kind.RESTED
					: MeasuredAgain.Kind.COUNTED;
			if (!again.allows(method.get(), posture.get())) {
				throw bad(kind, "arg", refusal);
			}
			return new MeasuredAgain(day, recorded, again, method.get(), posture.get(), bpm);
		}
		catch (IllegalArgumentException ex) {
			throw bad(kind, "value", refusal);
		}
	}

	private static Fact figure(LocalDate day, Recorded recorded, Method method, Posture posture, @Nullable Double bpm) {
		return (bpm == null) ? new OwnFigureEnded(day, recorded, method, posture, FROM_FILE)
				: new OwnFigure(day, recorded, method, posture, bpm, FROM_FILE, FROM_FILE, day, null);
	}

	/** Absent where nothing is written. */
	private static @Nullable Double bpm(String value) {
		if (!value.matches("(\\d{1,3}([.]\\d{1,6})?)?")) {
			throw new IllegalArgumentException(value);
		}
		return value.isEmpty() ? null : Double.valueOf(value);
	}

	private static BadInput bad(EventKind kind, String column, Refusal refusal) {
		return switch (kind) {
			case AGAIN -> refusal.of(column, "assess.event.again", EventRow.words(Method.values()));
			case COUNT -> refusal.of(column, "assess.event.count");
			default ->
				refusal.of(column, "assess.event.figure", FastAtRest.MOST_OWN_BPM, FastAtRest.MOST_OWN_STANDING_BPM);
		};
	}

	/** Makes the error of a row. */
	interface Refusal {

		BadInput of(String column, String code, Object... arguments);

	}

}
