package org.fallow.exchange.calendar;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;

import net.fortuna.ical4j.data.CalendarOutputter;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.ParameterList;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.parameter.Value;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.LastModified;
import net.fortuna.ical4j.model.property.Location;
import net.fortuna.ical4j.model.property.Name;
import net.fortuna.ical4j.model.property.ProdId;
import net.fortuna.ical4j.model.property.RefreshInterval;
import net.fortuna.ical4j.model.property.Sequence;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableCalScale;
import net.fortuna.ical4j.model.property.immutable.ImmutableStatus;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;
import net.fortuna.ical4j.model.property.immutable.ImmutableVersion;

/**
 * Writes a calendar as RFC 5545 and RFC 7986 have it. Times have no zone: a session is at
 * half past six wherever the calendar is read. Without a METHOD, DTSTAMP is when an event
 * changed last, so that two fetches are equal where nothing changed.
 */
final class CalendarText {

	private static final Duration ASK_AGAIN = Duration.ofHours(1);

	/** Longest line, octets without its end. */
	private static final int LINE_OCTETS = 75;

	private static final String FOLD = "\r\n ";

	private CalendarText() {
	}

	static String write(String name, List<SentEvent> events) {
		Calendar calendar = new Calendar();
		calendar.add(new ProdId("-//Fallow//Calendar//EN"));
		calendar.add(ImmutableVersion.VERSION_2_0);
		calendar.add(ImmutableCalScale.GREGORIAN);
		calendar.add(new Name(name));
		calendar.add(new RefreshInterval(new ParameterList(List.of(Value.DURATION)), ASK_AGAIN));
		events.forEach((event) -> calendar.add(component(event)));
		try {
			StringWriter text = new StringWriter();
			new CalendarOutputter(!events.isEmpty()).output(calendar, text);
			return folded(text.toString().replace(FOLD, ""));
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static VEvent component(SentEvent sent) {
		CalendarEvent event = sent.event();
		VEvent component = new VEvent(false);
		component.add(new Uid(event.uid()));
		component.add(new DtStamp(sent.changedAt()));
		component.add(new LastModified(sent.changedAt()));
		component.add(new Sequence(sent.sequence()));
		component.add(sent.cancelled() ? ImmutableStatus.VEVENT_CANCELLED : ImmutableStatus.VEVENT_CONFIRMED);
		addTime(component, event);
		component
			.add((event.time() == null || sent.cancelled()) ? ImmutableTransp.TRANSPARENT : ImmutableTransp.OPAQUE);
		component.add(new Summary(event.summary()));
		component.add(new Description(event.description()));
		if (!event.place().isEmpty()) {
			component.add(new Location(event.place()));
		}
		return component;
	}

	private static void addTime(VEvent component, CalendarEvent event) {
		LocalTime time = event.time();
		if (time == null) {
			component.add(new DtStart<>(event.day()));
		}
		else {
			LocalDateTime start = event.day().atTime(time);
			component.add(new DtStart<>(start));
			component.add(new DtEnd<>(start.plusMinutes(event.minutes())));
		}
	}

	/**
	 * The library folds by characters; RFC 5545 counts octets and keeps characters whole.
	 */
	static String folded(String text) {
		StringBuilder folded = new StringBuilder();
		int octets = 0;
		for (int at = 0; at < text.length(); at += Character.charCount(text.codePointAt(at))) {
			int character = text.codePointAt(at);
			int more = octets(character);
			if (octets + more > LINE_OCTETS && character != '\r' && character != '\n') {
				folded.append(FOLD);
				octets = 1;
			}
			folded.appendCodePoint(character);
			octets = (character == '\n') ? 0 : (character == '\r') ? octets : octets + more;
		}
		return folded.toString();
	}

	/** Of a character in UTF-8. */
	private static int octets(int character) {
		return (character < 0x80) ? 1 : (character < 0x800) ? 2 : (character < 0x10000) ? 3 : 4;
	}

}
