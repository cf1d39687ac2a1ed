package org.fallow.contact.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.fallow.access.PersonId;
import org.fallow.entry.Absence;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Recorded;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.StageChange;
import org.fallow.illness.core.DayAssessment.Decision;
import org.fallow.rules.Clearance;
import org.fallow.rules.PathName;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

import static org.assertj.core.api.Assertions.assertThat;

/** Told by hand: today is the 18th. */
class WorklistTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 18);

	private static final PersonId ANN = PersonId.next();

	private LocalDate today = TODAY;

	private @Nullable LocalDate lastEntry = TODAY;

	private final List<AssessedDay> days = new ArrayList<>();

	private final List<StageChange> changes = new ArrayList<>();

	private final List<Absence> absences = new ArrayList<>();

	@Test
	void hasNothingToSayOfWhoIsWell() {
		day(0, Clearance.FULL_TRAINING, null);
		assertThat(needs()).isEmpty();
		assertThat(Worklist.of(List.of())).isEmpty();
	}

	@Test
	void tellsSinceWhenAHoldStands() {
		day(4, Clearance.REFER, null);
		day(3, Clearance.FULL_TRAINING, null);
		day(2, Clearance.REFER, null);
		day(1, Clearance.REFER, null);
		day(0, Clearance.REFER, null);
		assertThat(needs()).singleElement().satisfies((need) -> {
			assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.REFER, TODAY.minusDays(2)));
			assertThat(need.why().code()).isEqualTo("reason.REFER");
		});
	}

	/** Seven days, that of the opening included. */
	@ParameterizedTest
	@CsvSource({ "0, true", "6, true", "7, false" })
	void callsAnIllnessNewForSevenDays(int daysAgo, boolean isNew) {
		day(0, Clearance.REST, 0);
		change(daysAgo, Decision.Kind.OPENED, -1, 0);
		assertThat(matters()).isEqualTo(isNew ? List.of(Matter.NEW_ILLNESS) : List.of());
	}

	@Test
	void forgetsAnIllnessThatIsOver() {
		day(0, Clearance.FULL_TRAINING, null);
		change(3, Decision.Kind.OPENED, -1, 0);
		change(2, Decision.Kind.BACK_BY_NUMBERS, 1, 0);
		change(1, Decision.Kind.WITHDRAWN, 0, -1);
		assertThat(needs()).isEmpty();
	}

	@ParameterizedTest
	@EnumSource(value = Decision.Kind.class, names = { "RELAPSE", "BACK_BY_SYMPTOMS", "BACK_BY_NUMBERS" })
	void tellsOfEveryStepBack(Decision.Kind kind) {
		day(0, Clearance.EASY_ONLY, 1);
		change(3, kind, 2, 1);
		assertThat(needs()).singleElement().satisfies((need) -> {
			assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.STEP_BACK, TODAY.minusDays(3)));
			assertThat(need.why()).isEqualTo(Message.of("decided." + kind, 2, 1));
		});
	}

	@ParameterizedTest
	@EnumSource(value = Decision.Kind.class, mode = EnumSource.Mode.EXCLUDE,
			names = { "RELAPSE", "BACK_BY_SYMPTOMS", "BACK_BY_NUMBERS", "OPENED" })
	void callsNothingElseAStepBack(Decision.Kind kind) {
		day(0, Clearance.EASY_ONLY, 1);
		change(3, kind, 2, 1);
		assertThat(needs()).isEmpty();
	}

	/** Told for as long as the fold tells it; one that waits for a coach comes first. */
	@Test
	void tellsOfATickThatWasASlip() {
		day(1, Clearance.EASY_ONLY, null, "advised.slip");
		day(0, Clearance.EASY_ONLY, null, "advised.slip");
		assertThat(needs()).singleElement().satisfies((need) -> {
			assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.SLIP, TODAY.minusDays(1)));
			assertThat(need.why().code()).isEqualTo("advised.slip");
		});
		this.days.clear();
		day(0, Clearance.REST, null, "advised.slip", "advised.slip-waits");
		assertThat(needs()).singleElement()
			.satisfies((need) -> assertThat(need.why().code()).isEqualTo("advised.slip-waits"));
	}

	@Test
	void countsTheLastStepBackAsTheMatter() {
		day(0, Clearance.EASY_ONLY, 1);
		change(5, Decision.Kind.BACK_BY_SYMPTOMS, 2, 1);
		change(1, Decision.Kind.BACK_BY_NUMBERS, 1, 0);
		assertThat(needs()).singleElement()
			.satisfies((need) -> assertThat(need.key().arose()).isEqualTo(TODAY.minusDays(1)));
	}

	/** A step of the illness before this one is history. */
	@Test
	void forgetsAStepBackOfAnEarlierIllness() {
		day(0, Clearance.REST, 0);
		change(5, Decision.Kind.BACK_BY_NUMBERS, 2, 1);
		change(4, Decision.Kind.WITHDRAWN, 1, -1);
		change(2, Decision.Kind.OPENED, -1, 0);
		assertThat(matters()).containsExactly(Matter.NEW_ILLNESS);
	}

	@Test
	void tellsSinceWhenAReturnIsStalled() {
		day(3, Clearance.EASY_ONLY, 1);
		day(2, Clearance.EASY_ONLY, 1, "advised.stalled");
		day(1, Clearance.EASY_ONLY, 1, "advised.stalled");
		day(0, Clearance.EASY_ONLY, 1, "advised.stalled");
		assertThat(needs()).singleElement()
			.satisfies(
					(need) -> assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.STALLED, TODAY.minusDays(2))));
	}

	@Test
	void tellsAnExaminedRedFlagOnItsDay() {
		day(1, Clearance.FULL_TRAINING, null);
		day(0, Clearance.EASY_ONLY, null, "advised.examined");
		assertThat(needs()).singleElement()
			.satisfies((need) -> assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.EXAMINED, TODAY)));
	}

	/** A baseline that dips below the bound for a day has not drifted anew. */
	@Test
	void keepsADriftThatWavers() {
		day(9, Clearance.FULL_TRAINING, null, "advised.drift");
		day(8, Clearance.FULL_TRAINING, null);
		day(7, Clearance.FULL_TRAINING, null);
		day(6, Clearance.FULL_TRAINING, null, "advised.drift");
		for (int ago = 5; ago > 0; ago--) {
			day(ago, Clearance.FULL_TRAINING, null);
		}
		day(0, Clearance.FULL_TRAINING, null, "advised.drift");
		assertThat(needs()).singleElement()
			.satisfies(
					(need) -> assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.DRIFT, TODAY.minusDays(9))));
	}

	@Test
	void takesADriftAfterAWeekForAnother() {
		day(8, Clearance.FULL_TRAINING, null, "advised.drift");
		for (int ago = 7; ago > 0; ago--) {
			day(ago, Clearance.FULL_TRAINING, null);
		}
		day(0, Clearance.FULL_TRAINING, null, "advised.drift");
		assertThat(needs()).singleElement().satisfies((need) -> assertThat(need.key().arose()).isEqualTo(TODAY));
	}

	/** Mornings missed, this one included: three, and two in an open episode. */
	@ParameterizedTest
	@CsvSource({ "2, false, false", "3, false, true", "1, true, false", "2, true, true", "40, false, true" })
	void callsQuietWhoMissedMornings(int daysAgo, boolean ill, boolean quiet) {
		day(0, ill ? Clearance.REST : Clearance.NOT_ASSESSED, ill ? 1 : null);
		this.lastEntry = TODAY.minusDays(daysAgo);
		assertThat(matters()).isEqualTo(quiet ? List.of(Matter.QUIET) : List.of());
		assertThat(needs()).allSatisfy((need) -> {
			assertThat(need.key().arose()).isEqualTo(TODAY.minusDays(daysAgo - 1L));
			assertThat(need.why()).isEqualTo(Message.of("needs.missed", (long) daysAgo));
		});
	}

	@Test
	void callsQuietWhoNeverEnteredAnything() {
		this.lastEntry = null;
		assertThat(needs()).singleElement()
			.satisfies(
					(need) -> assertThat(need.key()).isEqualTo(new MatterKey(ANN, Matter.QUIET, TODAY.minusDays(99))));
	}

	@Test
	void callsNobodyQuietWhoIsAway() {
		day(0, Clearance.NOT_ASSESSED, null);
		this.lastEntry = TODAY.minusDays(10);
		away(8, null);
		assertThat(needs()).isEmpty();
		this.absences.clear();
		away(8, 0);
		assertThat(needs()).isEmpty();
	}

	/** Mornings are missed from the day after an absence on. */
	@ParameterizedTest
	@CsvSource({ "1, false", "2, false", "3, true" })
	void waitsForWhoCameBack(int endedDaysAgo, boolean quiet) {
		day(0, Clearance.NOT_ASSESSED, null);
		this.lastEntry = TODAY.minusDays(10);
		away(9, endedDaysAgo);
		assertThat(needs()).hasSize(quiet ? 1 : 0)
			.allSatisfy((need) -> assertThat(need.key().arose()).isEqualTo(TODAY.minusDays(endedDaysAgo - 1L)));
	}

	@Test
	void waitsForNobodyWhoseHolidayHasNotBegun() {
		day(0, Clearance.NOT_ASSESSED, null);
		this.lastEntry = TODAY.minusDays(5);
		away(-1, -8);
		assertThat(matters()).containsExactly(Matter.QUIET);
	}

	/** What is a third missed morning here is only the second further west. */
	@Test
	void countsInTheAthletesOwnDays() {
		day(1, Clearance.NOT_ASSESSED, null);
		this.lastEntry = TODAY.minusDays(3);
		assertThat(matters()).containsExactly(Matter.QUIET);
		this.today = TODAY.minusDays(1);
		assertThat(needs()).isEmpty();
	}

	@Test
	void hasALineForEachMatterOfAnAthlete() {
		day(0, Clearance.REFER, 0, "advised.drift", "advised.slip", "advised.stalled", "advised.examined");
		change(6, Decision.Kind.OPENED, -1, 0);
		change(1, Decision.Kind.RELAPSE, 1, 0);
		this.lastEntry = TODAY.minusDays(2);
		assertThat(matters()).containsExactly(Matter.values());
	}

	@Test
	void putsTheUrgentFirstAndThenWhoHasWaitedLongest() {
		KnownAthlete quiet = quiet(9);
		KnownAthlete longerQuiet = quiet(12);
		day(0, Clearance.REFER, null);
		this.lastEntry = TODAY;
		KnownAthlete held = known(PersonId.next());
		assertThat(Worklist.of(List.of(quiet, longerQuiet, held))).extracting((need) -> need.key().athlete())
			.containsExactly(held.athlete(), longerQuiet.athlete(), quiet.athlete());
	}

	@ParameterizedTest
	@CsvSource({ "REFER, CONTACTED, false", "REFER, AGREED, false", "REFER, DONE, false",
			"NEW_ILLNESS, CONTACTED, true", "NEW_ILLNESS, DONE, true", "STEP_BACK, CONTACTED, false",
			"STEP_BACK, AGREED, false", "STEP_BACK, DONE, true", "STALLED, DONE, true", "QUIET, DONE, true",
			"DRIFT, DONE, true", "SLIP, CONTACTED, false", "SLIP, DONE, true" })
	void takesOffWhatIsDoneButNeverAHold(Matter matter, MarkState state, boolean off) {
		MatterKey key = new MatterKey(ANN, matter, TODAY);
		Need need = new Need(key, Message.of("x"));
		Mark mark = new Mark(key, state, "Called.", false, Instant.EPOCH, "Cay");
		assertThat(Worklist.open(List.of(need), Map.of(key, mark))).hasSize(off ? 0 : 1);
		assertThat(Worklist.open(List.of(need), Map.of())).containsExactly(need);
	}

	/** The same matter that arises on another day is another one. */
	@Test
	void keepsAMarkToItsOccurrence() {
		MatterKey before = new MatterKey(ANN, Matter.QUIET, TODAY.minusDays(30));
		Need now = new Need(new MatterKey(ANN, Matter.QUIET, TODAY.minusDays(2)), Message.of("x"));
		Mark done = new Mark(before, MarkState.DONE, "Called.", false, Instant.EPOCH, "Cay");
		assertThat(Worklist.open(List.of(now), Map.of(before, done))).containsExactly(now);
	}

	private KnownAthlete quiet(int daysAgo) {
		this.lastEntry = TODAY.minusDays(daysAgo);
		return known(PersonId.next());
	}

	private List<Need> needs() {
		return Worklist.of(List.of(known(ANN)));
	}

	private List<Matter> matters() {
		return needs().stream().map((need) -> need.key().matter()).toList();
	}

	private KnownAthlete known(PersonId athlete) {
		return new KnownAthlete(athlete, this.today, TODAY.minusDays(100), this.lastEntry, this.days, this.changes,
				this.absences);
	}

	private void away(int daysAgo, @Nullable Integer untilDaysAgo) {
		this.absences.add(new Absence("k", TODAY.minusDays(daysAgo),
				(untilDaysAgo == null) ? null : TODAY.minusDays(untilDaysAgo),
				new Recorded(Instant.EPOCH, TODAY.minusDays(daysAgo)), AbsenceKind.HOLIDAY, null));
	}

	private void change(int daysAgo, Decision.Kind kind, int from, int to) {
		this.changes.add(new StageChange(ANN, TODAY.minusDays(daysAgo), new Decision(kind, from, to)));
	}

	private void day(int daysAgo, Clearance clearance, @Nullable Integer stage, String... notices) {
		this.days
			.add(new AssessedDay(ANN, TODAY.minusDays(daysAgo), clearance, List.of(Message.of("reason." + clearance)),
					List.of(notices).stream().map((code) -> Message.of(code)).toList(), clearance == Clearance.REFER,
					stage, (stage == null) ? null : 1, (stage == null) ? null : PathName.THREE_WEEK,
					org.fallow.illness.core.Mark.NONE, null, 0, null, null, null, null, null, false, 0, null, null,
					null, null, null, null, "hash"));
	}

}
