package org.fallow.exchange.calendar;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;

import org.fallow.access.PersonId;
import org.fallow.rules.Intensity;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.Version;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.EnumSource.Mode;

import org.springframework.context.support.ResourceBundleMessageSource;

import static org.assertj.core.api.Assertions.assertThat;

/** A missing sentence throws here. */
class EventWordsTest {

	private static final LocalDate DAY = LocalDate.of(2026, 3, 19);

	private static final PersonId ANN = PersonId.next();

	private final EventWords words = new EventWords(messages(), Locale.ENGLISH);

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			textBlock = """
					NOT_ASSESSED  | KEY_SESSION | Easy run at most, 40 min       | Enter your morning first. Until then easy running at most, 40 minutes.
					EASY          | RACE        | Easy run, 40 min               | Easy running only, 40 minutes.
					STRIDES       | KEY_SESSION | Easy run with strides, 40 min  | Easy running with a few strides, 40 minutes.
					SHORTENED     | LONG_RUN    | Long run, shortened, 40 min    | Shortened to 40 minutes.
					AS_PROGRAMMED | EASY_RUN    | Easy run, 40 min               | As programmed, 40 minutes.
					AS_PROGRAMMED | TEST        | Test, 40 min                   | As programmed, 40 minutes.
					AS_PROGRAMMED | RACE        | Race, 40 min                   | As programmed, 40 minutes.
					""")
	void saysWhatToRun(Version version, PlannedSession.Kind kind, String title, String first) {
		CalendarEvent event = event(version, kind);
		assertThat(event.summary()).isEqualTo(title);
		assertThat(event.description().lines()).startsWith(first).contains("Main part: 40 min, Easy");
		assertThat(event.description()).endsWith("emergency services come first.").contains("check Fallow");
		assertThat(event.time()).isEqualTo(LocalTime.of(18, 30));
		assertThat(event.minutes()).isEqualTo(40);
		assertThat(event.place()).isEqualTo("Track");
	}

	/** The coach's words speak of the session as it was programmed. */
	@ParameterizedTest
	@EnumSource(value = Version.class, mode = Mode.EXCLUDE, names = { "CLINICIAN_FIRST", "REST" })
	void repeatsTheCoachWhereTheSessionIsStillThat(Version version) {
		boolean still = version == Version.AS_PROGRAMMED || version == Version.SHORTENED;
		assertThat(event(version, PlannedSession.Kind.KEY_SESSION).description().contains("Six hard ones"))
			.isEqualTo(still);
	}

	/** Whoever reads the calendar cannot tell a hold from a day off. */
	@Test
	void saysTheSameOfEveryRest() {
		CalendarEvent refer = nothing(Version.CLINICIAN_FIRST);
		assertThat(refer).isEqualTo(nothing(Version.REST));
		assertThat(refer.summary()).isEqualTo("Rest");
		assertThat(refer.time()).isNull();
		assertThat(refer.place()).isEmpty();
		assertThat(refer.description()).startsWith("No running.").contains("talk to your coach").doesNotContain("why");
	}

	@ParameterizedTest
	@EnumSource(value = Version.class, mode = Mode.EXCLUDE, names = { "CLINICIAN_FIRST", "REST" })
	void givesNoReason(Version version) {
		CalendarEvent event = event(version, PlannedSession.Kind.KEY_SESSION);
		assertThat(event.summary() + event.description()).doesNotContain("session.why", "77", "3.5");
	}

	@Test
	void speaksGermanToo() {
		PlannedSession session = session(PlannedSession.Kind.KEY_SESSION,
				List.of(new Part(Part.Role.BLOCK, 3, 1500, 400, Intensity.THRESHOLD, 90)));
		EventWords german = new EventWords(messages(), Locale.GERMAN);
		CalendarEvent event = german.session(ANN, "k",
				new ModifiedSession(session, Version.AS_PROGRAMMED, session, List.of(), null, null));
		assertThat(event.summary()).isEqualTo("Schlüsseleinheit, " + session.minutes() + " min");
		assertThat(event.description().lines()).contains("Hauptteil: 3 × 1.500 m mit 1 min 30 s dazwischen, Schwelle")
			.last()
			.asString()
			.contains("kein ärztlicher Rat", "Rettungsdienst");
		assertThat(event.uid())
			.isEqualTo(event(new ModifiedSession(session, Version.EASY, session, List.of(), null, null)).uid());
	}

	@Test
	void saysEveryPart() {
		PlannedSession session = session(PlannedSession.Kind.KEY_SESSION,
				List.of(Part.of(Part.Role.WARM_UP, 90, Intensity.EASY),
						new Part(Part.Role.BLOCK, 6, null, 20, Intensity.STRIDES, 0),
						new Part(Part.Role.BLOCK, 1, 1500, 400, Intensity.THRESHOLD, 0),
						new Part(Part.Role.BLOCK, 4, 200, 40, Intensity.ANAEROBIC, 120),
						Part.of(Part.Role.COOL_DOWN, 600, Intensity.STEADY)));
		assertThat(
				event(new ModifiedSession(session, Version.AS_PROGRAMMED, session, List.of(), null, null)).description()
					.lines())
			.contains("Warm-up: 1 min 30 s, Easy", "Main part: 6 × 20 s, Easy with strides",
					"Main part: 1,500 m, Threshold", "Main part: 4 × 200 m with 2 min between, Short and all-out",
					"Cool-down: 10 min, Steady");
	}

	private CalendarEvent event(Version version, PlannedSession.Kind kind) {
		PlannedSession session = session(kind, List.of(Part.of(Part.Role.BLOCK, 2400, Intensity.EASY)));
		return event(
				new ModifiedSession(session, version, session, List.of(Message.of("session.why.week", 77)), 3.5, 0.77));
	}

	private CalendarEvent nothing(Version version) {
		PlannedSession session = session(PlannedSession.Kind.RACE,
				List.of(Part.of(Part.Role.BLOCK, 2400, Intensity.RACE_PACE)));
		return event(new ModifiedSession(session, version, null, List.of(Message.of("session.why.ill")), null, null));
	}

	private CalendarEvent event(ModifiedSession session) {
		return this.words.session(ANN, "k", session);
	}

	private static PlannedSession session(PlannedSession.Kind kind, List<Part> parts) {
		return new PlannedSession("k", DAY, kind, PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "Track",
				"Six hard ones", parts);
	}

	private static ResourceBundleMessageSource messages() {
		ResourceBundleMessageSource messages = new ResourceBundleMessageSource();
		messages.setBasename("messages");
		messages.setDefaultEncoding("UTF-8");
		return messages;
	}

}
