package org.fallow.illness;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.core.DayAssessment;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.rules.Clearance;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

import static org.assertj.core.api.Assertions.assertThat;

/** Athletes whose last day was decided under the first rule text. */
@DatabaseTest
@Import(SettableClock.class)
class FirstStateTests {

	private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	private static final int LAST = 19;

	private static final JsonMapper MAPPER = JsonMapper.builder().build();

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Mornings mornings;

	@Autowired
	private Assessments assessments;

	@Autowired
	private JdbcClient jdbc;

	private TransactionTemplate transactions;

	private PersonId ann;

	private PersonId ill;

	@BeforeEach
	void liveTwentyMornings(@Autowired PlatformTransactionManager manager) {
		this.transactions = new TransactionTemplate(manager);
		this.clock.set(FIRST);
		Team team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team",
				ZoneOffset.UTC);
		this.ann = this.people.addAthlete(team.id(), NewAthlete.named("Ann")).id();
		this.ill = this.people.addAthlete(team.id(), NewAthlete.named("Ill")).id();
		As.person(this.people.addCoach(team.id(), "Cay"));
		for (int day = 0; day <= LAST; day++) {
			enter(this.ann, day, 50 + day % 2);
		}
	}

	@Test
	void takesAStandingRiseForAStand() {
		store(firstText(state(this.ann), true));
		enter(this.ann, LAST + 1, 55);
		assertThat(now(this.ann).clearance()).isEqualTo(Clearance.EASY_ONLY);
		assertThat(now(this.ann).rhr().above()).isEqualTo(FIRST.plusDays(LAST));
		enter(this.ann, LAST + 2, 51);
		assertThat(now(this.ann).rhr().above()).as("less than 4 above usual ends it").isNull();
		assertThat(now(this.ann).clearance()).isEqualTo(Clearance.FULL_TRAINING);
	}

	@Test
	void takesNothingForAStandWhereNothingStood() {
		store(firstText(state(this.ann), false));
		enter(this.ann, LAST + 1, 55);
		assertThat(now(this.ann).rhr().above()).isNull();
		assertThat(now(this.ann).clearance()).isEqualTo(Clearance.FULL_TRAINING);
	}

	/** An episode that today’s rules would not have opened goes on as it was. */
	@Test
	void letsAnOpenEpisodeGoOn() {
		for (int day = 0; day <= LAST; day++) {
			enter(this.ill, day, 50 + day % 2,
					(day < LAST) ? List.of() : List.of(ReportedSymptom.of(Symptom.FATIGUE, Severity.MODERATE)));
		}
		String before = decided();
		store(firstText(state(this.ill), false));
		enter(this.ann, LAST + 1, 50);
		DayAssessment day = now(this.ann);
		assertThat(day.clearance()).isEqualTo(Clearance.REST);
		assertThat(day.state().episode()).satisfies((episode) -> {
			assertThat(episode.openedOn()).isEqualTo(FIRST.plusDays(LAST));
			assertThat(episode.stage()).isZero();
			assertThat(episode.held().rhr().line().bpm()).as("the lowest line").isEqualTo(4);
		});
		assertThat(decided()).as("what was decided before").isEqualTo(before);
	}

	@Test
	void holdsBackWhereTheEpisodeCannotBeRead() {
		ObjectNode text = firstText(state(this.ann), false);
		text.putObject("episode").put("ruleHash", "x");
		FirstState read = FirstState.read(MAPPER.writeValueAsString(text));
		assertThat(read.signal()).isTrue();
		assertThat(read.episode()).isNull();
	}

	/** As the first text wrote it: no line, no stand, a sustained rise and a tolerance. */
	private static ObjectNode firstText(ObjectNode state, boolean signal) {
		List.of("above", "tooFastOn", "silence", "slipEntries").forEach(state::remove);
		state.putObject("rise").put("signal", signal).put("sum", 12.0).put("silent", 0);
		state.putArray("deviations").addObject().put("day", "2026-01-24").put("dev", 5.0).put("tolerance", 3.0);
		if (state.get("kept") instanceof ObjectNode kept) {
			kept.put("raisedForAction", false);
		}
		if (state.at("/episode/held/rhr") instanceof ObjectNode rhr) {
			rhr.remove("line");
		}
		return state;
	}

	private ObjectNode state(PersonId id) {
		As.person(id);
		String text = this.transactions.execute((status) -> this.jdbc.sql("select state from assessment where athlete_id = ? and day = ?")
			.params(id.value(), FIRST.plusDays(LAST))
			.query(String.class)
			.single());
		return (ObjectNode) MAPPER.readTree(text).get("state");
	}

	private void store(ObjectNode text) {
		As.person(this.ann);
		Integer changed = this.transactions.execute((status) -> this.jdbc.sql("update assessment set state = ? where athlete_id = ? and day = ?")
			.params(MAPPER.writeValueAsString(text), this.ann.value(), FIRST.plusDays(LAST))
			.update());
		assertThat(changed).isOne();
	}

	private String decided() {
		As.person(this.ann);
		return this.transactions.execute((status) -> this.jdbc
			.sql("select string_agg(day || clearance || rule_hash, ',' order by day) from assessment "
					+ "where athlete_id = ? and day <= ?")
			.params(this.ann.value(), FIRST.plusDays(LAST))
			.query(String.class)
			.single());
	}

	private DayAssessment now(PersonId id) {
		As.person(id);
		LocalDate today = LocalDate.now(this.clock);
		return this.assessments.now(id, today).orElseThrow();
	}

	private void enter(PersonId id, int day, double bpm) {
		enter(id, day, bpm, List.of());
	}

	private void enter(PersonId id, int day, double bpm, List<ReportedSymptom> felt) {
		this.clock.set(FIRST.plusDays(day));
		As.person(id);
		this.mornings.save(id,
				NewMorning.measured(FIRST.plusDays(day), Method.STRAP, Posture.LYING, bpm, null).with(felt.toArray(ReportedSymptom[]::new)),
				Submission.page(id, Role.ATHLETE, Ids.next()));
	}

}
