package org.fallow.exchange.imports;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

import org.fallow.access.PersonId;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Saved;
import org.fallow.exchange.csv.ImportField;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.exchange.csv.ReadRow;
import org.fallow.exchange.csv.RowProblem;
import org.fallow.exchange.csv.UnusualReadings;
import org.fallow.team.Athlete;
import org.fallow.team.Kept;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Roster;
import org.fallow.team.Rosters;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Takes in the rows of one person: entries, their assessments, problems and counts commit
 * together.
 */
@Component
class PersonImport {

	private static final int PROBLEMS_AT_ONCE = 1000;

	private static final Map<String, ImportField> FIELDS = Map.of("day", ImportField.DAY, "rhr", ImportField.RHR,
			"rmssd", ImportField.RMSSD, "temperature", ImportField.TEMPERATURE, "method", ImportField.METHOD, "posture",
			ImportField.POSTURE, "symptoms", ImportField.SYMPTOMS, "otherSymptom", ImportField.SYMPTOMS, "note",
			ImportField.NOTE);

	private final ImportRows rows;

	private final ImportJobs jobs;

	private final ImportProblems problems;

	private final People people;

	private final Rosters rosters;

	private final Mornings mornings;

	PersonImport(ImportRows rows, ImportJobs jobs, ImportProblems problems, People people, Rosters rosters,
			Mornings mornings) {
		this.rows = rows;
		this.jobs = jobs;
		this.problems = problems;
		this.people = people;
		this.rosters = rosters;
		this.mornings = mornings;
	}

	/**
	 * Takes them in.
	 * @param job the job, running
	 * @param choice what the columns mean
	 * @param whom whom the names of the file mean; knows those who were added after
	 * @param person whom, as the file has it
	 * @param today the latest day a row may speak of
	 */
	@Transactional(propagation = Propagation.REQUIRES_NEW)
	void takeIn(ImportJob job, Choice choice, Whom whom, String person, LocalDate today) {
		this.jobs.commitWithoutWaiting();
		Reading reading = new Reading(job, new MorningFile(job.headers(), choice.mapping()), today);
		this.rows.forEach(job.id(), person, reading::read);
		Tally tally = store(job, choice, whom, person, reading);
		reading.flush();
		this.jobs.count(job.id(), tally, person);
	}

	private Tally store(ImportJob job, Choice choice, Whom whom, String person, Reading reading) {
		List<ReadRow> good = List.copyOf(reading.good.values());
		if (good.isEmpty()) {
			return new Tally(reading.read, 0, 0, 0, reading.rejected.size(), 0, 0, null, null);
		}
		Whom.Outcome outcome = whom.of(person);
		if (outcome instanceof Whom.Outcome.Added) {
			Message why = refusal(job, choice, person, good, reading.today);
			if (why != null) {
				return refused(reading, good, person, why);
			}
			Athlete added = this.people.addAthlete(job.teamId(), newAthlete(person, good), kept(choice));
			whom.added(Roster.Entry.of(added.id(), added.name(), added.externalCode(), null, true));
			return stored(job, added.id(), good, reading, false);
		}
		if (outcome instanceof Whom.Outcome.Known known) {
			return this.rosters.hold(known.athlete(), job.teamId()) ? stored(job, known.athlete(), good, reading, true)
					: refused(reading, good, person, Whom.CLOSED);
		}
		return refused(reading, good, person, ((Whom.Outcome.Refused) outcome).why());
	}

	private static Kept kept(Choice choice) {
		return new Kept(Objects.requireNonNull(choice.basis()), null);
	}

	/** Why somebody the team does not have is not added. */
	private @Nullable Message refusal(ImportJob job, Choice choice, String person, List<ReadRow> rows,
			LocalDate today) {
		if (!this.rosters.closed(job.teamId(), List.of(person)).isEmpty()) {
			return Whom.CLOSED;
		}
		if (choice.basis() == null) {
			return Message.of("importRow.unknown-person");
		}
		return kept(choice).isEnough(Athlete.isUnder18(newAthlete(person, rows).birthDate(), today)) ? null
				: Message.of("importRow.own-word-under-18");
	}

	private static Tally refused(Reading reading, List<ReadRow> good, String person, Message why) {
		good.forEach((row) -> reading.refuse(row.line(), ImportField.PERSON, person, why));
		return new Tally(reading.read, 0, 0, 0, reading.rejected.size(), 0, 0, null, null);
	}

	private Tally stored(ImportJob job, PersonId athlete, List<ReadRow> good, Reading reading, boolean matched) {
		List<NewMorning> all = good.stream().map(ReadRow::goodMorning).toList();
		List<Saved> outcomes = this.mornings.takeIn(athlete, all, job.actor());
		UnusualReadings.of(good).forEach(reading::add);
		UnusualReadings.marked(good).forEach(reading::add);
		return tally(reading, good, outcomes, matched);
	}

	private static NewAthlete newAthlete(String person, List<ReadRow> rows) {
		LocalDate birthDate = rows.stream().map(ReadRow::birthDate).filter((d) -> d != null).findFirst().orElse(null);
		String group = rows.stream().map(ReadRow::group).filter((g) -> g != null).findFirst().orElse(null);
		return new NewAthlete(person, person, null, birthDate, group);
	}

	private static Tally tally(Reading reading, List<ReadRow> good, List<Saved> outcomes, boolean matched) {
		int[] counts = new int[3];
		TreeSet<LocalDate> days = new TreeSet<>();
		for (int i = 0; i < outcomes.size(); i++) {
			ReadRow row = good.get(i);
			if (outcomes.get(i) instanceof Saved.Stored stored) {
				counts[stored.again() ? 1 : (stored.revision() > 1) ? 2 : 0]++;
				days.add(row.goodMorning().day());
			}
			else if (outcomes.get(i) instanceof Saved.Refused refused) {
				refused.problems().forEach((problem) -> reading.refuse(row, problem));
			}
			else {
				reading.refuse(row.line(), ImportField.DAY, row.goodMorning().day().toString(),
						Message.of("importRow.entered-by-hand"));
			}
		}
		return new Tally(reading.read, counts[0], counts[1], counts[2], reading.rejected.size(), matched ? 0 : 1,
				matched ? 1 : 0, days.isEmpty() ? null : days.first(), days.isEmpty() ? null : days.last());
	}

	/** What is read of one person's rows. */
	private final class Reading {

		private final ImportJob job;

		private final MorningFile file;

		private final LocalDate today;

		private final Map<LocalDate, ReadRow> good = new TreeMap<>();

		private final List<RowProblem> waiting = new ArrayList<>();

		private final Set<Long> rejected = new HashSet<>();

		private int read;

		Reading(ImportJob job, MorningFile file, LocalDate today) {
			this.job = job;
			this.file = file;
			this.today = today;
		}

		void read(long line, List<String> cells) {
			this.read++;
			ReadRow row = this.file.read(line, cells, this.today);
			row.problems().forEach(this::add);
			if (!row.problems().isEmpty()) {
				return;
			}
			ReadRow first = this.good.putIfAbsent(row.goodMorning().day(), row);
			if (first != null) {
				refuse(line, ImportField.DAY, row.goodMorning().day().toString(),
						Message.of("importRow.twice", first.line()));
			}
		}

		void refuse(ReadRow row, Problem problem) {
			refuse(row.line(), FIELDS.get(problem.field()), null, problem.message());
		}

		void refuse(long line, @Nullable ImportField field, @Nullable String value, Message reason) {
			add(RowProblem.refused(line, field, value, reason));
		}

		void add(RowProblem problem) {
			this.waiting.add(problem);
			if (!problem.notice()) {
				this.rejected.add(problem.line());
			}
			if (this.waiting.size() >= PROBLEMS_AT_ONCE) {
				flush();
			}
		}

		void flush() {
			PersonImport.this.problems.add(this.job, this.waiting);
			this.waiting.clear();
		}

	}

}
