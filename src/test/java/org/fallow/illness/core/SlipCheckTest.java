package org.fallow.illness.core;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.ContextTag;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;

/** Every bound of a slip, at its edge: the decision text, part "Slips". */
class SlipCheckTest {

	private static final RuleBook BOOK = RuleBook.of(DefaultRules.ruleSet());

	private static final Tick CHEST_PAIN = Tick.of(Symptom.CHEST_PAIN);

	/** Microsecond of the recording of day 0's entry, 6 o'clock. */
	private Instant ticked;

	private boolean coached = true;

	private LocalDate adultFrom = Story.DAY_0.minusYears(1);

	private static Story known() {
		return Story.ofAKnownAthlete();
	}

	private Story chestPain() {
		return on(known());
	}

	private Story on(Story story) {
		story.sick(0, Symptom.CHEST_PAIN, Severity.SEVERE);
		List<Fact> facts = story.timeline().facts();
		this.ticked = facts.get(facts.size() - 1).recorded().at();
		return story;
	}

	private String refusal(Story story, Tick tick, Instant now) {
		Message refusal = SlipCheck.refusal(slip(story, tick, Story.DAY_0, now));
		return (refusal == null) ? null : refusal.code();
	}

	private String refusal(Story story) {
		return refusal(story, CHEST_PAIN, this.ticked.plusSeconds(60));
	}

	private SlipCase slip(Story story, Tick tick, LocalDate day, Instant at) {
		Recorded now = new Recorded(at, Story.DAY_0);
		Timeline known = new Timeline(story.timeline().facts(), this.adultFrom);
		Recorded first = SlipCheck.firstRecorded(known, tick, Story.DAY_0);
		List<Fact> before = known.facts()
			.stream()
			.filter((f) -> first != null && f.recorded().compareTo(first) < 0)
			.toList();
		List<Fact> with = new ArrayList<>(known.facts());
		with.add(new IllnessEvent.Slip(Story.DAY_0, now, tick, SlipTerms.AT_ONCE));
		return new SlipCase(tick, day, now, known, last(before), last(with), RuleBook.of(DefaultRules.ruleSet()),
				this.coached);
	}

	private DayAssessment last(List<Fact> facts) {
		List<DayAssessment> days = Course.withoutForecast(new Timeline(facts, this.adultFrom), BOOK, Story.DAY_0);
		return days.isEmpty() ? null : days.get(days.size() - 1);
	}

	@Test
	void isPossibleForTheOneRedFlagOfAWellMorning() {
		assertThat(refusal(chestPain())).isNull();
	}

	@ParameterizedTest
	@CsvSource({ "1799000000,", "1800000000,", "1800000001,slip.red-flag.late", "2400000000,slip.red-flag.late" })
	void isPossibleForThirtyMinutes(long microseconds, String code) {
		Story story = chestPain();
		assertThat(refusal(story, CHEST_PAIN, this.ticked.plusNanos(microseconds * 1000))).isEqualTo(code);
	}

	/** A further revision with the same tick does not begin the half hour anew. */
	@Test
	void countsFromTheFirstRevisionWithTheTick() {
		Story story = chestPain();
		story.add(new Story.Entry().symptom(Symptom.CHEST_PAIN, Severity.SEVERE)
			.at(0, new Recorded(this.ticked.plusSeconds(1700), Story.DAY_0)));
		assertThat(refusal(story, CHEST_PAIN, this.ticked.plusSeconds(1800))).isNull();
		assertThat(refusal(story, CHEST_PAIN, this.ticked.plusSeconds(1801))).isEqualTo("slip.red-flag.late");
	}

	@Test
	void isPossibleThoughACorrectionCameBetween() {
		Story story = chestPain();
		story.add(new Story.Entry().at(0, new Recorded(this.ticked.plusSeconds(100), Story.DAY_0)));
		assertThat(refusal(story, CHEST_PAIN, this.ticked.plusSeconds(200))).isNull();
	}

	@Test
	void isForAdults() {
		this.adultFrom = Story.DAY_0.plusYears(1);
		assertThat(refusal(chestPain())).isEqualTo("slip.red-flag.minor");
		this.adultFrom = Story.day(1);
		assertThat(refusal(chestPain())).isEqualTo("slip.red-flag.minor");
		this.adultFrom = Story.day(0);
		assertThat(refusal(chestPain())).isNull();
		this.adultFrom = null;
		assertThat(refusal(chestPain())).isEqualTo("slip.red-flag.minor");
	}

	@ParameterizedTest
	@EnumSource(value = Symptom.class, names = { "RUNNY_NOSE", "COUGH", "FATIGUE", "FEVERISH", "FAINTING", "OTHER" })
	void isNotBesideAnotherSymptom(Symptom other) {
		Story story = chestPain();
		ReportedSymptom felt = (other == Symptom.OTHER) ? new ReportedSymptom(other, Severity.MILD, "odd")
				: ReportedSymptom.of(other, Severity.MILD);
		story.add(morning(this.ticked.plusSeconds(10), List.of(felt), 50.0, FeverMedicine.NONE, List.of()));
		assertThat(refusal(story)).isEqualTo("slip.red-flag.more");
	}

	@Test
	void isPossibleBesideASymptomThatIsKnown() {
		Story story = known().known(-3, Symptom.SNEEZING, Severity.MILD);
		on(story);
		story.add(morning(this.ticked.plusSeconds(10), List.of(ReportedSymptom.of(Symptom.SNEEZING, Severity.MILD)),
				50.0, FeverMedicine.NONE, List.of()));
		assertThat(refusal(story)).isNull();
	}

	@Test
	void isNotBesideFeverMedicineOrAReport() {
		Story medicine = chestPain();
		medicine.add(morning(this.ticked.plusSeconds(10), List.of(), 50.0, FeverMedicine.OTHER, List.of()));
		assertThat(refusal(medicine)).isEqualTo("slip.red-flag.more");
		assertThat(refusal(chestPain().report(0, 0, ReportKind.ABOVE_NECK, 1))).isEqualTo("slip.red-flag.more");
	}

	@ParameterizedTest
	@CsvSource({ "50,", "53,", "60,slip.red-flag.rhr", "75,slip.red-flag.rhr" })
	void isNotWithAHighReading(double bpm, String code) {
		Story story = known().morning(0, (e) -> e.rhr(bpm).symptom(Symptom.CHEST_PAIN, Severity.SEVERE));
		this.ticked = story.timeline().facts().get(28).recorded().at();
		assertThat(refusal(story)).isEqualTo(code);
	}

	@Test
	void isNotInAnEpisodeOpenBeforeTheTick() {
		assertThat(refusal(on(known().sick(-3, Symptom.FATIGUE, Severity.MODERATE))))
			.isEqualTo("slip.red-flag.episode");
		assertThat(refusal(chestPain().hold(0))).isEqualTo("slip.red-flag.episode");
	}

	@ParameterizedTest
	@CsvSource({ "-14,slip.red-flag.closed", "-15," })
	void isNotWithinFourteenDaysOfAClose(int closed, String code) {
		Story story = Story.ofANewcomer();
		for (int i = -60; i < 0; i++) {
			if (i == closed - 1) {
				story.sick(i, Symptom.FATIGUE, Severity.MODERATE);
			}
			else {
				story.rhr(i, 49 + Math.floorMod(i, 3));
			}
		}
		story.withdrawn(closed);
		assertThat(story.on(closed).state().episode()).isNull();
		assertThat(story.on(closed - 1).state().episode()).isNotNull();
		assertThat(refusal(on(story))).isEqualTo(code);
	}

	@ParameterizedTest
	@CsvSource({ "-15,", "-14,slip.red-flag.vaccination", "0,slip.red-flag.vaccination" })
	void isNotWithinFourteenDaysOfAVaccination(int day, String code) {
		Story story = chestPain();
		story.add(new MorningEntry(Story.day(day), story.recorded(Math.min(day, 0), 5), Method.STRAP, Posture.LYING,
				50.0, null, false, null, List.of(), false, FeverMedicine.NONE, true, Feels.WELL, null,
				List.of(ContextTag.VACCINATION), null));
		assertThat(refusal(story)).isEqualTo(code);
	}

	/** Wheeze is a red flag then, though it is none else. */
	@ParameterizedTest
	@CsvSource({ "-15,", "-14,slip.red-flag.vaccination" })
	void isNoWheezeWithinFourteenDaysOfAVaccination(int day, String code) {
		Story story = known().vaccinated(day).sick(0, Symptom.WHEEZE, Severity.MILD);
		List<Fact> facts = story.timeline().facts();
		Instant at = facts.get(facts.size() - 1).recorded().at().plusSeconds(60);
		assertThat(refusal(story, Tick.of(Symptom.WHEEZE), at)).isEqualTo(code);
	}

	@ParameterizedTest
	@CsvSource({ "-91,", "-90,slip.red-flag.again", "-1,slip.red-flag.again" })
	void isOnceInNinetyDays(int day, String code) {
		assertThat(refusal(on(known().slip(day, Symptom.FAINTING, SlipTerms.UNTIL_ASKED)))).isEqualTo(code);
	}

	@Test
	void isNotForWhatWasNotTicked() {
		Story story = chestPain();
		assertThat(refusal(story, Tick.of(Symptom.FAINTING), this.ticked)).isEqualTo("slip.not-ticked");
		Message another = SlipCheck.refusal(slip(story, CHEST_PAIN, Story.day(-1), this.ticked));
		assertThat(another).isEqualTo(Message.of("slip.another-day"));
	}

	@Test
	void isForNoFreeWords() {
		Story story = known();
		story.add(morning(Story.DAY_0.atTime(6, 0).toInstant(ZoneOffset.UTC),
				List.of(new ReportedSymptom(Symptom.OTHER, Severity.MILD, "my chest")), 50.0, FeverMedicine.NONE,
				List.of()));
		assertThat(refusal(story, Tick.of(Symptom.OTHER), Story.DAY_0.atTime(6, 1).toInstant(ZoneOffset.UTC)))
			.isEqualTo("slip.words");
	}

	@Test
	void isForRedFlagsAfterASessionOnlyAndAlone() {
		Story story = known().well(0);
		Instant at = Story.DAY_0.atTime(19, 0).toInstant(ZoneOffset.UTC);
		story.add(session(at, AfterSession.PALPITATIONS));
		Tick tick = Tick.of("s", AfterSession.PALPITATIONS);
		assertThat(refusal(story, tick, at.plusSeconds(60))).isNull();
		story.add(session(at.plusSeconds(10), AfterSession.PALPITATIONS, AfterSession.HEADACHE));
		assertThat(refusal(story, tick, at.plusSeconds(60))).isEqualTo("slip.red-flag.more");
		assertThat(refusal(story, Tick.of("s", AfterSession.HEADACHE), at.plusSeconds(60))).isEqualTo("slip.session");
	}

	@Test
	void saysUnderWhichTermsItWorks() {
		Story story = chestPain();
		assertThat(SlipCheck.terms(slip(story, CHEST_PAIN, Story.DAY_0, this.ticked))).isEqualTo(SlipTerms.UNTIL_ASKED);
		this.coached = false;
		assertThat(SlipCheck.terms(slip(story, CHEST_PAIN, Story.DAY_0, this.ticked)))
			.isEqualTo(SlipTerms.UNTIL_ENTRIES);
	}

	@Test
	void isForAnotherTickAllDayAndForMinors() {
		this.adultFrom = null;
		Story story = known().sick(0, Symptom.VOMITING, Severity.SEVERE);
		Instant night = Story.DAY_0.atTime(23, 59).toInstant(ZoneOffset.UTC);
		assertThat(refusal(story, Tick.of(Symptom.VOMITING), night)).isNull();
		assertThat(SlipCheck.terms(slip(story, Tick.of(Symptom.VOMITING), Story.DAY_0, night)))
			.isEqualTo(SlipTerms.AT_ONCE);
	}

	@ParameterizedTest
	@EnumSource(value = Symptom.class, names = { "SHIVERING", "FEVERISH" })
	void isNeverForFever(Symptom symptom) {
		Story story = known().sick(0, symptom, Severity.MILD);
		assertThat(refusal(story, Tick.of(symptom), Story.DAY_0.atTime(7, 0).toInstant(ZoneOffset.UTC)))
			.isEqualTo("slip.fever");
	}

	@ParameterizedTest
	@CsvSource({ "-15,", "-14,slip.again" })
	void isOnceInFourteenDaysForAnotherTick(int day, String code) {
		Story story = known().slip(day, Symptom.SNEEZING, SlipTerms.AT_ONCE).sick(0, Symptom.VOMITING, Severity.MILD);
		assertThat(refusal(story, Tick.of(Symptom.VOMITING), Story.DAY_0.atTime(7, 0).toInstant(ZoneOffset.UTC)))
			.isEqualTo(code);
	}

	@Test
	void waitsForACoachInAnEpisodeAndNeedsOne() {
		Story story = known().sick(-5, Symptom.FATIGUE, Severity.MODERATE)
			.well(-4, -1)
			.sick(0, Symptom.VOMITING, Severity.MILD);
		Instant now = Story.DAY_0.atTime(7, 0).toInstant(ZoneOffset.UTC);
		Tick vomiting = Tick.of(Symptom.VOMITING);
		assertThat(refusal(story, vomiting, now)).isNull();
		assertThat(SlipCheck.terms(slip(story, vomiting, Story.DAY_0, now))).isEqualTo(SlipTerms.IF_ACCEPTED);
		this.coached = false;
		assertThat(refusal(story, vomiting, now)).isEqualTo("slip.no-coach");
	}

	private static SessionLog session(Instant at, AfterSession... noticed) {
		return new SessionLog("s", Story.DAY_0, new Recorded(at, Story.DAY_0), Activity.RUN, 30, 3.0, Intensity.EASY,
				List.of(noticed), false, null);
	}

	private static MorningEntry morning(Instant at, List<ReportedSymptom> felt, double bpm, FeverMedicine medicine,
			List<ContextTag> tags) {
		return new MorningEntry(Story.DAY_0, new Recorded(at, Story.DAY_0), Method.STRAP, Posture.LYING, bpm, null,
				false, null, felt, false, medicine, true, Feels.WELL, null, tags, null);
	}

}
