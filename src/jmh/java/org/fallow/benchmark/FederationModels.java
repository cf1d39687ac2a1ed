package org.fallow.benchmark;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.entry.Method;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.IllnessFacts;
import org.fallow.rules.Intensity;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Team;
import org.fallow.training.Programmes;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;

/**
 * Athletes whose days Fallow itself decided, of whom a federation is copied, so that its
 * rows are as wide as real ones and each follows from its facts. Of a hundred athletes
 * three are on their way back, two ill, one held, two quiet for some days, the rest well.
 */
final class FederationModels {

	/** Days of history, the last of them today. */
	static final int DAYS = 100;

	private static final int WELL = 16;

	private static final int ILL_FOR = 3;

	private static final int BACK_FOR = 12;

	private static final int QUIET_FOR = 4;

	private final RunningFallow fallow;

	private final LocalDate today;

	FederationModels(RunningFallow fallow, LocalDate today) {
		this.fallow = fallow;
		this.today = today;
	}

	/** Makes the models: returning, ill, held, quiet, then those who are well. */
	List<PersonId> make() {
		People people = this.fallow.bean(People.class);
		Team team = people.addTeam(people.foundClub("Models").id(), "Models", ZoneOffset.UTC);
		PersonId coach = people.addCoach(team.id(), "Cay");
		List<PersonId> models = new ArrayList<>();
		for (int i = 0; i < 4 + WELL; i++) {
			PersonId athlete = people.addAthlete(team.id(), NewAthlete.named("Model " + i)).id();
			live(athlete, coach, i);
			models.add(athlete);
		}
		return models;
	}

	private void live(PersonId athlete, PersonId coach, int kind) {
		Mornings mornings = this.fallow.bean(Mornings.class);
		List<NewMorning> history = new ArrayList<>();
		int last = (kind == 3) ? QUIET_FOR : 1;
		for (int ago = DAYS - 1; ago >= last; ago--) {
			history.add(morning(kind, ago));
		}
		CurrentPerson.runAs(coach, () -> mornings.takeIn(athlete, history, coach));
		if (kind == 2) {
			CurrentPerson.runAs(coach, () -> stored(this.fallow.bean(IllnessFacts.class)
				.hold(athlete, this.today, "Seen by the doctor", Submission.page(coach, Role.COACH, UUID.randomUUID()))));
		}
		if (kind != 3) {
			CurrentPerson.runAs(athlete, () -> stored(mornings.save(athlete, morning(kind, 0),
					Submission.page(athlete, Role.ATHLETE, UUID.randomUUID()))));
		}
	}

	private NewMorning morning(int kind, int ago) {
		double wave = (ago * (7 + kind) % 5) - 2;
		NewMorning morning = NewMorning.measured(this.today.minusDays(ago), Method.STRAP, Posture.LYING,
				46.0 + kind + wave, 60.0 + 3 * kind + 4 * wave);
		boolean ill = (kind == 1 && ago <= ILL_FOR) || (kind == 0 && ago <= BACK_FOR && ago > BACK_FOR - 4);
		return ill ? morning.with(new ReportedSymptom(Symptom.FEVERISH, Severity.MODERATE, null),
				new ReportedSymptom(Symptom.COUGH, Severity.MILD, null)) : morning;
	}

	static void stored(Saved saved) {
		if (!(saved instanceof Saved.Stored)) {
			throw new IllegalStateException("not stored: " + saved);
		}
	}

	/** Writes a session of today into the programme of a group. */
	void program(UUID group, PersonId coach) {
		PlannedSession session = new PlannedSession("key", this.today, PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "Track", "Threshold",
				List.of(Part.of(Part.Role.BLOCK, 1800, Intensity.THRESHOLD)));
		LocalDate monday = this.today.minusDays(this.today.getDayOfWeek().getValue() - 1L);
		ProgrammeWeek week = new ProgrammeWeek(monday, ProgrammeWeek.Kind.LOADING, List.of(session));
		CurrentPerson.runAs(coach, () -> {
			if (!this.fallow.bean(Programmes.class).write(group, week, 0, coach)) {
				throw new IllegalStateException("the week is not written");
			}
		});
	}

}
