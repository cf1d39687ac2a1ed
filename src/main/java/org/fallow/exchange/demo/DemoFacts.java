package org.fallow.exchange.demo;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Absences;
import org.fallow.entry.Activity;
import org.fallow.entry.NewAbsence;
import org.fallow.entry.NewSession;
import org.fallow.entry.Saved;
import org.fallow.entry.Sessions;
import org.fallow.entry.Submission;
import org.fallow.illness.ClearanceFacts;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.NewClearance;
import org.fallow.illness.NewReport;

import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/**
 * Stores the demo's sessions and events through the same doors as pages do.
 */
@Component
@Profile("demo")
class DemoFacts {

	private final Sessions sessions;

	private final Absences absences;

	private final IllnessFacts illness;

	private final ClearanceFacts clearances;

	DemoFacts(Sessions sessions, Absences absences, IllnessFacts illness, ClearanceFacts clearances) {
		this.sessions = sessions;
		this.absences = absences;
		this.illness = illness;
		this.clearances = clearances;
	}

	void store(PersonId athlete, DemoSession session, PersonId coach) {
		require(this.sessions.save(
				athlete, new NewSession(null, session.day(), Activity.RUN, session.minutes(), session.rpe(),
						session.intensity(), List.of(), false, null, session.recorded()),
				submission(coach, athlete, session)), session);
	}

	void store(PersonId athlete, DemoEvent event, PersonId coach) {
		Submission submission = submission(coach, athlete, event);
		Saved saved = switch (event.kind()) {
			case "report" -> this.illness.report(athlete,
					new NewReport(event.day(), event.reportKind(), event.value(), event.note(), event.recorded()),
					submission);
			case "clear" -> this.clearances.clear(athlete,
					new NewClearance(event.day(), event.until(), event.ceiling(), event.who(), event.role(), null),
					submission);
			default -> this.absences.save(athlete, new NewAbsence(null, event.day(), event.until(), event.absenceKind(),
					event.note(), event.recorded()), submission);
		};
		require(saved, event);
	}

	private static Submission submission(PersonId coach, PersonId athlete, Object what) {
		String name = athlete.value() + " " + what;
		return Submission.imported(coach, UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)));
	}

	private static void require(Saved saved, Object what) {
		if (!(saved instanceof Saved.Stored)) {
			throw new IllegalStateException(what + " was not stored: " + saved);
		}
	}

}
