package org.fallow.exchange.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.entry.Recording;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.platform.Language;
import org.fallow.team.Athlete;
import org.fallow.team.Consents;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.training.Plans;
import org.fallow.training.core.ModifiedSession;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What stands in an athlete's calendar: the coming sessions as they are to be run, and
 * the earliest day of the next gate.
 */
@Service
@Transactional
public class AthleteCalendar {

	private final Squad squad;

	private final Consents consents;

	private final Recording recording;

	private final Assessments assessments;

	private final Plans plans;

	private final Accounts accounts;

	private final MessageSource messages;

	private final SentEvents sent;

	AthleteCalendar(Squad squad, Consents consents, Recording recording, Assessments assessments, Plans plans,
			Accounts accounts, MessageSource messages, SentEvents sent) {
		this.squad = squad;
		this.consents = consents;
		this.recording = recording;
		this.assessments = assessments;
		this.plans = plans;
		this.accounts = accounts;
		this.messages = messages;
		this.sent = sent;
	}

	/**
	 * The calendar, which is taken to be sent by that.
	 * @param id whose
	 * @return a text of RFC 5545
	 */
	@OfAthlete
	public String of(PersonId id) {
		Athlete athlete = this.squad.athlete(id);
		this.sent.lock(id);
		LocalDate today = this.recording.today(athlete);
		EventWords words = words(id);
		List<CalendarEvent> events = new ArrayList<>(sessions(id, today, words));
		gate(id, today, words).ifPresent(events::add);
		List<SentEvent> all = this.sent.send(id, events, today, this.recording.now())
			.stream()
			.map((event) -> worded(event, words))
			.toList();
		return CalendarText.write(words.name(), all);
	}

	private EventWords words(PersonId id) {
		return new EventWords(this.messages, this.accounts.language(id).orElse(Language.ENGLISH).locale());
	}

	/** Who has left the team has no programme any more. */
	private List<CalendarEvent> sessions(PersonId id, LocalDate today, EventWords words) {
		if (this.consents.team(id).isEmpty()) {
			return List.of();
		}
		Map<String, Integer> seen = new HashMap<>();
		return this.plans.of(id, today.plusDays(Plans.DAYS_AHEAD))
			.sessions()
			.stream()
			.map((session) -> words.session(id, key(session, seen), session))
			.toList();
	}

	/** Should a key stand twice, the later sessions are told apart by their number. */
	private static String key(ModifiedSession session, Map<String, Integer> seen) {
		String key = session.programmed().key();
		int number = seen.merge(key, 1, Integer::sum);
		return (number == 1) ? key : key + " " + number;
	}

	private Optional<CalendarEvent> gate(PersonId id, LocalDate today, EventWords words) {
		this.assessments.bringUpTo(List.of(id), today);
		return Optional.ofNullable(this.assessments.status(List.of(id)).get(id))
			.map(AthleteStatus::latest)
			.map(AssessedDay::nextGateEarliest)
			.filter((day) -> !day.isBefore(today))
			.map((day) -> words.gate(id, day));
	}

	private static SentEvent worded(SentEvent one, EventWords words) {
		CalendarEvent event = one.event();
		return one.cancelled()
				? new SentEvent(new CalendarEvent(event.uid(), event.day(), event.time(), event.minutes(),
						event.summary(), words.cancelled(), event.place()), one.sequence(), true, one.changedAt())
				: one;
	}

}
