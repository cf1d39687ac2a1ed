package org.fallow.exchange.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Predicate;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import org.fallow.exchange.csv.ProgrammeFile;
import org.fallow.rules.Intensity;
import org.fallow.training.core.ProgrammeWeek;
import org.jspecify.annotations.Nullable;

/**
 * The files of demo-data on the class path, with every day moved by whole weeks.
 *
 * @param weeks by how many weeks the days move
 * @param last last day taken, inclusive; later rows are left out
 */
record DemoFiles(long weeks, LocalDate last) {

	/** The Sunday on which the written season ends. */
	static final LocalDate SEASON_END = LocalDate.of(2026, 7, 5);

	private static final List<String> PROGRAMME = List.of("week", "day", "session", "terrain", "time", "place", "name",
			"parts");

	/** The last day the files hold. */
	static final LocalDate LAST_WRITTEN = SEASON_END.plusDays(6);

	/**
	 * The files as they are written.
	 * @return files of which no day is moved
	 */
	static DemoFiles unmoved() {
		return new DemoFiles(0, LAST_WRITTEN);
	}

	/**
	 * The files moved so that the season ends now.
	 * @param today the last day wanted
	 * @return files whose season ends on the latest Sunday that is not after today
	 */
	static DemoFiles endingOn(LocalDate today) {
		LocalDate sunday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.SUNDAY));
		return new DemoFiles(ChronoUnit.WEEKS.between(SEASON_END, sunday), today);
	}

	List<DemoPerson> people() {
		return read("people.csv", (row) -> true, (row) -> new DemoPerson(row.getField("code"), row.getField("name"),
				moved(row.getField("birth_date")), row.getField("group")));
	}

	/**
	 * Sessions of the days before the last one, which is still morning.
	 * @return in the order of the file
	 */
	List<DemoSession> sessions() {
		return read("sessions.csv", (row) -> moved(row.getField("day")).isBefore(this.last),
				(row) -> new DemoSession(row.getField("person"), moved(row.getField("recorded")),
						moved(row.getField("day")), Integer.parseInt(row.getField("minutes")),
						Double.parseDouble(row.getField("rpe")),
						Intensity.valueOf(row.getField("intensity").toUpperCase(Locale.ROOT))));
	}

	List<DemoEvent> events() {
		return read("events.csv", (row) -> !moved(row.getField("recorded")).isAfter(this.last), this::event);
	}

	/**
	 * The programmes of the groups, with the weeks ahead.
	 * @param group the group's name
	 * @return the rows as a file of its own, days moved
	 */
	List<ProgrammeWeek> programme(String group) {
		StringWriter text = new StringWriter();
		try (CsvWriter csv = CsvWriter.builder().build(text)) {
			csv.writeRecord(PROGRAMME);
			read("programmes.csv", (row) -> row.getField("group").equals(group), this::programmeRow)
				.forEach(csv::writeRecord);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
		ProgrammeFile.Result result = ProgrammeFile.read(text.toString());
		if (!result.problems().isEmpty()) {
			throw new IllegalStateException("the demo's programme cannot be read: " + result.problems());
		}
		return result.weeks();
	}

	private List<String> programmeRow(NamedCsvRecord row) {
		return PROGRAMME.stream()
			.map((name) -> name.equals("day") ? moved(row.getField(name)).toString() : row.getField(name))
			.toList();
	}

	private DemoEvent event(NamedCsvRecord row) {
		String value = row.getField("value");
		boolean number = row.getField("kind").equals("report");
		return new DemoEvent(row.getField("person"), moved(row.getField("recorded")), moved(row.getField("day")),
				row.getField("kind"), row.getField("arg"), (number && !value.isEmpty()) ? Integer.valueOf(value) : null,
				(number || value.isEmpty()) ? null : moved(value), row.getField("note"));
	}

	/**
	 * Writes the moved mornings as a file the importer can read.
	 * @param to where to
	 */
	void writeMornings(Path to) {
		try (InputStream in = open("mornings.csv");
				CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(in, StandardCharsets.UTF_8);
				CsvWriter out = CsvWriter.builder().build(to, StandardCharsets.UTF_8)) {
			List<String> header = null;
			for (NamedCsvRecord row : csv) {
				if (header == null) {
					header = row.getHeader();
					out.writeRecord(header);
				}
				LocalDate day = moved(row.getField("date"));
				if (!day.isAfter(this.last)) {
					out.writeRecord(row.getHeader()
						.stream()
						.map((name) -> name.equals("date") ? day.toString() : row.getField(name))
						.toList());
				}
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private LocalDate moved(String day) {
		return LocalDate.parse(day).plusWeeks(this.weeks);
	}

	private static <T> List<T> read(String name, Predicate<NamedCsvRecord> wanted, Function<NamedCsvRecord, T> parser) {
		try (InputStream in = open(name);
				CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(in, StandardCharsets.UTF_8)) {
			return csv.stream().filter(wanted).map(parser).toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static InputStream open(String name) {
		@Nullable InputStream in = DemoFiles.class.getResourceAsStream("/demo-data/" + name);
		if (in == null) {
			throw new IllegalStateException("demo-data/" + name + " is not on the class path");
		}
		return in;
	}

}
