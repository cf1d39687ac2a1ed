package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.fallow.entry.Absence;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Fact;
import org.fallow.entry.KnownCause;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.Vaccination;
import org.fallow.rules.Clearance;
import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;

/**
 * Turns the words of docs/stories.md into facts. Each kind of fact has an hour of its own
 * at which it is recorded, unless a time stands behind it.
 */
final class Telling {

	private static final Pattern TIME = Pattern.compile("(.*) at ([0-9]{2}:[0-9]{2}(?::[0-9]{2})?)");

	private final List<Fact> facts = new ArrayList<>();

	private final Integer usual;

	private int day;

	private @Nullable LocalTime time;

	private int order;

	Telling(int usual) {
		this.usual = usual;
	}

	/** All that was told so far, in the order told. */
	List<Fact> facts() {
		return this.facts;
	}

	/**
	 * One thing that is told on a day.
	 * @param on the day
	 * @param words what, as the page has it
	 */
	void tell(int on, String words) {
		this.day = on;
		Matcher timed = TIME.matcher(words);
		boolean hasTime = timed.matches();
		this.time = hasTime ? LocalTime.parse(timed.group(2)) : null;
		String what = hasTime ? timed.group(1) : words;
		Fact fact = EntryWords.isEntry(what) ? EntryWords.entry(what, this.usual, Story.day(on), at(6)) : other(what);
		this.facts.add(fact);
	}

	private Fact other(String what) {
		LocalDate on = Story.day(this.day);
		return switch (what) {
			case "run" -> run(3.0, List.of());
			case "hard run" -> run(7.0, List.of());
			case "the coach withdraws it" -> new IllnessEvent.Withdrawal(on, at(12), "it was none");
			case "clinician: easy" -> clinician(Clearance.EASY_ONLY);
			case "clinician: full" -> clinician(Clearance.FULL_TRAINING);
			case "vaccinated" -> new Vaccination(on, at(16));
			case "hold" -> new IllnessEvent.Hold(on, at(12), "asked by a coach");
			case "the coach asked" -> new IllnessEvent.Asked(on, at(9), "it was a mistake");
			case "the coach accepts" -> new IllnessEvent.SlipAccepted(on, at(9), "it was a mistake");
			case "symptoms only" -> new IllnessEvent.SymptomsOnly(on, at(5), "medicine changed");
			case "beta blocker begun" -> new MedicineChange(on, at(5), true);
			case "new software" -> new DeviceChange(on, at(5), DeviceChange.What.SOFTWARE, null);
			case "physician: full" -> physician(false, List.of());
			case "physician: full, no illness" -> physician(true, List.of());
			default -> matched(what);
		};
	}

	private Fact matched(String what) {
		LocalDate on = Story.day(this.day);
		Words words = new Words(what);
		if (words.are("after the run: (.+)")) {
			return run(3.0, List.of(AfterSession.valueOf(code(words.group(1)))));
		}
		if (words.are("for day (\\d+): (.+)")) {
			return EntryWords.entry(words.group(2), this.usual, words.day(1), at(7));
		}
		if (words.are("vaccinated on day (\\d+)")) {
			return new Vaccination(words.day(1), at(16));
		}
		if (words.are("physician: full, no illness, (.+) (\\w+) examined")) {
			return physician(true, List.of(words.symptom()));
		}
		if (words.are("tells of a clearance: easy until (\\d+)")) {
			return new IllnessEvent.Cleared(on, words.day(1), at(14), Clearance.EASY_ONLY, "a clinician", "physician",
					null, ClinicianWord.toldByTheAthlete());
		}
		if (words.are("report of (\\w+) since day (\\d+)")) {
			return new IllnessEvent.Report(words.day(2), at(12), ReportKind.valueOf(code(words.group(1))), null, null);
		}
		if (words.are("known: (.+) (\\w+) \\((\\w+)\\)")) {
			ReportedSymptom symptom = words.symptom();
			return new KnownSymptom(on, on.plusDays(29), at(5), symptom.symptom(), symptom.severity(),
					KnownCause.valueOf(code(words.group(3))), null);
		}
		if (words.are("(counts|lies and measures) ([0-9.]+)")) {
			boolean counts = words.group(1).equals("counts");
			return new MeasuredAgain(on, at(7), counts ? MeasuredAgain.Kind.COUNTED : MeasuredAgain.Kind.RESTED,
					counts ? Method.COUNT_60 : Method.STRAP, Posture.LYING, Double.parseDouble(words.group(2)));
		}
		if (words.are("(holiday|injured) until (\\d+)")) {
			AbsenceKind kind = words.group(1).equals("injured") ? AbsenceKind.INJURY : AbsenceKind.HOLIDAY;
			return new Absence("away", on, words.day(2), at(5), kind, null);
		}
		return coach(words, on);
	}

	private Fact coach(Words words, LocalDate on) {
		if (words.are("coach: (easy|rest) until (\\d+)( on a guardian's word)?")) {
			return new IllnessEvent.Stricter(on, words.day(2), at(12),
					words.group(1).equals("rest") ? Clearance.REST : Clearance.EASY_ONLY, "school", "ceiling",
					words.has(3) ? guardian() : null);
		}
		if (words.are("the coach lifts it( on a guardian's word)?")) {
			return new IllnessEvent.Lifted(on, at(13), "ceiling", "over", words.has(1) ? guardian() : null);
		}
		throw new IllegalArgumentException("nothing that can be told: " + words.text);
	}

	private static Spoken guardian() {
		return new Spoken(Spoken.By.GUARDIAN, "a parent");
	}

	private IllnessEvent.Cleared physician(boolean noIllness, List<ReportedSymptom> examined) {
		LocalDate on = Story.day(this.day);
		return new IllnessEvent.Cleared(on, null, at(14), Clearance.FULL_TRAINING, "a physician", "cardiologist", null,
				new ClinicianWord(ClinicianWord.By.PHYSICIAN, on, noIllness, examined));
	}

	private IllnessEvent.Cleared clinician(Clearance ceiling) {
		return new IllnessEvent.Cleared(Story.day(this.day), null, at(14), ceiling, "a clinician", "physician", null);
	}

	private SessionLog run(double effort, List<AfterSession> after) {
		return new SessionLog("run" + ++this.order, Story.day(this.day), at(19), Activity.RUN, 30, effort,
				Intensity.EASY, after, false, null);
	}

	private Recorded at(int hour) {
		return recorded(this.day, Objects.requireNonNullElse(this.time, LocalTime.of(hour, 0)));
	}

	static Recorded recorded(int day, LocalTime time) {
		Instant instant = Story.day(day).atTime(time).toInstant(ZoneOffset.UTC);
		return new Recorded(instant, Story.day(day));
	}

	/** "Sore throat" is SORE_THROAT. */
	static String code(String words) {
		return words.toUpperCase(Locale.ROOT).replace(' ', '_');
	}

	/** Words held against one pattern after the other. */
	static final class Words {

		private final String text;

		private @Nullable MatchResult match;

		Words(String text) {
			this.text = text;
		}

		boolean are(String pattern) {
			Matcher matcher = Pattern.compile(pattern).matcher(this.text);
			this.match = matcher.matches() ? matcher.toMatchResult() : null;
			return this.match != null;
		}

		boolean has(int group) {
			return Objects.requireNonNull(this.match).group(group) != null;
		}

		String group(int group) {
			return Objects.requireNonNull(Objects.requireNonNull(this.match).group(group));
		}

		LocalDate day(int group) {
			return Story.day(Integer.parseInt(group(group)));
		}

		/** A listed symptom with its severity, the first two groups. */
		ReportedSymptom symptom() {
			return ReportedSymptom.of(Symptom.valueOf(code(group(1))), Severity.valueOf(code(group(2))));
		}

	}

}
