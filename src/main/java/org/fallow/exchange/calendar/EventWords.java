package org.fallow.exchange.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

import org.fallow.access.PersonId;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Version;

import org.springframework.context.MessageSource;

/**
 * Says what to do and never why: whoever shares a calendar does not share an illness. The
 * language is the athlete's, or each reader's would count as a change.
 */
class EventWords {

	private static final int SECONDS = 60;

	private final MessageSource messages;

	private final Locale language;

	EventWords(MessageSource messages, Locale language) {
		this.messages = messages;
		this.language = language;
	}

	/** A session; its key is that of the programme. */
	CalendarEvent session(PersonId athlete, String key, ModifiedSession session) {
		PlannedSession instead = session.instead();
		String uid = CalendarEvent.uid(athlete, "session " + key);
		LocalDate day = session.programmed().day();
		if (instead == null) {
			return new CalendarEvent(uid, day, null, 0, say("calendar.rest"),
					lines(List.of(say("calendar.rest.means"))), "");
		}
		String kind = say("calendar.kind." + instead.kind());
		return new CalendarEvent(uid, day, instead.time(), instead.minutes(),
				say("calendar.title." + session.version(), kind, instead.minutes()),
				lines(todo(session.version(), instead)), plain(instead.place()));
	}

	/** The earliest day of the next gate, the one event of its kind. */
	CalendarEvent gate(PersonId athlete, LocalDate day) {
		return new CalendarEvent(CalendarEvent.uid(athlete, "gate"), day, null, 0, say("calendar.gate"),
				lines(List.of(say("calendar.gate.means"))), "");
	}

	/** What a cancelled event says. */
	String cancelled() {
		return lines(List.of(say("calendar.cancelled")));
	}

	/** What the calendar is called. */
	String name() {
		return say("calendar.name");
	}

	private List<String> todo(Version version, PlannedSession instead) {
		List<String> lines = new ArrayList<>(List.of(say("calendar.do." + version, instead.minutes())));
		if (version == Version.AS_PROGRAMMED || version == Version.SHORTENED) {
			lines.add(plain(instead.name()));
		}
		instead.parts().forEach((part) -> lines.add(part(part)));
		lines.add(say("calendar.behind"));
		return lines;
	}

	private String part(Part part) {
		Integer metres = part.metres();
		String amount = (metres == null) ? time(part.seconds()) : say("calendar.metres", metres);
		if (part.repeats() > 1) {
			amount = say("calendar.repeats", part.repeats(), amount);
		}
		if (part.repeats() > 1 && part.recoverySeconds() > 0) {
			amount = say("calendar.recovery", amount, time(part.recoverySeconds()));
		}
		return say("calendar.part." + part.role(), amount, say("intensity." + part.intensity()));
	}

	private String time(int seconds) {
		int minutes = seconds / SECONDS;
		int rest = seconds % SECONDS;
		if (rest == 0) {
			return say("calendar.minutes", minutes);
		}
		return (minutes == 0) ? say("calendar.seconds", rest) : say("calendar.minutes-seconds", minutes, rest);
	}

	private String lines(List<String> said) {
		List<String> lines = new ArrayList<>(said.stream().filter((line) -> !line.isBlank()).toList());
		lines.add(say("caution.short"));
		return String.join("\n", lines);
	}

	/** Without the control characters that RFC 5545 forbids in text. */
	private static String plain(String typed) {
		return typed.replaceAll("\\R", "\n").replaceAll("[\\p{Cntrl}&&[^\n\t]]", "").strip();
	}

	private String say(String code, Object... arguments) {
		return this.messages.getMessage(code, arguments, this.language);
	}

}
