package org.fallow.assess;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.assess.BadInput.Place;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.Days;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Fact;
import org.fallow.entry.KnownCause;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.entry.Vaccination;
import org.fallow.exchange.csv.Codes;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.ReportKind;
import org.fallow.illness.core.SlipTerms;
import org.fallow.illness.core.Tick;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.fallow.rules.Clearance;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * One row of a file of events as a fact.
 */
final class EventRow {

	private static final int NOON = 12;

	private static final int RUN_MINUTES = 30;

	private static final int WORST = 10;

	/** What a row stands in for where the application asks for words. */
	private static final String FROM_FILE = "file";

	private static final String NO_COACH = "no_coach";

	private static final Set<EventKind> OF_COMING_DAYS = EnumSet.of(EventKind.CLEAR, EventKind.STRICTER,
			EventKind.KNOWN, EventKind.MED_ON, EventKind.MED_OFF);

	private final Path path;

	private final EventColumns columns;

	private final CsvRecord row;

	private final RuleBook book;

	EventRow(Path path, EventColumns columns, CsvRecord row, RuleBook book) {
		this.book = book;
		this.path = path;
		this.columns = columns;
		this.row = row;
	}

	Fact fact(int order) {
		if (this.row.getFieldCount() != this.columns.headers().size()) {
			throw BadInput.line(this.path, this.row.getStartingLineNumber(), "importRow.width",
					this.row.getFieldCount(), this.columns.headers().size());
		}
		EventKind kind = Codes.oneOf(EventKind.values(), text("kind"))
			.orElseThrow(() -> bad("kind", "assess.event.kind", EventKind.words()));
		LocalDate day = day("day").orElseThrow(() -> bad("day", "importRow.no-day"));
		LocalDate on = day("recorded").orElse(day);
		if (on.isBefore(day) && !OF_COMING_DAYS.contains(kind)) {
			throw bad("recorded", "assess.recorded.early", day);
		}
		Recorded recorded = MorningRow.recorded(on, NOON, order);
		return switch (kind) {
			case REPORT -> new IllnessEvent.Report(day, recorded, reportKind(), worst(), null);
			case RUN -> run(day, recorded, order);
			case HOLD -> new IllnessEvent.Hold(day, recorded, FROM_FILE);
			case CLEAR -> cleared(day, recorded);
			case WITHDRAW -> new IllnessEvent.Withdrawal(day, recorded, FROM_FILE);
			case STRICTER ->
				new IllnessEvent.Stricter(day, until(day).orElse(day), recorded, ceiling(), FROM_FILE, key(day), null);
			case LIFT -> new IllnessEvent.Lifted(day, recorded,
					key(day("value").orElseThrow(() -> bad("value", "assess.event.lift"))), FROM_FILE, null);
			case SAID -> said(day, recorded);
			case SYMPTOMS_ONLY -> new IllnessEvent.SymptomsOnly(day, recorded, FROM_FILE);
			case MED_ON -> new MedicineChange(day, recorded, true);
			case MED_OFF -> new MedicineChange(day, recorded, false);
			case KNOWN -> known(day, recorded);
			case VACCINATION -> new Vaccination(day, recorded);
			case DEVICE -> deviceChange(day, recorded);
			case SLIP -> slip(day, recorded);
			case ASKED -> new IllnessEvent.Asked(day, recorded, FROM_FILE);
		};
	}

	private ReportKind reportKind() {
		return text("arg").equalsIgnoreCase("above") ? ReportKind.ABOVE_NECK
				: Codes.oneOf(ReportKind.values(), text("arg"))
					.orElseThrow(() -> bad("arg", "assess.event.report", "above, " + words(ReportKind.values())));
	}

	private @Nullable Integer worst() {
		String text = text("value");
		if (text.isEmpty()) {
			return null;
		}
		if (!text.matches("\\d{1,2}") || Integer.parseInt(text) > WORST) {
			throw bad("value", "assess.event.worst");
		}
		return Integer.valueOf(text);
	}

	/**
	 * A run of half an hour. What is no word of the list is a yes in free words, which
	 * shuts the next gate; a red flag that the list does not have is refused, for a yes
	 * in free words would open no hold.
	 */
	private SessionLog run(LocalDate day, Recorded recorded, int order) {
		return new SessionLog(String.valueOf(order), day, recorded, Activity.RUN, RUN_MINUTES, null, null,
				text("arg").isEmpty() ? List.of() : List.of(afterSession(text("arg"))), false, null);
	}

	private AfterSession afterSession(String text) {
		Optional<Symptom> redFlag = Codes.symptom(text).filter(Symptom::isRedFlag);
		Optional<AfterSession> listed = Codes.oneOf(AfterSession.values(), redFlag.map(Symptom::name).orElse(text));
		if (redFlag.isPresent() && listed.isEmpty()) {
			throw bad("arg", "assess.event.red-flag");
		}
		return listed.orElse(AfterSession.OTHER);
	}

	private IllnessEvent.Cleared cleared(LocalDate day, Recorded recorded) {
		if (day.isBefore(recorded.on())) {
			throw bad("day", "assess.event.back-dated", recorded.on());
		}
		ClearanceWords words = ClearanceWords.of(text("arg"), recorded.on());
		if (words == null) {
			boolean known = ClearanceWords.ceiling(text("arg").split(" ")[0]) != null;
			throw bad("arg", known ? "assess.event.clear" : "assess.event.ceiling");
		}
		LocalDate until = words.until(day, until(day).orElse(null), rules(recorded).words().toldByAthleteDays());
		try {
			return new IllnessEvent.Cleared(day, until, recorded, words.ceiling(), FROM_FILE, FROM_FILE, null,
					words.word());
		}
		catch (IllegalArgumentException ex) {
			throw bad("arg", "assess.event.clear");
		}
	}

	private RuleSet rules(Recorded recorded) {
		return this.book.on(recorded.on()).rules();
	}

	/** Names a ceiling of a file: its first day and what it allows. */
	private String key(LocalDate first) {
		return first + " " + ceiling();
	}

	private IllnessEvent.SaidToday said(LocalDate day, Recorded recorded) {
		List<String> words = List.of(text("arg").toLowerCase(Locale.ROOT).split(" +"));
		if (!Set.of("able", "eating").containsAll(words) || !recorded.on().equals(day)) {
			throw bad("arg", "assess.event.said");
		}
		return new IllnessEvent.SaidToday(day, recorded, words.contains("able"), words.contains("eating"), FROM_FILE);
	}

	private Optional<LocalDate> until(LocalDate day) {
		Optional<LocalDate> until = day("value");
		if (until.isPresent() && until.get().isBefore(day)) {
			throw bad("value", "entry.until.order");
		}
		return until;
	}

	private Clearance ceiling() {
		Clearance ceiling = ClearanceWords.ceiling(text("arg"));
		if (ceiling == null) {
			throw bad("arg", "assess.event.ceiling");
		}
		return ceiling;
	}

	private DeviceChange deviceChange(LocalDate day, Recorded recorded) {
		DeviceChange.What what = Codes.oneOf(DeviceChange.What.values(), text("arg"))
			.orElseThrow(() -> bad("arg", "assess.event.device", words(DeviceChange.What.values())));
		Method method = text("value").isEmpty() ? null
				: Codes.method(text("value")).orElseThrow(() -> bad("value", "assess.event.method"));
		return new DeviceChange(day, recorded, what, method);
	}

	/** The word of a clinician, where one is needed, is taken as given. */
	private KnownSymptom known(LocalDate day, Recorded recorded) {
		String[] said = text("arg").split(" ", 2);
		Optional<KnownCause> named = Codes.oneOf(KnownCause.values(), said[0]);
		String code = (named.isPresent() && said.length > 1) ? said[1] : text("arg");
		Symptom symptom = Codes.symptom(code).orElseThrow(() -> bad("arg", "assess.event.known"));
		Severity severity = Codes.oneOf(Severity.values(), text("value"))
			.orElseThrow(() -> bad("value", "assess.event.severity"));
		KnownCause cause = named.orElse(KnownCause.usual(symptom, severity));
		if (!cause.allows(symptom, severity)) {
			throw bad("arg", "assess.event.known");
		}
		return new KnownSymptom(day, day.plusDays(rules(recorded).told().knownDays() - 1L), recorded, symptom, severity,
				cause, cause.needsAWord() ? FROM_FILE : null);
	}

	/**
	 * A slip as somebody checked it; one in an open episode is written only if a coach
	 * accepted it that day.
	 */
	private IllnessEvent.Slip slip(LocalDate day, Recorded recorded) {
		if (!day.equals(recorded.on())) {
			throw bad("recorded", "assess.event.slip-day");
		}
		Symptom symptom = Codes.symptom(text("arg"))
			.filter((one) -> !one.isInOwnWords())
			.orElseThrow(() -> bad("arg", "assess.event.slip"));
		boolean alone = text("value").equalsIgnoreCase(NO_COACH);
		if (!alone && !text("value").isEmpty()) {
			throw bad("value", "assess.event.slip-value", NO_COACH);
		}
		SlipTerms ofARedFlag = alone ? SlipTerms.UNTIL_ENTRIES : SlipTerms.UNTIL_ASKED;
		return new IllnessEvent.Slip(day, recorded, Tick.of(symptom),
				symptom.isRedFlag() ? ofARedFlag : SlipTerms.AT_ONCE);
	}

	private Optional<LocalDate> day(String column) {
		String text = text(column);
		if (text.isEmpty()) {
			return Optional.empty();
		}
		try {
			LocalDate day = LocalDate.parse(text);
			if (day.isBefore(Days.EARLIEST)) {
				throw bad(column, "entry.day.too-old", day, Days.EARLIEST);
			}
			if (day.isAfter(MorningPeople.LATEST)) {
				throw bad(column, "assess.day.late", MorningPeople.LATEST);
			}
			return Optional.of(day);
		}
		catch (DateTimeException ex) {
			throw bad(column, "importRow.no-date");
		}
	}

	private String text(String column) {
		return this.columns.text(this.row, column);
	}

	private BadInput bad(String column, String code, Object... arguments) {
		return new BadInput(
				new Place(this.path, this.row.getStartingLineNumber(), this.columns.header(column), text(column)),
				Message.of(code, arguments));
	}

	static String words(Enum<?>[] values) {
		StringBuilder words = new StringBuilder();
		for (Enum<?> value : values) {
			words.append(words.isEmpty() ? "" : ", ").append(value.name().toLowerCase(Locale.ROOT));
		}
		return words.toString();
	}

}
