package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * One criterion of a gate as evaluated on a day.
 *
 * @param code which criterion; {@code criterion.<code>} is its sentence
 * @param state how it stands
 * @param shuts whether it keeps the gate shut
 * @param observed what was seen, as plain values for the sentence
 * @param required what is asked, as plain values for the sentence
 * @param since first day of the unbroken run of days on which it stands so
 * @param earliest earliest day it could be met if every coming morning were good; absent
 * where no good morning alone can meet it
 */
public record Criterion(String code, CriterionState state, boolean shuts, List<String> observed, List<String> required,
		@Nullable LocalDate since, @Nullable LocalDate earliest) {

	/** Copies the values. */
	public Criterion {
		observed = List.copyOf(observed);
		required = List.copyOf(required);
	}

	static Criterion of(String code, boolean met, String observed, String required) {
		return new Criterion(code, met ? CriterionState.MET : CriterionState.NOT_MET, !met, List.of(observed),
				List.of(required), null, null);
	}

	/**
	 * The same where sessions wait for the next morning: how many, and from which day
	 * they count, stand behind what was observed.
	 */
	Criterion waiting(int sessions, LocalDate from) {
		if (sessions == 0) {
			return this;
		}
		List<String> seen = new ArrayList<>(this.observed);
		seen.add(String.valueOf(sessions));
		seen.add(from.toString());
		return new Criterion(this.code, this.state, this.shuts, seen, this.required, this.since, this.earliest);
	}

	static Criterion notApplicable(String code, String required) {
		return new Criterion(code, CriterionState.NOT_APPLICABLE, false, List.of(), List.of(required), null, null);
	}

	static Criterion notAvailable(String code, boolean shuts, String required) {
		return new Criterion(code, CriterionState.NOT_AVAILABLE, shuts, List.of(), List.of(required), null, null);
	}

	Criterion withEarliest(@Nullable LocalDate day) {
		return new Criterion(this.code, this.state, this.shuts, this.observed, this.required, this.since, day);
	}

	Criterion withSince(LocalDate day) {
		return new Criterion(this.code, this.state, this.shuts, this.observed, this.required, day, this.earliest);
	}

}
