package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.fallow.entry.Absence;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Fact;
import org.fallow.entry.HealthCondition;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Vaccination;
import org.jspecify.annotations.Nullable;

/**
 * All facts about one athlete, in the order they were recorded.
 *
 * @param facts mornings, sessions, absences, medicines, known symptoms, conditions,
 * vaccinations, changes about the measuring and illness events
 * @param adultFrom the athlete's 18th birthday; absent where unknown, which counts as
 * under 18
 */
public record Timeline(List<Fact> facts, @Nullable LocalDate adultFrom) {

	/** Sorts the facts in the order recorded; facts of one instant keep their order. */
	public Timeline {
		List<Fact> sorted = new ArrayList<>(facts);
		sorted.sort(Comparator.comparing(Fact::recorded));
		facts = List.copyOf(sorted);
	}

	/**
	 * The facts of an athlete whose age is not known.
	 * @param facts as above
	 */
	public Timeline(List<Fact> facts) {
		this(facts, null);
	}

	/**
	 * The first day on which anything was known.
	 * @return the earliest recorded day; {@link LocalDate#MAX} if there is no fact
	 */
	public LocalDate firstDay() {
		return this.facts.stream()
			.map((fact) -> fact.recorded().on())
			.min(Comparator.naturalOrder())
			.orElse(LocalDate.MAX);
	}

	/**
	 * The same facts as if each had been known on the day it speaks of: the timeline of
	 * <em>known now</em>.
	 * @return a timeline in which nothing is late
	 */
	public Timeline knownNow() {
		return new Timeline(this.facts.stream().map(Timeline::onItsDay).toList(), this.adultFrom);
	}

	private static Fact onItsDay(Fact fact) {
		Recorded recorded = fact.recorded();
		if (!recorded.on().isAfter(fact.day())) {
			return fact;
		}
		Recorded own = new Recorded(recorded.at(), fact.day());
		if (fact instanceof MorningEntry m) {
			return m.recordedAs(own);
		}
		if (fact instanceof SessionLog s) {
			return new SessionLog(s.key(), s.day(), own, s.activity(), s.minutes(), s.rpe(), s.intensity(), s.after(),
					s.removed(), s.note());
		}
		if (fact instanceof Absence a) {
			return new Absence(a.key(), a.day(), a.until(), own, a.kind(), a.note());
		}
		if (fact instanceof MedicineChange c) {
			return new MedicineChange(c.day(), own, c.on());
		}
		if (fact instanceof HealthCondition c) {
			return new HealthCondition(c.day(), own, c.kind(), c.present());
		}
		if (fact instanceof KnownSymptom k) {
			return new KnownSymptom(k.day(), k.until(), own, k.symptom(), k.severity(), k.cause(), k.word());
		}
		if (fact instanceof Vaccination v) {
			return new Vaccination(v.day(), own);
		}
		if (fact instanceof DeviceChange c) {
			return new DeviceChange(c.day(), own, c.what(), c.method());
		}
		if (fact instanceof IllnessEvent.Report r) {
			return new IllnessEvent.Report(r.day(), own, r.kind(), r.worst(), r.note());
		}
		return fact;
	}

}
