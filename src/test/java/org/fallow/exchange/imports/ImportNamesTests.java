package org.fallow.exchange.imports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.IntStream;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.illness.Merges;
import org.fallow.platform.As;
import org.fallow.platform.DatabaseTest;
import org.fallow.platform.SettableClock;
import org.fallow.team.Athlete;
import org.fallow.team.Basis;
import org.fallow.team.Consent;
import org.fallow.team.Consents;
import org.fallow.team.NameKeyTest;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Rosters;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.context.request.RequestContextHolder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

/** Nobody is added twice, taken for somebody else, or added after they withdrew. */
@DatabaseTest
@Import(SettableClock.class)
@SuppressWarnings("NullAway.Init")
class ImportNamesTests {

	private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

	@Autowired
	private SettableClock clock;

	@Autowired
	private People people;

	@Autowired
	private Consents consents;

	@Autowired
	private Rosters rosters;

	@Autowired
	private Merges merges;

	@Autowired
	private Imports imports;

	@Autowired
	private ImportPeople named;

	@Autowired
	private PersonImport personImport;

	@Autowired
	private ImportWorker worker;

	@Autowired
	private JdbcClient jdbc;

	@Autowired
	private PlatformTransactionManager transactions;

	@TempDir
	private Path folder;

	private UUID team;

	private PersonId coach;

	@BeforeEach
	void foundATeam() {
		this.clock.set(TODAY);
		this.team = this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Team", ZoneOffset.UTC)
			.id();
		this.coach = this.people.addCoach(this.team, "Coach");
		As.person(this.coach);
	}

	@Test
	void knowsSomebodyInThirtySpellings() {
		PersonId renee = add(NameKeyTest.NAME).id();
		List<String> names = NameKeyTest.spellings();
		UUID id = run(file(names), everybody(), Map.of());
		assertThat(job(id).counts().peopleCreated()).isZero();
		assertThat(job(id).counts().stored()).isEqualTo(names.size());
		assertThat(members()).isOne();
		assertThat(mornings(renee)).isEqualTo(names.size());
	}

	@Test
	void addsSomebodyOnceWhomTheFileSpellsInThirtyWays() {
		List<String> names = NameKeyTest.spellings();
		UUID id = run(file(names), everybody(), Map.of());
		assertThat(job(id).counts().peopleCreated()).isOne();
		assertThat(job(id).counts().stored()).isEqualTo(names.size());
		assertThat(members()).isOne();
	}

	@Test
	void tellsAccentsApartOnlyWhereTheTeamHasBoth() {
		PersonId jose = add("Jos\u00e9 Prats").id();
		run(file(List.of("Jose Prats")), everybody(), Map.of());
		assertThat(mornings(jose)).isOne();
		PersonId other = add("Jose Prats").id();
		run(file(List.of("Jose Prats", "Jos\u00e9 Prats")), everybody(), Map.of());
		assertThat(mornings(other)).isOne();
		assertThat(mornings(jose)).isEqualTo(2);
		assertThat(members()).isEqualTo(2);
	}

	@Test
	void refusesANameOfTwoAndOffersTheirCodes() {
		Athlete one = this.people.addAthlete(this.team, new NewAthlete("Ann Ashe", null, null, null, "Track"));
		Athlete two = this.people.addAthlete(this.team, new NewAthlete("Ann Ashe", "A2", null, null, null));
		UUID id = run(file(List.of("Ann Ashe", "ann\u00a0 ASHE")), everybody(), Map.of());
		assertThat(members()).isEqualTo(2);
		String code = "#" + one.id().toString().substring(28);
		assertThat(this.imports.problems(id, 0, 10)).hasSize(2)
			.allSatisfy((problem) -> assertThat(problem.reason().code()).isEqualTo("importRow.ambiguous"))
			.extracting((problem) -> problem.reason().arguments().get(0).toString())
			.allSatisfy((told) -> assertThat(told.split("; ")).containsExactlyInAnyOrder(code + " (Ann Ashe, Track)",
					"A2 (Ann Ashe)"));
		run(file(List.of(code, "a2 ")), everybody(), Map.of());
		assertThat(mornings(one.id())).isOne();
		assertThat(mornings(two.id())).isOne();
	}

	/** As an earlier import left it: the code is the name. */
	@Test
	void takesACodeThatIsAlsoANameOfAnotherForNeither() {
		this.people.addAthlete(this.team, new NewAthlete("Ann Ashe", "Ann Ashe", null, null, null));
		add("Ann Ashe");
		UUID id = run(file(List.of("Ann Ashe")), everybody(), Map.of());
		assertThat(reasons(id)).containsExactly("importRow.ambiguous");
		assertThat(members()).isEqualTo(2);
	}

	@ParameterizedTest
	@ValueSource(strings = { "Umeadi Nkechi", "Nkechi Umedai", "Nkechi Ada Umeadi", "Nkechi Umead" })
	void addsNobodyWhoIsNearlySomebodyElseUnlessDecided(String name) {
		PersonId nkechi = add("Nkechi Umeadi").id();
		String file = file(List.of(name));
		assertThat(reasons(run(file, everybody(), Map.of()))).containsExactly("importRow.near");
		assertThat(reasons(run(file, everybody(), Map.of(name, Decision.LEAVE)))).containsExactly("importRow.left-out");
		assertThat(members()).isOne();
		run(file, Choice.ofPeopleHere(mapping()), Map.of(name, Decision.same(nkechi)));
		assertThat(mornings(nkechi)).isOne();
		run(file, new Choice(mapping(), false, Basis.CLUB_RECORD), Map.of(name, Decision.NEW));
		assertThat(members()).isEqualTo(2);
	}

	@Test
	void takesNoDecisionForSomebodyOfAnotherTeam() {
		UUID other = this.people
			.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Other", ZoneOffset.UTC)
			.id();
		As.nobody();
		PersonId stranger = this.people.addAthlete(other, NewAthlete.named("Nkechi Umedai")).id();
		As.person(this.coach);
		UUID id = run(file(List.of("Nkechi Umeadi")), everybody(), Map.of("Nkechi Umeadi", Decision.same(stranger)));
		assertThat(reasons(id)).containsExactly("importRow.closed");
		assertThat(members()).isZero();
	}

	@Test
	void addsNobodyTwiceWhomTheFileHasInTwoWays() {
		UUID id = run(file(List.of("Nkechi Umeadi", "Nkechi Umedai")), everybody(), Map.of());
		assertThat(reasons(id)).contains("importRow.near-in-file");
		assertThat(members()).isLessThan(2);
		FilePeople asked = this.named.of(waiting(file(List.of("Bo Umeadi", "Bo Umedai", "Cy"))), mapping())
			.orElseThrow();
		assertThat(asked.near()).extracting(FilePeople.Near::name).containsExactly("Bo Umeadi", "Bo Umedai");
		assertThat(asked.unknown().listed()).containsExactly("Cy");
	}

	@Test
	void takesNothingInOfWhoeverWithdrewOrLeft() {
		PersonId renee = add(NameKeyTest.NAME).id();
		PersonId lev = this.people
			.addAthlete(this.team, new NewAthlete("\u041b\u0435\u0432 \u0416\u0443\u043a", "L7", null, null, null))
			.id();
		CurrentPerson.runAs(renee, () -> this.consents.withdraw(renee));
		CurrentPerson.runAs(lev, () -> this.consents.leave(lev));
		List<String> names = new ArrayList<>(NameKeyTest.spellings());
		names.addAll(List.of(NameKeyTest.NAME, "\u041b\u0435\u0432 \u0416\u0443\u043a",
				"\u041b\u0415\u0412\u00a0\u0416\u0423\u041a", "\u043b\u0435\u0432  \u0436\u0443\u043a", "L7", "l7 "));
		UUID id = run(file(names), everybody(), Map.of());
		assertThat(reasons(id)).hasSize(names.size()).containsOnly("importRow.closed");
		assertThat(this.imports.problems(id, 0, 100))
			.allSatisfy((one) -> assertThat(one.reason().arguments()).isEmpty());
		assertThat(job(id).counts().peopleCreated()).isZero();
		assertThat(members()).isEqualTo(2);
		FilePeople asked = this.named.of(waiting(file(names)), mapping()).orElseThrow();
		assertThat(asked.asks()).isFalse();
		assertThat(asked.refused().count()).isEqualTo((int) names.stream().map(String::strip).distinct().count());
		assertThat(List.of(renee, lev)).allSatisfy((one) -> {
			assertThat(CurrentPerson.callAs(one, () -> this.consents.shares(one))).isFalse();
			assertThat(CurrentPerson.callAs(one, () -> mornings(one))).isZero();
		});
	}

	/**
	 * The coach saw the name as a member's, was asked about another, and answers later.
	 */
	@Test
	void takesNothingInOfWhoeverWithdrawsAfterTheCoachWasAsked() {
		PersonId ann = add("Ann Ashe").id();
		PersonId bob = add("Bob Birch").id();
		ImportJob job = waiting(file(List.of("Ann Ashe", "Bob Birch", "Bob Birchs")));
		FilePeople asked = this.named.of(job, mapping()).orElseThrow();
		assertThat(asked.refused().count()).isZero();
		FilePeople.Near near = asked.near().get(0);
		assertThat(near.inTeam()).extracting((member) -> member.id()).containsExactly(bob);
		CurrentPerson.runAs(bob, () -> this.consents.withdraw(bob));
		UUID id = decided(job, everybody(), Map.of(near.name(), Decision.same(bob)));
		assertThat(reasons(id)).containsOnly("importRow.closed").hasSize(2);
		assertThat(job(id).counts().peopleCreated()).isZero();
		assertThat(members()).isEqualTo(2);
		assertThat(mornings(ann)).isOne();
		assertThat(CurrentPerson.callAs(bob, () -> mornings(bob))).isZero();
		assertThat(CurrentPerson.callAs(bob, () -> this.consents.shares(bob))).isFalse();
	}

	@Test
	void takesNothingInOfWhoeverWithdrawsWhileTheImportRuns() {
		PersonId ann = add("Ann Ashe").id();
		PersonId bob = add("Bob Birch").id();
		ImportJob job = waiting(file(List.of("Ann Ashe", "Bob Birch")));
		Choice choice = Choice.ofPeopleHere(mapping());
		this.imports.start(job.id(), choice);
		Whom whom = new Whom(this.rosters.of(this.team), Map.of(), choice, List.of());
		this.personImport.takeIn(job(job.id()), choice, whom, "Ann Ashe", TODAY);
		CurrentPerson.runAs(bob, () -> this.consents.withdraw(bob));
		this.personImport.takeIn(job(job.id()), choice, whom, "Bob Birch", TODAY);
		assertThat(reasons(job.id())).containsExactly("importRow.closed");
		assertThat(mornings(ann)).isOne();
		assertThat(CurrentPerson.callAs(bob, () -> mornings(bob))).isZero();
	}

	/** What is being taken in is taken in whole; who takes back waits for that. */
	@Test
	void letsNobodyWithdrawInTheMiddleOfTheirLines() throws Exception {
		PersonId ann = add("Ann Ashe").id();
		TransactionTemplate transaction = new TransactionTemplate(this.transactions);
		CompletableFuture<Void> withdrawal = transaction.execute((status) -> {
			assertThat(this.rosters.hold(ann, this.team)).isTrue();
			CompletableFuture<Void> started = CompletableFuture
				.runAsync(() -> CurrentPerson.runAs(ann, () -> this.consents.withdraw(ann)));
			assertThatExceptionOfType(TimeoutException.class).isThrownBy(() -> started.get(300, TimeUnit.MILLISECONDS));
			return started;
		});
		assertThat(withdrawal).isNotNull();
		withdrawal.get(30, TimeUnit.SECONDS);
		assertThat(transaction.<Boolean>execute((status) -> this.rosters.hold(ann, this.team))).isFalse();
	}

	@Test
	void writesConsentForNobody() {
		String header = "person,date,rhr,birth_date\n";
		String file = header
				+ "Ann Ashe,2026-11-24,50,1990-01-02\nKit Kid,2026-11-24,50,2012-01-02\nNo Date,2026-11-24,50,\n";
		UUID id = run(file, Choice.ofEverybody(mapping(header), Basis.OWN_WORD), Map.of());
		assertThat(reasons(id)).containsExactlyInAnyOrder("importRow.own-word-under-18", "importRow.own-word-under-18");
		run(file, Choice.ofEverybody(mapping(header), Basis.CLUB_RECORD), Map.of());
		assertThat(said("Ann Ashe")).isEqualTo("KEPT OWN_WORD Coach");
		assertThat(said("Kit Kid")).isEqualTo("KEPT CLUB_RECORD Coach");
		assertThat(said("No Date")).isEqualTo("KEPT CLUB_RECORD Coach");
	}

	private String said(String name) {
		PersonId id = this.people.find(this.team, name).orElseThrow().id();
		List<Consent> all = CurrentPerson.callAs(id, () -> this.consents.of(id));
		assertThat(all).hasSize(1);
		return all.get(0).kind() + " " + all.get(0).basis() + " " + all.get(0).by();
	}

	@Test
	void addsNobodyByAChoiceOfAnEarlierVersion() {
		Choice old = Choice.parse(mapping().asText() + " create");
		assertThat(old.createPeople()).isFalse();
		assertThat(reasons(run(file(List.of("Ann Ashe")), old, Map.of()))).containsExactly("importRow.unknown-person");
		Choice chosen = Choice.ofEverybody(mapping(), Basis.GUARDIAN_WORD);
		assertThat(Choice.parse(chosen.asText())).isEqualTo(chosen);
	}

	@Test
	void boundsAThousandUnknownNames() {
		List<String> names = IntStream.rangeClosed(1, 1000).mapToObj((i) -> "Athlete %04d".formatted(i)).toList();
		FilePeople asked = this.named.of(waiting(file(names)), mapping()).orElseThrow();
		assertThat(asked.near()).isEmpty();
		assertThat(asked.unknown().listed()).hasSize(19).startsWith("Athlete 0001");
		assertThat(asked.unknown().more()).isEqualTo(981);
		assertThat(asked.emptyTeam()).isTrue();
		UUID id = run(file(names), Choice.ofPeopleHere(mapping()), Map.of());
		assertThat(job(id).counts().rejected()).isEqualTo(1000);
		assertThat(members()).isZero();
	}

	/** Name and codes of an entry put aside mean the one kept, until that is undone. */
	@Test
	void knowsTheOtherEntryOfAMember() {
		PersonId kept = add("Nkechi Umeadi").id();
		Athlete other = this.people.addAthlete(this.team, new NewAthlete("Keke U", "K7", null, null, null));
		UUID merge = UUID.randomUUID();
		assertThat(this.merges.merge(kept, other.id(), "the same", merge)).isInstanceOf(Saved.Stored.class);
		RequestContextHolder.resetRequestAttributes();
		String code = "#" + other.id().toString().substring(28);
		List<String> names = List.of("Keke  u", "k7", code, "Nkechi Umeadi");
		UUID id = run(file(names), everybody(), Map.of());
		assertThat(reasons(id)).isEmpty();
		assertThat(job(id).counts().peopleCreated()).isZero();
		assertThat(mornings(kept)).isEqualTo(names.size());
		assertThat(mornings(other.id())).isZero();
		assertThat(reasons(run(file(List.of("Keke Uu", "U Keke")), everybody(), Map.of())))
			.containsOnly("importRow.near");
		assertThat(members()).isEqualTo(2);
		assertThat(this.merges.undo(kept, merge)).isInstanceOf(Saved.Stored.class);
		RequestContextHolder.resetRequestAttributes();
		run(file(List.of("Keke U")), everybody(), Map.of());
		assertThat(mornings(other.id())).isOne();
	}

	@Test
	void answersNobodyWhoDoesNotLeadTheTeam() {
		PersonId ann = add("Ann Ashe").id();
		CurrentPerson.runAs(ann, () -> this.consents.withdraw(ann));
		PersonId bob = add("Bob Birch").id();
		assertThat(this.rosters.closed(this.team, List.of("Ann Ashe", "Bob Birch", ""))).containsExactly("Ann Ashe");
		As.nobody();
		PersonId stranger = this.people.addCoach(
				this.people.addTeam(this.people.foundClub("Club " + UUID.randomUUID()).id(), "Far", ZoneOffset.UTC)
					.id(),
				"Sam");
		for (PersonId who : List.of(stranger, ann, bob)) {
			CurrentPerson.runAs(who, () -> {
				assertThat(this.rosters.closed(this.team, List.of("Ann Ashe"))).isEmpty();
				assertThat(new TransactionTemplate(this.transactions)
					.<Boolean>execute((status) -> this.rosters.hold(bob, this.team))).isFalse();
			});
		}
	}

	private Athlete add(String name) {
		return this.people.addAthlete(this.team, NewAthlete.named(name));
	}

	private Choice everybody() {
		return Choice.ofEverybody(mapping(), Basis.CLUB_RECORD);
	}

	private static ColumnMapping mapping() {
		return mapping("person,date,rhr");
	}

	private static ColumnMapping mapping(String header) {
		return ColumnMapping.guess(List.of(header.strip().split(","))).withDefaults(Method.STRAP, Posture.LYING);
	}

	/** A morning for each name, each of another day. */
	private static String file(List<String> names) {
		StringBuilder text = new StringBuilder("person,date,rhr\n");
		for (int i = 0; i < names.size(); i++) {
			text.append('"').append(names.get(i)).append("\",").append(TODAY.minusDays(i % 300)).append(",50\n");
		}
		return text.toString();
	}

	private UUID run(String text, Choice choice, Map<String, Decision> decisions) {
		return decided(waiting(text), choice, decisions);
	}

	private UUID decided(ImportJob job, Choice choice, Map<String, Decision> decisions) {
		assertThat(this.imports.start(job.id(), choice, decisions)).isTrue();
		this.worker.runNow(job.id());
		assertThat(job(job.id()).state()).isEqualTo(ImportJob.State.DONE);
		return job.id();
	}

	private ImportJob waiting(String text) {
		try {
			Path file = Files.writeString(Files.createTempFile(this.folder, "m", ".csv"), text);
			return job(this.imports.receive(this.team, this.coach, "mornings.csv", file));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private ImportJob job(UUID id) {
		return this.imports.find(id).orElseThrow();
	}

	private List<String> reasons(UUID id) {
		return this.imports.problems(id, 0, 2000).stream().map((problem) -> problem.reason().code()).toList();
	}

	private int members() {
		return this.rosters.count(this.team);
	}

	private int mornings(PersonId athlete) {
		Integer rows = new TransactionTemplate(this.transactions)
			.execute((status) -> this.jdbc.sql("select count(*) from morning_entry where athlete_id = ?")
				.param(athlete.value())
				.query(Integer.class)
				.single());
		return (rows == null) ? -1 : rows;
	}

}
