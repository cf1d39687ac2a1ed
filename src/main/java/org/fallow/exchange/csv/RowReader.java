package org.fallow.exchange.csv;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Days;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.Severity;
import org.fallow.entry.Words;
import org.fallow.team.NameKey;
import org.fallow.team.NewAthlete;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * Reads one row, finding all that is wrong with it.
 */
final class RowReader {

	private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,6}(\\.\\d{1,9})?");

	private static final Pattern WITH_COMMA = Pattern.compile("[+-]?\\d{1,6},\\d{1,9}");

	private static final double LOWEST_RMSSD = 0.001;

	private static final Set<ImportField> ABOUT_THE_ROW = EnumSet.of(ImportField.PERSON, ImportField.DAY,
			ImportField.RECORDED, ImportField.METHOD, ImportField.POSTURE, ImportField.UNSURE, ImportField.GROUP,
			ImportField.BIRTH_DATE);

	private final ColumnMapping mapping;

	private final List<String> row;

	private final long line;

	private final LocalDate today;

	private final List<RowProblem> problems = new ArrayList<>();

	private RowReader(ColumnMapping mapping, List<String> row, long line, LocalDate today) {
		this.mapping = mapping;
		this.row = row;
		this.line = line;
		this.today = today;
	}

	static ReadRow read(ColumnMapping mapping, List<String> row, long line, LocalDate today) {
		return new RowReader(mapping, row, line, today).read();
	}

	private ReadRow read() {
		String person = person();
		LocalDate day = day(ImportField.DAY, Days.EARLIEST);
		LocalDate birthDate = day(ImportField.BIRTH_DATE, LocalDate.of(1900, 1, 1));
		LocalDate recorded = day(ImportField.RECORDED, Days.EARLIEST);
		String group = text(ImportField.GROUP);
		if (group.length() > NewAthlete.LONGEST_NAME) {
			refuse(ImportField.GROUP, Message.of("name.length", NewAthlete.LONGEST_NAME));
		}
		checkContent();
		NewMorning morning = morning((day != null) ? day : this.today, recorded);
		boolean good = this.problems.isEmpty();
		return new ReadRow(this.line, person, group.isEmpty() ? null : group, birthDate, good ? morning : null,
				this.problems);
	}

	private NewMorning morning(LocalDate day, @Nullable LocalDate recorded) {
		Double rhr = number(ImportField.RHR, "entry.rhr.range", MorningEntry.LOWEST_RHR, MorningEntry.HIGHEST_RHR);
		Double rmssd = number(ImportField.RMSSD, "entry.rmssd.range", LOWEST_RMSSD, MorningEntry.HIGHEST_RMSSD);
		boolean measured = !text(ImportField.RHR).isEmpty() || !text(ImportField.RMSSD).isEmpty();
		Method method = code(ImportField.METHOD, Codes::method, this.mapping.method());
		Posture posture = code(ImportField.POSTURE, (text) -> Codes.oneOf(Posture.values(), text),
				this.mapping.posture());
		if (measured && method == null && text(ImportField.METHOD).isEmpty()) {
			refuse(ImportField.METHOD, Message.of("entry.method.missing"));
		}
		if (measured && posture == null && text(ImportField.POSTURE).isEmpty()) {
			refuse(ImportField.POSTURE, Message.of("entry.posture.missing"));
		}
		return new NewMorning(day, 0, measured ? method : null, measured ? posture : null, rhr, rmssd, List.of(),
				Boolean.TRUE.equals(yesOrNo(ImportField.UNSURE)),
				number(ImportField.TEMPERATURE, "entry.temperature.range", 30, 45),
				Codes.symptoms(words(ImportField.SYMPTOMS)), Boolean.TRUE.equals(yesOrNo(ImportField.FEVER)),
				Objects.requireNonNullElse(
						code(ImportField.FEVER_MEDICINE, (text) -> Codes.oneOf(FeverMedicine.values(), text), null),
						FeverMedicine.NONE),
				yesOrNo(ImportField.EATING_NORMALLY),
				code(ImportField.FEELS, (text) -> Codes.oneOf(Feels.values(), text), null),
				code(ImportField.SORENESS, (text) -> Codes.oneOf(Severity.values(), text), null), tags(), note(),
				recorded, meanwhile());
	}

	private String person() {
		String person = text(ImportField.PERSON);
		if (NameKey.of(person).isEmpty()) {
			refuse(ImportField.PERSON, Message.of("importRow.no-person"));
		}
		else if (person.length() > NewAthlete.LONGEST_NAME) {
			refuse(ImportField.PERSON, Message.of("name.length", NewAthlete.LONGEST_NAME));
		}
		else if (NameKey.hasControl(NameKey.cleaned(person))) {
			refuse(ImportField.PERSON, Message.of("name.control"));
		}
		return person;
	}

	private @Nullable LocalDate day(ImportField field, LocalDate earliest) {
		String text = text(field);
		if (text.isEmpty()) {
			if (field == ImportField.DAY) {
				refuse(field, Message.of("importRow.no-day"));
			}
			return null;
		}
		try {
			LocalDate day = LocalDate.parse(text);
			if (day.isAfter(this.today)) {
				refuse(field, Message.of("entry.day.future", day, this.today));
			}
			else if (day.isBefore(earliest)) {
				refuse(field, Message.of("entry.day.too-old", day, earliest));
			}
			return day;
		}
		catch (DateTimeException ex) {
			refuse(field, Message.of("importRow.no-date"));
			return null;
		}
	}

	private void checkContent() {
		boolean nothing = EnumSet.complementOf(EnumSet.copyOf(ABOUT_THE_ROW))
			.stream()
			.allMatch((field) -> text(field).isEmpty());
		if (nothing) {
			this.problems.add(RowProblem.refused(this.line, null, null, Message.of("importRow.nothing")));
		}
	}

	private @Nullable Double number(ImportField field, String rangeCode, double lowest, double highest) {
		String text = text(field);
		if (text.isEmpty()) {
			return null;
		}
		if (!NUMBER.matcher(text).matches()) {
			boolean comma = WITH_COMMA.matcher(text).matches();
			refuse(field, Message.of(comma ? "importRow.decimal-comma" : "importRow.no-number"));
			return null;
		}
		double value = Double.parseDouble(text);
		if (value < lowest || value > highest) {
			refuse(field, Message.of(rangeCode, lowest, highest));
		}
		return value;
	}

	private @Nullable Boolean yesOrNo(ImportField field) {
		return switch (text(field).toLowerCase(Locale.ROOT)) {
			case "" -> null;
			case "1", "1.0", "yes", "true" -> Boolean.TRUE;
			case "0", "0.0", "no", "false" -> Boolean.FALSE;
			default -> {
				refuse(field, Message.of("importRow.no-yes-or-no"));
				yield null;
			}
		};
	}

	private <E> @Nullable E code(ImportField field, Function<String, Optional<E>> parser, @Nullable E otherwise) {
		String text = text(field);
		if (text.isEmpty()) {
			return otherwise;
		}
		Optional<E> value = parser.apply(text);
		if (value.isEmpty()) {
			refuse(field, Message.of("importRow.unknown-word"));
		}
		return value.orElse(null);
	}

	/** A file that cannot tell is taken as no; an empty cell is not answered. */
	private @Nullable Meanwhile meanwhile() {
		if (!this.mapping.columns().containsKey(ImportField.MEANWHILE)) {
			return Meanwhile.NO;
		}
		String text = text(ImportField.MEANWHILE);
		if (text.matches("\\d{4}-\\d{2}-\\d{2}")) {
			return Meanwhile.ill(day(ImportField.MEANWHILE, Days.EARLIEST));
		}
		Boolean ill = yesOrNo(ImportField.MEANWHILE);
		return (ill == null) ? null : new Meanwhile(ill, null);
	}

	private List<ContextTag> tags() {
		EnumSet<ContextTag> tags = EnumSet.noneOf(ContextTag.class);
		for (String part : Codes.parts(text(ImportField.TAGS))) {
			Optional<ContextTag> tag = Codes.oneOf(ContextTag.values(), part);
			if (tag.isEmpty()) {
				refuse(ImportField.TAGS, Message.of("importRow.unknown-word"));
			}
			tag.ifPresent(tags::add);
		}
		return List.copyOf(tags);
	}

	private @Nullable String note() {
		String note = words(ImportField.NOTE);
		return note.isEmpty() ? null : note;
	}

	private String words(ImportField field) {
		String words = text(field);
		if (words.length() > Words.LONGEST) {
			refuse(field, Message.of("entry.words.long", Words.LONGEST));
		}
		return words;
	}

	private String text(ImportField field) {
		return this.mapping.text(this.row, field);
	}

	private void refuse(ImportField field, Message reason) {
		this.problems.add(RowProblem.refused(this.line, field, text(field), reason));
	}

}
