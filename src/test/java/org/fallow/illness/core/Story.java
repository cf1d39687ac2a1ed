package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

import org.fallow.entry.Absence;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.ContextTag;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.HealthCondition;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.KnownCause;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.Vaccination;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;

/**
 * A made-up athlete's facts, told day by day for the tests. Day 0 is 2026-01-29, after 28
 * quiet mornings of 49, 50, 51, 50 ... bpm by chest strap, lying: baseline 50, spread 1.
 */
final class Story {

	static final LocalDate DAY_0 = LocalDate.of(2026, 1, 29);

	private final List<Fact> facts = new ArrayList<>();

	private int order;

	private LocalDate adultFrom;

	static Story ofAKnownAthlete() {
		Story story = new Story();
		int[] cycle = { 49, 50, 51, 50 };
		for (int i = -28; i < 0; i++) {
			story.rhr(i, cycle[Math.floorMod(i, 4)]);
		}
		return story;
	}

	static Story ofANewcomer() {
		return new Story();
	}

	/** Of age since long ago; untold, everybody counts as under 18. */
	Story adult() {
		return adultFrom(DAY_0.minusYears(10));
	}

	Story adultFrom(LocalDate day) {
		this.adultFrom = day;
		return this;
	}

	static LocalDate day(int day) {
		return DAY_0.plusDays(day);
	}

	Recorded recorded(int day, int hour) {
		Instant at = day(day).atTime(hour, 0).plusNanos(++this.order * 1000L).toInstant(ZoneOffset.UTC);
		return new Recorded(at, day(day));
	}

	Story add(Fact fact) {
		this.facts.add(fact);
		return this;
	}

	Story well(int day) {
		return rhr(day, 50);
	}

	Story well(int from, int to) {
		for (int day = from; day <= to; day++) {
			well(day);
		}
		return this;
	}

	Story rhr(int day, double bpm) {
		return add(measured(day, day, bpm));
	}

	private MorningEntry measured(int day, int recordedOn, double bpm) {
		return new MorningEntry(day(day), recorded(recordedOn, 6), Method.STRAP, Posture.LYING, bpm, null, false, null,
				List.of(), false, FeverMedicine.NONE, true, Feels.WELL, null, List.of(), null, Meanwhile.NO);
	}

	/** A quiet morning, changed as told. */
	Story morning(int day, UnaryOperator<Entry> change) {
		return add(change.apply(new Entry()).at(day, recorded(day, 6)));
	}

	/** A quiet morning, changed as told, that became known on a later day. */
	Story late(int day, int recordedOn, UnaryOperator<Entry> change) {
		return add(change.apply(new Entry()).at(day, recorded(recordedOn, 7)));
	}

	Story sick(int day, Symptom symptom, Severity severity) {
		return morning(day, (e) -> e.symptom(symptom, severity));
	}

	Story sick(int from, int to, Symptom symptom, Severity severity) {
		for (int day = from; day <= to; day++) {
			sick(day, symptom, severity);
		}
		return this;
	}

	Story withoutRhr(int day) {
		return morning(day, (e) -> e.rhr(null));
	}

	Story run(int... days) {
		for (int day : days) {
			session(day, 3.0, Intensity.EASY);
		}
		return this;
	}

	Story runs(int from, int to) {
		for (int day = from; day <= to; day++) {
			run(day);
		}
		return this;
	}

	Story session(int day, Double rpe, Intensity intensity, AfterSession... after) {
		return add(new SessionLog("s" + ++this.order, day(day), recorded(day, 19), Activity.RUN, 30, rpe, intensity,
				List.of(after), false, null));
	}

	Story report(int recordedOn, int onset, ReportKind kind, Integer worst) {
		return add(new IllnessEvent.Report(day(onset), recorded(recordedOn, 12), kind, worst, null));
	}

	Story hold(int day) {
		return add(new IllnessEvent.Hold(day(day), recorded(day, 12), "test"));
	}

	Story cleared(int day, Integer until, Clearance ceiling) {
		return add(new IllnessEvent.Cleared(day(day), (until == null) ? null : day(until), recorded(day, 14), ceiling,
				"a clinician", "physician", null));
	}

	/**
	 * A physician who examined on a day says full training, no illness where told so, and
	 * names what was examined.
	 */
	Story physician(int day, int examinedOn, boolean noIllness, ReportedSymptom... examined) {
		return add(new IllnessEvent.Cleared(day(day), null, recorded(day, 14), Clearance.FULL_TRAINING, "a physician",
				"cardiologist", null,
				new ClinicianWord(ClinicianWord.By.PHYSICIAN, day(examinedOn), noIllness, List.of(examined))));
	}

	/** The athlete, who is all there is, tells of a clearance. */
	Story told(int day, int until, Clearance ceiling) {
		return add(new IllnessEvent.Cleared(day(day), day(until), recorded(day, 14), ceiling, "a clinician",
				"physician", null, ClinicianWord.toldByTheAthlete()));
	}

	Story stricter(int day, int until, Clearance ceiling, String key, Spoken word) {
		return add(new IllnessEvent.Stricter(day(day), day(until), recorded(day, 12), ceiling, "test", key, word));
	}

	Story lifted(int day, String key, Spoken word) {
		return add(new IllnessEvent.Lifted(day(day), recorded(day, 13), key, "test", word));
	}

	Story saidToday(int day, boolean able, boolean eating) {
		return add(new IllnessEvent.SaidToday(day(day), recorded(day, 9), able, eating, "on the phone"));
	}

	/** At 8 in the morning, two hours after the entry; the fold trusts it. */
	Story slip(int day, Tick tick, SlipTerms terms) {
		return add(new IllnessEvent.Slip(day(day), recorded(day, 8), tick, terms));
	}

	Story slip(int day, Symptom symptom, SlipTerms terms) {
		return slip(day, Tick.of(symptom), terms);
	}

	Story slipAccepted(int day) {
		return add(new IllnessEvent.SlipAccepted(day(day), recorded(day, 9), "test"));
	}

	Story asked(int day) {
		return add(new IllnessEvent.Asked(day(day), recorded(day, 9), "test"));
	}

	Story withdrawn(int day) {
		return add(new IllnessEvent.Withdrawal(day(day), recorded(day, 12), "test"));
	}

	Story stricter(int day, int until, Clearance ceiling) {
		return add(new IllnessEvent.Stricter(day(day), day(until), recorded(day, 12), ceiling, "test"));
	}

	Story symptomsOnly(int day) {
		return add(new IllnessEvent.SymptomsOnly(day(day), recorded(day, 5), "test"));
	}

	Story workingLevel(int day) {
		return add(new IllnessEvent.WorkingLevel(day(day), recorded(day, 12), "a clinician", "physician", "no concern",
				"test"));
	}

	Story condition(int day, HealthCondition.Kind kind, boolean present) {
		return add(new HealthCondition(day(day), recorded(day, 5), kind, present));
	}

	Story away(int from, int until, AbsenceKind kind) {
		return add(new Absence("a" + ++this.order, day(from), day(until), recorded(from, 5), kind, null));
	}

	Story medicine(int day, boolean on) {
		return add(new MedicineChange(day(day), recorded(day, 5), on));
	}

	Story injured(int from, int to) {
		return add(new Absence("a" + ++this.order, day(from), day(to), recorded(from, 5), AbsenceKind.INJURY, null));
	}

	Story known(int day, Symptom symptom, Severity severity) {
		return add(new KnownSymptom(day(day), day(day + 29), recorded(day, 5), symptom, severity));
	}

	Story known(int day, Symptom symptom, Severity severity, KnownCause cause) {
		return add(new KnownSymptom(day(day), day(day + 29), recorded(day, 5), symptom, severity, cause, "a midwife"));
	}

	/** Vaccinated in the afternoon, and noted then. */
	Story vaccinated(int day) {
		return vaccinated(day, day, 16);
	}

	Story vaccinated(int day, int recordedOn, int hour) {
		return add(new Vaccination(day(day), recorded(recordedOn, hour)));
	}

	Story measuredAnew(int day, DeviceChange.What what, Method method) {
		return add(new DeviceChange(day(day), recorded(day, 5), what, method));
	}

	Timeline timeline() {
		return new Timeline(this.facts, this.adultFrom);
	}

	List<DayAssessment> lived(int to) {
		return Course.of(timeline(), RuleBook.of(DefaultRules.ruleSet()), day(to));
	}

	DayAssessment on(int day) {
		List<DayAssessment> days = lived(day);
		return days.get(days.size() - 1);
	}

	Clearance clearance(int day) {
		return on(day).clearance();
	}

	/** Stage on a day: -1 without an episode, 0 for ill. */
	int stage(int day) {
		Episode episode = on(day).state().episode();
		return (episode == null) ? -1 : episode.stage();
	}

	Episode episode(int day) {
		Episode episode = on(day).state().episode();
		if (episode == null) {
			throw new AssertionError("no episode on day " + day);
		}
		return episode;
	}

	Criterion criterion(int day, String code) {
		DayAssessment assessment = on(day);
		GateSheet sheet = (assessment.opened() != null) ? assessment.opened() : assessment.gate();
		return sheet.criteria().stream().filter((c) -> c.code().equals(code)).findFirst().orElseThrow();
	}

	List<String> notices(int day) {
		return on(day).notices().stream().map((m) -> m.code()).toList();
	}

	List<String> reasons(int day) {
		return on(day).reasons().stream().map((m) -> m.code()).toList();
	}

	/** What a morning says, quiet unless changed. */
	static final class Entry {

		private Method method = Method.STRAP;

		private Posture posture = Posture.LYING;

		private Double rhr = 50.0;

		private Double rmssd;

		private boolean unsure;

		private Double temperature;

		private final List<ReportedSymptom> symptoms = new ArrayList<>();

		private boolean fever;

		private FeverMedicine medicine = FeverMedicine.NONE;

		private Boolean eating = true;

		private Feels feels = Feels.WELL;

		private List<ContextTag> tags = List.of();

		private Meanwhile meanwhile = Meanwhile.NO;

		Entry tagged(ContextTag... given) {
			this.tags = List.of(given);
			return this;
		}

		Entry meanwhile(Meanwhile answer) {
			this.meanwhile = answer;
			return this;
		}

		Entry words(Symptom symptom, Severity severity, String words) {
			this.symptoms.add(new ReportedSymptom(symptom, severity, words));
			return this;
		}

		Entry rhr(Double bpm) {
			this.rhr = bpm;
			return this;
		}

		Entry rmssd(Double ms) {
			this.rmssd = ms;
			return this;
		}

		Entry unsure() {
			this.unsure = true;
			return this;
		}

		Entry by(Method how) {
			this.method = how;
			return this;
		}

		Entry posture(Posture how) {
			this.posture = how;
			return this;
		}

		Entry temperature(double celsius) {
			this.temperature = celsius;
			return this;
		}

		Entry symptom(Symptom symptom, Severity severity) {
			this.symptoms.add(ReportedSymptom.of(symptom, severity));
			return this;
		}

		Entry fever() {
			this.fever = true;
			return this;
		}

		Entry medicine(FeverMedicine taken) {
			this.medicine = taken;
			return this;
		}

		Entry eating(Boolean normally) {
			this.eating = normally;
			return this;
		}

		Entry feels(Feels how) {
			this.feels = how;
			return this;
		}

		MorningEntry at(int day, Recorded recorded) {
			return new MorningEntry(day(day), recorded, this.method, this.posture, this.rhr, this.rmssd, this.unsure,
					this.temperature, this.symptoms, this.fever, this.medicine, this.eating, this.feels, null,
					this.tags, null, this.meanwhile);
		}

	}

}
