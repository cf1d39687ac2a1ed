package org.fallow.board.web;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.PathName;
import org.fallow.team.Athlete;
import org.fallow.training.Ceilings;
import org.fallow.training.Plan;
import org.fallow.training.core.Position;
import org.fallow.training.core.UsualVolume;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

class GroupBriefTest {

	private static final LocalDate TODAY = LocalDate.of(2026, 3, 18);

	private final List<Athlete> athletes = new ArrayList<>();

	private final Map<PersonId, Plan> plans = new LinkedHashMap<>();

	private final Map<UUID, LocalDate> last = new LinkedHashMap<>();

	@Test
	void putsEverybodyWhereTheyBelong() {
		add("Well", Position.well(TODAY, Clearance.FULL_TRAINING), TODAY);
		add("Ill", in(0, 2), TODAY);
		add("Two", in(2, 20), TODAY.minusDays(1));
		add("One", in(1, 12), TODAY);
		add("Held", new Position(TODAY, Clearance.REFER, true, null, null, null), TODAY);
		add("Away", new Position(TODAY, Clearance.NOT_ASSESSED, false, null, null, TODAY.plusDays(4)), null);
		add("Quiet", Position.well(TODAY, Clearance.NOT_ASSESSED), TODAY.minusDays(3));
		GroupBrief brief = brief();
		assertThat(brief.athletes()).isEqualTo(7);
		assertThat(brief.referred()).extracting(GroupBrief.Line::name).containsExactly("Held");
		assertThat(brief.ill()).extracting(GroupBrief.Line::name).containsExactly("Ill");
		assertThat(brief.returning()).extracting(GroupBrief.Line::name).containsExactly("One", "Two");
		assertThat(brief.away()).extracting(GroupBrief.Line::name).containsExactly("Away");
		assertThat(brief.quiet()).extracting(GroupBrief.Line::name).containsExactly("Quiet");
		assertThat(brief.cluster()).isZero();
	}

	/** Three within seven days, today among them. */
	@ParameterizedTest
	@CsvSource({ "0, 3, 6, 3", "0, 3, 7, 0", "6, 6, 6, 3" })
	void tellsOfACluster(int first, int second, int third, long cluster) {
		add("A", in(0, first), TODAY);
		add("B", in(0, second), TODAY);
		add("C", in(1, third), TODAY);
		assertThat(brief().cluster()).isEqualTo(cluster);
	}

	@ParameterizedTest
	@CsvSource({ "0, 0", "2, 0", "3, 1", "30, 1" })
	void callsNobodyQuietBeforeThreeMornings(int daysAgo, int quiet) {
		add("A", Position.well(TODAY, Clearance.NOT_ASSESSED), TODAY.minusDays(daysAgo));
		assertThat(brief().quiet()).hasSize(quiet);
	}

	@Test
	void holdsAnEmptyGroup() {
		assertThat(brief().athletes()).isZero();
		assertThat(brief().keySessions()).isEmpty();
		assertThat(brief().nextWeek()).isEmpty();
	}

	private GroupBrief brief() {
		return GroupBrief.of("Track", this.athletes, new GroupBrief.Facts(TODAY, this.plans, this.last, Map.of()));
	}

	private void add(String name, Position position, @Nullable LocalDate lastEntry) {
		Athlete athlete = new Athlete(new PersonId(UUID.randomUUID()), name, ZoneOffset.UTC, null, UUID.randomUUID(),
				null, TODAY.minusDays(100), null);
		this.athletes.add(athlete);
		this.plans.put(athlete.id(),
				new Plan(athlete.id(), position, UsualVolume.unknown(), List.of(), new Ceilings(null, false), null, 0));
		if (lastEntry != null) {
			this.last.put(athlete.id().value(), lastEntry);
		}
	}

	private static Position in(int stage, int onset) {
		return new Position(
				TODAY, Clearance.EASY_ONLY, false, new Position.Return(stage, TODAY.minusDays(1),
						(stage == 0) ? null : TODAY.minusDays(1), DefaultRules.ruleSet().path(PathName.THREE_WEEK), 28),
				TODAY.minusDays(onset), null);
	}

}
