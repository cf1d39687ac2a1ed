package org.fallow.exchange.calendar;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;

import biweekly.Biweekly;
import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What is written, against RFC 5545 and, where it says so, as another library reads it.
 */
class CalendarTextTest {

	private static final Instant CHANGED = Instant.parse("2026-03-16T07:00:00Z");

	private static final LocalDate DAY = LocalDate.of(2026, 3, 19);

	/** RFC 5545, 3.3.11: backslash, semicolon, comma and line feed are escaped. */
	@Test
	void escapesText() {
		String text = write(timed("Gelände; Süd, hinter \\ dem Café\nTor 2"));
		assertThat(unfolded(text)).contains("LOCATION:Gelände\\; Süd\\, hinter \\\\ dem Café\\nTor 2\r\n");
	}

	@ParameterizedTest
	@ValueSource(strings = { "Track", "Gelände; Süd, hinter \\ dem Café\nTor 2", "a\\nb", "\"quoted\": x=y", "\\,\\;",
			"ääääääääääääääääääääääääääääääääääääääääääääääääääääääääääääääää",
			"🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃🏃",
			"   two  blanks   and a very long line of words that has to be folded   somewhere   in   its   middle   x" })
	void isReadBackByAnotherLibrary(String place) {
		String text = write(timed(place));
		ICalendar calendar = Biweekly.parse(text).first();
		VEvent event = calendar.getEvents().get(0);
		assertThat(event.getLocation().getValue()).isEqualTo(place);
		assertThat(event.getSummary().getValue()).isEqualTo("Easy run, 40 min");
		assertThat(event.getSequence().getValue()).isEqualTo(3);
		assertThat(calendar.validate(ICalVersion.V2_0).getWarnings()).isEmpty();
	}

	/** RFC 5545, 3.1: lines end with CRLF and have 75 octets at most. */
	@Test
	void foldsByOctetsAndKeepsCharactersWhole() {
		String text = write(timed("ä🏃é".repeat(60)));
		assertThat(text).endsWith("\r\n").doesNotContainPattern("(?<!\r)\n");
		List<String> lines = List.of(text.split("\r\n"));
		assertThat(lines).allSatisfy((line) -> {
			byte[] octets = line.getBytes(StandardCharsets.UTF_8);
			assertThat(octets).hasSizeLessThanOrEqualTo(75);
			assertThat(line).doesNotContain("?").matches((one) -> !Character.isLowSurrogate(one.charAt(0)));
		});
		assertThat(lines).anyMatch((line) -> line.getBytes(StandardCharsets.UTF_8).length > 70);
	}

	@ParameterizedTest
	@ValueSource(ints = { 74, 75, 76, 149, 150 })
	void foldsAtTheEdge(int length) {
		String line = "x".repeat(length);
		String folded = CalendarText.folded(line + "\r\ny\r\n");
		assertThat(folded.replace("\r\n ", "")).isEqualTo(line + "\r\ny\r\n");
		assertThat(folded.split("\r\n ")).hasSize((length <= 75) ? 1 : (length <= 149) ? 2 : 3);
	}

	/** RFC 5545, 3.3.5, form 1: without Z and without TZID. */
	@Test
	void writesTimesWithoutAZone() {
		String text = write(timed("Track"));
		assertThat(text).contains("DTSTART:20260319T183000\r\n", "DTEND:20260319T191000\r\n", "TRANSP:OPAQUE\r\n")
			.doesNotContain("TZID", "VTIMEZONE");
	}

	@Test
	void writesWholeDays() {
		String text = write(
				new SentEvent(new CalendarEvent("u@fallow", DAY, null, 40, "Easy run", "x", ""), 0, false, CHANGED));
		assertThat(text).contains("DTSTART;VALUE=DATE:20260319\r\n", "TRANSP:TRANSPARENT\r\n")
			.doesNotContain("DTEND", "LOCATION");
	}

	@Test
	void writesWhatIsCancelled() {
		SentEvent sent = timed("Track");
		String text = write(new SentEvent(sent.event(), 4, true, CHANGED));
		assertThat(text).contains("STATUS:CANCELLED\r\n", "SEQUENCE:4\r\n", "DTSTAMP:20260316T070000Z\r\n")
			.doesNotContain("CONFIRMED", "METHOD");
	}

	/** RFC 7986, 5.7: the value's type has to be named. */
	@Test
	void saysHowOftenToAskEvenWhenEmpty() {
		String text = CalendarText.write("Training", List.of());
		assertThat(text).startsWith("BEGIN:VCALENDAR\r\n").contains("REFRESH-INTERVAL;VALUE=DURATION:PT1H\r\n");
		assertThat(Biweekly.parse(text).first().getEvents()).isEmpty();
	}

	private static SentEvent timed(String place) {
		return new SentEvent(new CalendarEvent("u@fallow", DAY, LocalTime.of(18, 30), 40, "Easy run, 40 min",
				"Easy running only, 40 minutes.\nA second line.", place), 3, false, CHANGED);
	}

	private static String write(SentEvent event) {
		return CalendarText.write("Training", List.of(event));
	}

	private static String unfolded(String text) {
		return text.replace("\r\n ", "");
	}

}
