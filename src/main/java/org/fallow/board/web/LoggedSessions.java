package org.fallow.board.web;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.fallow.access.PersonId;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.StoredEvent;
import org.fallow.team.Athlete;

import org.springframework.stereotype.Component;

/**
 * What the roll tells of sessions lately logged: one question for all athletes, and
 * another only about those who ticked something.
 */
@Component
class LoggedSessions {

	private final Sessions sessions;

	private final IllnessFacts facts;

	LoggedSessions(Sessions sessions, IllnessFacts facts) {
		this.sessions = sessions;
		this.facts = facts;
	}

	/** Sessions of the day before and of the day, by athlete. */
	Map<PersonId, List<LoggedSession>> of(List<Athlete> athletes, LocalDate day) {
		Map<PersonId, List<SessionLog>> logs = this.sessions.of(athletes.stream().map(Athlete::id).toList(),
				day.minusDays(1), day);
		Map<PersonId, List<LoggedSession>> logged = new HashMap<>();
		for (Athlete athlete : athletes) {
			List<SessionLog> own = logs.getOrDefault(athlete.id(), List.of());
			boolean redFlag = own.stream().anyMatch(SessionLog::hasRedFlag);
			List<StoredEvent> events = redFlag ? this.facts.of(athlete.id()) : List.of();
			logged.put(athlete.id(),
					own.stream().map((log) -> LoggedSession.of(log, events, null, athlete.zone())).toList());
		}
		return logged;
	}

}
