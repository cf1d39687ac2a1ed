package org.fallow.training.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;
import org.fallow.training.core.PlannedSession.Kind;
import org.fallow.training.core.PlannedSession.Terrain;
import org.jspecify.annotations.Nullable;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * For random programmes, places on the way back, usual volumes and runs that were done.
 */
class ModificationLawsTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 17);

	private static final String SEED = "20261126";

	@Property(tries = 1_000, seed = SEED)
	void makesNoSessionLongerOrHarder(@ForAll("cases") Case one) {
		for (ModifiedSession made : one.made()) {
			assertThat(made.minutes()).isLessThanOrEqualTo(made.programmed().minutes());
			assertThat(made.hardest()).isLessThanOrEqualTo(made.programmed().hardest());
			assertThat(above(made)).isLessThanOrEqualTo(made.programmed().secondsAboveEasy());
		}
		assertThat(one.made()).hasSameSizeAs(one.sessions());
	}

	@Property(tries = 1_000, seed = SEED)
	void tellsWhyForEachChange(@ForAll("cases") Case one) {
		for (ModifiedSession made : one.made()) {
			if (made.version() == Version.AS_PROGRAMMED) {
				assertThat(made.instead()).isEqualTo(made.programmed());
			}
			else {
				assertThat(made.reasons()).isNotEmpty();
			}
		}
	}

	@Property(tries = 1_000, seed = SEED)
	void keepsTheWeekOfTheStage(@ForAll("cases") Case one) {
		Position.Return back = one.position().back();
		RuleSet.Stage stage = (back == null) ? null : back.now();
		Integer week = one.usual().weekMinutes();
		if (back == null || stage == null || week == null) {
			return;
		}
		List<DoneRun> all = new ArrayList<>(one.done());
		one.made().forEach((made) -> all.add(new DoneRun(made.programmed().day(), made.minutes(), Intensity.EASY)));
		for (ModifiedSession made : one.made()) {
			LocalDate last = made.programmed().day();
			int sum = all.stream()
				.filter((run) -> !run.day().isBefore(last.minusDays(6)) && !run.day().isAfter(last)
						&& !run.day().isBefore(back.since()))
				.mapToInt(DoneRun::minutes)
				.sum();
			if (made.minutes() > 0) {
				assertThat(sum).isLessThanOrEqualTo((int) (stage.volumeShare() * week));
			}
		}
	}

	@Property(tries = 1_000, seed = SEED)
	void keepsTheRunsOfTheStage(@ForAll("cases") Case one) {
		Position.Return back = one.position().back();
		RuleSet.Stage stage = (back == null) ? null : back.now();
		if (stage == null) {
			return;
		}
		Integer usual = one.usual().longMinutes();
		for (ModifiedSession made : one.made()) {
			double longest = stage.longRunShare() * ((usual != null) ? usual : made.programmed().minutes());
			assertThat(made.minutes()).isLessThanOrEqualTo((int) longest);
			if (stage.longRunMinutes() != null) {
				assertThat(made.minutes()).isLessThanOrEqualTo(stage.longRunMinutes());
			}
			if (stage.highest() != null) {
				assertThat(made.hardest()).isLessThanOrEqualTo(stage.highest());
			}
			int day = back.dayInStage(made.programmed().day());
			if (day <= stage.firstRunMinutes().size()) {
				assertThat(made.minutes()).isLessThanOrEqualTo(stage.firstRunMinutes().get(day - 1));
			}
		}
	}

	@Property(tries = 1_000, seed = SEED)
	void plansNoTwoHardDaysRunningInAReturn(@ForAll("cases") Case one) {
		if (one.position().back() == null) {
			return;
		}
		List<LocalDate> hard = one.made()
			.stream()
			.filter((made) -> made.hardest().compareTo(Intensity.STRIDES) > 0)
			.map((made) -> made.programmed().day())
			.toList();
		assertThat(hard).doesNotHaveDuplicates();
		for (LocalDate day : hard) {
			assertThat(hard).doesNotContain(day.plusDays(1));
			assertThat(one.done()).noneMatch((run) -> run.isHard() && run.day().equals(day.minusDays(1)));
		}
	}

	@Property(tries = 1_000, seed = SEED)
	void plansNothingUnderAHold(@ForAll("cases") Case one) {
		Position held = one.position();
		List<ModifiedSession> made = Modification.of(one.sessions(),
				new Position(TODAY, held.clearance(), true, held.back(), held.onset(), held.awayUntil()), one.usual(),
				one.done());
		assertThat(made).allMatch((session) -> session.version() == Version.CLINICIAN_FIRST && session.minutes() == 0);
	}

	/** The days after are another matter: what is not run today is left for them. */
	@Property(tries = 1_000, seed = SEED)
	void givesNoMoreTodayForAStricterClearance(@ForAll("cases") Case one, @ForAll Clearance other) {
		Position place = one.position();
		if (other.compareTo(place.clearance()) > 0) {
			return;
		}
		List<PlannedSession> today = one.sessions()
			.stream()
			.filter((session) -> session.day().equals(TODAY))
			.limit(1)
			.toList();
		List<ModifiedSession> looser = Modification.of(today, place, one.usual(), one.done());
		List<ModifiedSession> stricter = Modification.of(today,
				new Position(TODAY, other, place.holding(), place.back(), place.onset(), place.awayUntil()),
				one.usual(), one.done());
		for (int i = 0; i < today.size(); i++) {
			assertThat(stricter.get(i).minutes()).isLessThanOrEqualTo(looser.get(i).minutes());
			assertThat(stricter.get(i).hardest()).isLessThanOrEqualTo(looser.get(i).hardest());
		}
	}

	private static int above(ModifiedSession made) {
		return (made.instead() == null) ? 0 : made.instead().secondsAboveEasy();
	}

	@Provide
	Arbitrary<Case> cases() {
		return Combinators.combine(sessions(), positions(), usuals(), runs()).as(Case::new);
	}

	private static Arbitrary<List<PlannedSession>> sessions() {
		Arbitrary<Part> part = Combinators
			.combine(Arbitraries.integers().between(1, 8), Arbitraries.integers().between(10, 3_600),
					Arbitraries.of(Intensity.class).filter((one) -> one != Intensity.REST),
					Arbitraries.integers().between(0, 180))
			.as((repeats, seconds, intensity, between) -> new Part(Part.Role.BLOCK, repeats, null, seconds, intensity,
					between));
		return Combinators
			.combine(Arbitraries.integers().between(0, 13), Arbitraries.of(Kind.class),
					part.list().ofMinSize(1).ofMaxSize(4))
			.as((day, kind, parts) -> new PlannedSession("s" + day, TODAY.plusDays(day), kind, Terrain.FLAT, null, "",
					"", withAMinute(parts)))
			.list()
			.ofMaxSize(12);
	}

	private static List<Part> withAMinute(List<Part> parts) {
		List<Part> all = new ArrayList<>(parts);
		all.add(Part.of(Part.Role.COOL_DOWN, 60, Intensity.EASY));
		return all;
	}

	private static Arbitrary<Position> positions() {
		Arbitrary<Position.@Nullable Return> back = Combinators
			.combine(Arbitraries.of(PathName.class), Arbitraries.integers().between(0, 3),
					Arbitraries.integers().between(0, 15), Arbitraries.integers().between(0, 20))
			.as((path, stage, days, before) -> new Position.Return(stage, TODAY.minusDays(days),
					(stage == 0) ? null : TODAY.minusDays(days + ((stage == 1) ? 0 : before)),
					DefaultRules.ruleSet().path(path), 28))
			.injectNull(0.15);
		return Combinators
			.combine(Arbitraries.of(Clearance.class), back, Arbitraries.integers().between(16, 60).injectNull(0.1),
					Arbitraries.integers().between(0, 5).injectNull(0.9))
			.as((clearance, open, onset, away) -> new Position(TODAY, clearance, false, open,
					(onset == null) ? null : TODAY.minusDays(onset), (away == null) ? null : TODAY.plusDays(away)));
	}

	private static Arbitrary<UsualVolume> usuals() {
		return Combinators.combine(Arbitraries.integers().between(0, 700), Arbitraries.integers().between(0, 200))
			.as((week, longRun) -> UsualVolume.stated(week, Math.min(week, longRun)))
			.injectNull(0.2)
			.map((usual) -> (usual == null) ? UsualVolume.unknown() : usual);
	}

	private static Arbitrary<List<DoneRun>> runs() {
		return Combinators
			.combine(Arbitraries.integers().between(-20, 0), Arbitraries.integers().between(0, 150),
					Arbitraries.of(Intensity.class).injectNull(0.1))
			.as((day, minutes, intensity) -> new DoneRun(TODAY.plusDays(day), minutes, intensity))
			.list()
			.ofMaxSize(10);
	}

	record Case(List<PlannedSession> sessions, Position position, UsualVolume usual, List<DoneRun> done) {

		List<ModifiedSession> made() {
			return Modification.of(this.sessions, this.position, this.usual, this.done);
		}

	}

}
