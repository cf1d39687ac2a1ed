package org.fallow.exchange.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.imports.Choice;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.ImportWorker;
import org.fallow.exchange.imports.Imports;
import org.fallow.account.Accounts;
import org.fallow.team.Athlete;
import org.fallow.team.Consents;
import org.fallow.team.Group;
import org.fallow.team.Guardian;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.fallow.training.Programmes;
import org.fallow.training.core.ProgrammeWeek;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Loads the demo squad before the first page can be asked for, unless there is an account
 * already (a demo home that was kept).
 */
@Component
@Profile("demo")
class DemoLoader implements SmartInitializingSingleton {

	private static final Logger log = LoggerFactory.getLogger(DemoLoader.class);

	private final People people;

	private final Consents consents;

	private final Accounts accounts;

	private final Imports imports;

	private final ImportWorker worker;

	private final DemoFacts facts;

	private final HeldChanges changes;

	private final Squad squad;

	private final Programmes programmes;

	private final TransactionTemplate transaction;

	private final Today today;

	DemoLoader(People people, Consents consents, Accounts accounts, Imports imports, ImportWorker worker,
			DemoFacts facts, HeldChanges changes, Squad squad, Programmes programmes,
			PlatformTransactionManager transactions, Today today) {
		this.people = people;
		this.consents = consents;
		this.accounts = accounts;
		this.imports = imports;
		this.worker = worker;
		this.facts = facts;
		this.changes = changes;
		this.squad = squad;
		this.programmes = programmes;
		this.transaction = new TransactionTemplate(transactions);
		this.today = today;
	}

	@Override
	public void afterSingletonsInstantiated() {
		if (Purpose.SIGN_IN.call(this.accounts::none)) {
			load();
		}
	}

	/** Loads the squad as the first start of the demo does. */
	void load() {
		long start = System.nanoTime();
		ZoneId zone = ZoneId.systemDefault();
		DemoFiles files = DemoFiles.endingOn(this.today.in(zone));
		UUID club = Purpose.OPERATION.call(() -> this.people.foundClub(DemoClub.CLUB)).id();
		UUID team = Purpose.OPERATION.call(() -> this.people.addTeam(club, DemoClub.TEAM, zone)).id();
		PersonId coach = Purpose.OPERATION.call(() -> addCoaches(club, team));
		Map<String, PersonId> athletes = Purpose.OPERATION.call(() -> addAthletes(team, files.people()));
		log.info("Demo: {} invented athletes, days moved by {} weeks", athletes.size(), files.weeks());
		CurrentPerson.runAs(coach, () -> importMornings(team, coach, files));
		log.info("Demo: mornings are in after {}", since(start));
		addFacts(coach, athletes, files);
		CurrentPerson.runAs(coach, () -> addProgrammes(team, coach, files));
		log.info("Demo: the squad is complete after {}", since(start));
	}

	private PersonId addCoaches(UUID club, UUID team) {
		List<PersonId> coaches = DemoClub.COACHES.stream().map((name) -> {
			PersonId coach = this.people.addCoach(team, name);
			this.accounts.open(coach, DemoClub.username(name), DemoClub.PASSWORD);
			return coach;
		}).toList();
		this.people.owns(club, coaches.get(0));
		return coaches.get(0);
	}

	private Map<String, PersonId> addAthletes(UUID team, List<DemoPerson> demoPeople) {
		Map<String, PersonId> athletes = new LinkedHashMap<>();
		for (DemoPerson person : demoPeople) {
			Athlete athlete = this.people.addAthlete(team,
					new NewAthlete(person.name(), person.code(), null, person.birthDate(), person.group()));
			this.accounts.open(athlete.id(), DemoClub.username(person.name()), DemoClub.PASSWORD);
			agree(athlete);
			athletes.put(person.code(), athlete.id());
		}
		return athletes;
	}

	/** As if each had come by an invitation. */
	private void agree(Athlete athlete) {
		boolean minor = athlete.isUnder18(this.today.of(athlete));
		CurrentPerson.runAs(athlete.id(), () -> this.consents.give(athlete.id(),
				minor ? new Guardian("Gale " + athlete.name(), "parent") : null));
	}

	private void importMornings(UUID team, PersonId coach, DemoFiles files) {
		try {
			Path file = Files.createTempFile("fallow-demo", ".csv");
			files.writeMornings(file);
			UUID job = this.imports.receive(team, coach, "mornings.csv", file);
			Files.delete(file);
			ImportJob waiting = this.imports.find(job).orElseThrow();
			this.imports.start(job, Choice.ofPeopleHere(ColumnMapping.guess(waiting.headers())));
			this.worker.runNow(job);
			ImportJob done = this.imports.find(job).orElseThrow();
			if (done.state() != ImportJob.State.DONE || done.counts().rejected() > 0) {
				throw new IllegalStateException("the demo's mornings were not taken in: " + done);
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** Each athlete's in one transaction, in the order they became known. */
	private void addFacts(PersonId coach, Map<String, PersonId> athletes, DemoFiles files) {
		List<DemoEvent> events = files.events();
		List<DemoSession> sessions = files.sessions();
		athletes.forEach((code, athlete) -> {
			Runnable work = () -> {
				events.stream()
					.filter((event) -> event.person().equals(code))
					.forEach((event) -> this.facts.store(athlete, event, coach));
				sessions.stream()
					.filter((session) -> session.person().equals(code))
					.forEach((session) -> this.facts.store(athlete, session, coach));
			};
			CurrentPerson.runAs(coach,
					() -> this.transaction.executeWithoutResult((status) -> this.changes.together(work)));
		});
	}

	private void addProgrammes(UUID team, PersonId coach, DemoFiles files) {
		for (Group group : this.squad.groupsOf(team)) {
			for (ProgrammeWeek week : files.programme(group.name())) {
				if (!this.programmes.write(group.id(), week, 0, coach)) {
					throw new IllegalStateException("the demo's programme was not taken in: " + week.monday());
				}
			}
		}
	}

	private static String since(long start) {
		return Duration.ofMillis((System.nanoTime() - start) / 1_000_000).toString();
	}

}
