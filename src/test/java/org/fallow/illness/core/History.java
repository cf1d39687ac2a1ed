package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

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
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MeasuredAgain;
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
import org.fallow.rules.Intensity;

/**
 * A random history as numbers, so that it shrinks: quiet mornings, a silence, then one
 * number for each day, of which the thousands say whether the day is an ordinary one, the
 * tens and ones what its morning is, and the hundreds what else happens.
 *
 * @param quiet quiet mornings before anything happens, at least 1
 * @param silence days without anything after these
 * @param calm how many of ten days are ordinary: a quiet morning and a run; from
 * {@link #SLOW} on one slow to come back, seven above, for whom working levels are set
 * @param days one number for each day after the silence, 0 to 99999
 */
record History(int quiet, int silence, int calm, List<Integer> days) {

	static final LocalDate BASE = LocalDate.of(2026, 1, 5);

	private static final Map<Integer, Double> BEATS = Map.ofEntries(Map.entry(10, 55.0), Map.entry(11, 56.0),
			Map.entry(12, 58.0), Map.entry(13, 60.0), Map.entry(14, 63.0), Map.entry(15, 72.0), Map.entry(16, 43.0),
			Map.entry(17, 42.0), Map.entry(18, 44.0), Map.entry(19, 40.0), Map.entry(50, 57.0), Map.entry(51, 59.0),
			Map.entry(52, 41.0), Map.entry(53, 42.0), Map.entry(54, 43.0), Map.entry(55, 43.0), Map.entry(56, 42.0),
			Map.entry(57, 41.0));

	private static final Map<Integer, Symptom> SYMPTOMS = Map.ofEntries(Map.entry(20, Symptom.SNEEZING),
			Map.entry(21, Symptom.SNEEZING), Map.entry(22, Symptom.COUGH), Map.entry(23, Symptom.FATIGUE),
			Map.entry(24, Symptom.FATIGUE), Map.entry(25, Symptom.VOMITING), Map.entry(26, Symptom.FEVERISH),
			Map.entry(27, Symptom.SMELL_LOSS), Map.entry(28, Symptom.WHEEZE), Map.entry(29, Symptom.CHEST_PAIN),
			Map.entry(30, Symptom.SORE_THROAT), Map.entry(31, Symptom.RUNNY_NOSE), Map.entry(32, Symptom.LIMB_PAIN),
			Map.entry(33, Symptom.PERIOD_PAIN), Map.entry(34, Symptom.OTHER_COMPLAINT), Map.entry(35, Symptom.WHEEZE),
			Map.entry(36, Symptom.MUSCLE_ACHES), Map.entry(37, Symptom.SHIVERING));

	static final int SLOW = 10;

	private static final int WEST = 23;

	private static final int EAST = 39;

	LocalDate day(LocalDate base, int index) {
		return base.plusDays((long) this.quiet + this.silence + index);
	}

	LocalDate last(LocalDate base) {
		return day(base, this.days.size() - 1);
	}

	List<Fact> facts(LocalDate base) {
		return new Lives(base).facts();
	}

	/** The facts of the numbers, from a first day on. */
	private final class Lives {

		private final LocalDate base;

		private Lives(LocalDate base) {
			this.base = base;
		}

		List<Fact> facts() {
			List<Fact> facts = new ArrayList<>();
			for (int i = 0; i < History.this.quiet; i++) {
				LocalDate day = this.base.plusDays(i);
				facts.add(morning(day, recorded(day, 6, 0), 49.0 + i % 3, List.of()));
			}
			for (int i = 0; i < History.this.days.size(); i++) {
				add(facts, i);
			}
			return facts;
		}

		private void add(List<Fact> facts, int index) {
			int number = History.this.days.get(index);
			LocalDate day = day(this.base, index);
			int code = number % 10_000;
			if (isFlyingEast(index)) {
				return;
			}
			if (code / 1000 < calmTenths()) {
				boolean slow = calm >= SLOW;
				if (slow && index == 0) {
					facts.add(morning(day, recorded(day, 6, 0), 58.0, felt(Symptom.FATIGUE)));
					return;
				}
				facts.add(morning(day, recorded(day, 6, 0), (slow ? 56.0 : 49.0) + number % 3, List.of()));
				facts.add(session(day, day, 3.0, List.of()));
				if (slow && number % 5 == 0) {
					facts.add(level(day));
				}
				return;
			}
			mornings(facts, day, morningKind(index), number / 10_000);
			measuredAgain(facts, day, morningKind(index), number);
			other(facts, day, number / 100 % 100, number / 10_000);
		}

		/** A quarter of the days have the morning of the day before. */
		private int morningKind(int index) {
			int number = History.this.days.get(index);
			boolean again = index > 0 && number % 100 > 75;
			return again ? morningKind(index - 1) : number % 100;
		}

		private void mornings(List<Fact> facts, LocalDate day, int kind, int size) {
			Symptom symptom = SYMPTOMS.get(kind);
			Severity severity = Severity.values()[size % 3];
			List<ReportedSymptom> felt = (symptom == null) ? List.of() : List.of(ReportedSymptom.of(symptom, severity));
			Double bpm = BEATS.getOrDefault(kind, (symptom == null) ? 49.0 + kind % 3 : 50.0 + size);
			LocalDate wanted = day.minusDays((kind < 45) ? 1 + size / 3 : 1 + size * 4L);
			LocalDate earlier = wanted.isAfter(this.base) ? wanted : this.base;
			switch (kind) {
				case 0, 1, 2, 3 -> {
				}
				case 4, 5, 6 -> facts.add(morning(day, recorded(day, 6, 0), null, felt));
				case 7 -> facts.add(by(Method.WORN, day, 51));
				case 8, 9 -> facts.add(by(Method.COUNT_30, day, 52));
				case 40 -> facts.add(medicine(day, FeverMedicine.OTHER));
				case 41 -> facts.add(medicine(day, FeverMedicine.ILLNESS));
				case 42, 43 -> facts.add(morning(earlier, recorded(day, 9, 1), 50.0, felt));
				case 44 -> facts.add(morning(earlier, recorded(day, 9, 1), 61.0, felt));
				case 45 -> facts.add(morning(earlier, recorded(day, 9, 1), 52.0, felt(Symptom.FATIGUE)));
				case 46 -> facts.add(morning(earlier, recorded(day, 9, 1), 52.0, felt(Symptom.SNEEZING)));
				case 48, 49 -> facts.add(vaccinated(day));
				case 47 -> {
					facts.add(morning(day, recorded(day, 6, 0), 52.0, felt(Symptom.FATIGUE)));
					facts.add(morning(day, recorded(day, 9, 1), 50.0, List.of()));
				}
				default -> facts.add(morning(day, recorded(day, 6, 0), bpm, felt));
			}
		}

		/** High and fast mornings are measured again, and some that do not ask for it. */
		private void measuredAgain(List<Fact> facts, LocalDate day, int kind, int number) {
			if ((kind < 13 || kind > 15) && (kind < 58 || kind > 63)) {
				return;
			}
			int size = number / 10_000;
			double bpm = (size < 3) ? 50 : (size < 5) ? 57 : (size < 7) ? 66 : 50 + size * 10;
			if (kind >= 58) {
				facts.add(morning(day, recorded(day, 6, 0), (kind < 61) ? 104.0 : 128.0, List.of()));
			}
			if (kind >= 61 && number % 7 > 1) {
				facts.add(new MeasuredAgain(day, recorded(day, 7, 1), MeasuredAgain.Kind.COUNTED, Method.COUNT_60,
						Posture.SITTING, (number % 7 == 2) ? 124 : (number % 7 == 3) ? 108 : 56));
			}
			if (number % 3 > 0) {
				facts.add(new MeasuredAgain(day, recorded(day, 7, 2), MeasuredAgain.Kind.RESTED,
						(number % 5 == 0) ? Method.COUNT_60 : Method.STRAP, Posture.LYING, bpm));
			}
			if (number % 11 == 0) {
				facts.add(morning(day, recorded(day, 8, 3), (double) (50 + size * 3), List.of()));
			}
		}

		private void other(List<Fact> facts, LocalDate day, int kind, int size) {
			switch (kind % 50) {
				case 0 -> facts.add(session(day, day, 8.0, List.of()));
				case 1 -> facts.add(session(day, day, 3.0, List.of(AfterSession.HEADACHE)));
				case 2 -> facts.add(session(day, day, 3.0, List.of(AfterSession.PALPITATIONS)));
				case 3 -> facts.add(report(day, size, ReportKind.ABOVE_NECK));
				case 4 -> facts.add(report(day, size, ReportKind.values()[size]));
				case 5 -> facts.add(report(day, 0, ReportKind.FEVER));
				case 6 -> facts.add(new IllnessEvent.Hold(day, recorded(day, 12, 2), "by hand"));
				case 7, 8, 9 -> facts.add(cleared(day, size % 3, null, Clearance.FULL_TRAINING));
				case 10 -> facts.add(cleared(day, size % 3, day.plusDays(4L + size), Clearance.FULL_TRAINING));
				case 11 -> facts.add(cleared(day, 0, day.plusDays(size), Clearance.REST));
				case 12 -> facts.add(cleared(day, size % 2, null, Clearance.EASY_ONLY));
				case 13, 14 -> facts.add(new IllnessEvent.Withdrawal(day, recorded(day, 13, 4), "none"));
				case 15 -> facts.add(new IllnessEvent.Stricter(day.plusDays(size), day.plusDays(size + 2L),
						recorded(day, 12, 5), Clearance.EASY_ONLY, "tired", "k" + size % 2,
						(size < 7) ? null : new Spoken(Spoken.By.CLINICIAN, "a clinician")));
				case 24 -> facts.add(said(day, true, List.of()));
				case 25, 26, 30, 31, 32, 45, 46, 47, 48, 49 ->
					facts.add(said(day, kind >= 50, List.of(ReportedSymptom.of(Symptom.CHEST_PAIN, Severity.SEVERE))));
				case 27 -> facts.add(new IllnessEvent.Cleared(day, day.plusDays(size), recorded(day, 14, 2),
						Clearance.EASY_ONLY, "a clinician", "physician", null, ClinicianWord.toldByTheAthlete()));
				case 28 -> facts.add(new IllnessEvent.Lifted(day, recorded(day, 13, 7), "k" + size % 2, "rested",
						(size < 5) ? null : new Spoken(Spoken.By.CLINICIAN, "a clinician")));
				case 29 -> facts.add(new IllnessEvent.SaidToday(day, recorded(day, 9, 8), true, size % 2 == 0, "said"));
				case 16 -> facts.add(new IllnessEvent.SymptomsOnly(day, recorded(day, 5, 6), "device"));
				case 17, 18 -> facts.add(new MedicineChange(day, recorded(day, 5, 7), kind % 2 == 0));
				case 19 -> facts.add(new Absence("a" + day, day.plusDays(size), day.plusDays(size + 3L),
						recorded(day, 5, 8), AbsenceKind.INJURY, null));
				case 20 -> facts.add(new KnownSymptom(day.plusDays(size), day.plusDays(size + 29L), recorded(day, 5, 9),
						Symptom.SNEEZING, Severity.MILD));
				case 21 -> facts.add(level(day));
				case 22 -> facts.add(new HealthCondition(day, recorded(day, 5, 10),
						HealthCondition.Kind.values()[size % 3], size % 2 == 0));
				case 33, 34 -> facts.add(new Vaccination(day, recorded(day, 5, 11)));
				case 35 ->
					facts.add(new DeviceChange(day, recorded(day, 5, 12), DeviceChange.What.DEVICE, Method.STRAP));
				case 36, 37 -> facts
					.add(new KnownSymptom(day, day.plusDays(29), recorded(day, 5, 13), Symptom.WHEEZE, Severity.MILD));
				case WEST, EAST -> {
				}
				case 40, 41, 42, 43 -> addSlip(facts, day, size);
				case 38 -> facts.add(new OwnFigure(day, recorded(day, 5, 14), Method.STRAP, Posture.LYING, 105 + size,
						"a clinician", "physician", day, null));
				case 44 -> facts.add(new IllnessEvent.Asked(day, recorded(day, 15, 1), "all well"));
				default -> facts.add(session(day, day, 2.0, List.of()));
			}
		}

		/** A tick of the day told to be a slip; after a session's red flag where none. */
		private void addSlip(List<Fact> facts, LocalDate day, int size) {
			Tick tick = facts.stream()
				.filter((f) -> f instanceof MorningEntry m && m.day().equals(day) && !m.symptoms().isEmpty())
				.map((f) -> Tick.of(((MorningEntry) f).symptoms().get(0).symptom()))
				.findFirst()
				.orElse(Tick.of("s" + day, AfterSession.PALPITATIONS));
			if (tick.session() != null) {
				facts.add(session(day, day, 2.0, List.of(AfterSession.PALPITATIONS)));
			}
			SlipTerms terms = tick.isRedFlag() ? SlipTerms.values()[2 + size % 2] : SlipTerms.values()[size % 2];
			facts.add(new IllnessEvent.Slip(day, recorded(day, 18, 20), tick, terms));
			if (size > 6) {
				facts.add(new IllnessEvent.SlipAccepted(day, recorded(day, 19, 21), "told me"));
			}
		}

		private List<ReportedSymptom> felt(Symptom symptom) {
			return List.of(ReportedSymptom.of(symptom, Severity.MILD));
		}

		private MorningEntry morning(LocalDate day, Recorded recorded, Double bpm, List<ReportedSymptom> felt) {
			double rmssd = 60 + 3 * day.getDayOfWeek().getValue();
			return new MorningEntry(day, recorded, Method.STRAP, Posture.LYING, bpm, rmssd, false, null, felt, false,
					FeverMedicine.NONE, true, Feels.WELL, null, List.of(), null, answer(day));
		}

		/** Most mornings answer no, some do not answer, and few were ill meanwhile. */
		private Meanwhile answer(LocalDate day) {
			long since = day.toEpochDay() - this.base.toEpochDay();
			return (since % 9 == 4) ? null : (since % 97 == 60) ? Meanwhile.ill(null) : Meanwhile.NO;
		}

		private MorningEntry vaccinated(LocalDate day) {
			return new MorningEntry(day, recorded(day, 6, 0), Method.STRAP, Posture.LYING, 50.0, 62.0, false, null,
					List.of(), false, FeverMedicine.NONE, null, null, null, List.of(ContextTag.VACCINATION), null);
		}

		private MorningEntry by(Method method, LocalDate day, double bpm) {
			return new MorningEntry(day, recorded(day, 6, 0), method, Posture.LYING, bpm, null, false, null, List.of(),
					false, FeverMedicine.NONE, true, Feels.ABLE, null, List.of(), null, answer(day));
		}

		private MorningEntry medicine(LocalDate day, FeverMedicine taken) {
			return new MorningEntry(day, recorded(day, 6, 0), Method.STRAP, Posture.LYING, 51.0, 62.0, false, 37.1,
					List.of(), false, taken, true, Feels.WELL, null, List.of(), null);
		}

		private SessionLog session(LocalDate day, LocalDate on, double rpe, List<AfterSession> after) {
			return new SessionLog("s" + day, day, recorded(on, 18, 3), Activity.RUN, 30, rpe, Intensity.EASY, after,
					false, null);
		}

		private IllnessEvent.Report report(LocalDate day, int back, ReportKind kind) {
			return new IllnessEvent.Report(day.minusDays(back % 4), recorded(day, 11, 1), kind, 2, null);
		}

		private IllnessEvent.Cleared cleared(LocalDate day, int ahead, LocalDate until, Clearance ceiling) {
			return new IllnessEvent.Cleared(day.plusDays(ahead), until, recorded(day, 14, 1), ceiling, "a clinician",
					"physician", null);
		}

		private IllnessEvent.Cleared said(LocalDate day, boolean noIllness, List<ReportedSymptom> examined) {
			return new IllnessEvent.Cleared(day, null, recorded(day, 14, 1), Clearance.FULL_TRAINING, "a physician",
					"physician", null, new ClinicianWord(ClinicianWord.By.PHYSICIAN, day, noIllness, examined));
		}

		private IllnessEvent level(LocalDate day) {
			return new IllnessEvent.WorkingLevel(day, recorded(day, 12, 9), "a clinician", "physician", "no concern",
					"slow");
		}

		private int calmTenths() {
			return calm % SLOW;
		}

		private Recorded recorded(LocalDate on, int hour, int order) {
			ZoneOffset zone = ZoneOffset.ofHours(isInTheWest(on) ? -10 : 13);
			return new Recorded(on.atTime(hour, 0).plusNanos(order * 1000L).toInstant(zone), on);
		}

		/** From UTC+13 to UTC-10 a day is lived again, and back one is left out. */
		private boolean isInTheWest(LocalDate on) {
			boolean west = false;
			for (int i = 0; i < History.this.days.size() && !day(this.base, i).isAfter(on); i++) {
				west = (move(i) == WEST) || (west && move(i) != EAST);
			}
			return west;
		}

		private int move(int index) {
			int code = History.this.days.get(index) % 10_000;
			return (code / 1000 < calmTenths()) ? -1 : code / 100 % 100 % 40;
		}

		private boolean isFlyingEast(int index) {
			return move(index) == EAST && isInTheWest(day(this.base, index).minusDays(1));
		}

	}

}
