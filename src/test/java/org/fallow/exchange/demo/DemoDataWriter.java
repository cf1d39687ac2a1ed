package org.fallow.exchange.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes the invented demo squad to {@code demo-data/}. Run by hand from the project's
 * folder after changing a story; the seeds are fixed, so that the same stories give the
 * same bytes:
 * {@code java -cp target/test-classes org.fallow.exchange.demo.DemoDataWriter}. The
 * season is 26 weeks; six days more are written, of which the loader keeps those up to
 * today.
 */
public final class DemoDataWriter {

	static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	static final LocalDate LAST_WRITTEN = LocalDate.of(2026, 7, 11);

	private static final List<String> EVENTS = List.of("person,recorded,day,kind,arg,value,note",
			"TR02,2026-07-02,2026-07-02,report,other,5,Flattened since last night",
			"TR03,2026-06-25,2026-06-25,report,fever,7,", "TR05,2026-04-09,2026-04-09,report,fever,8,",
			"TR06,2026-03-24,2026-03-24,clear,Full,,\"Dr Elspeth Invented, sports physician\"",
			"TR14,2026-05-11,2026-05-11,injury,,2026-06-07,Left calf", "TR19,2026-02-03,2026-02-03,report,above,2,",
			"TR21,2026-05-10,2026-05-16,holiday,,2026-05-24,");

	private DemoDataWriter() {
	}

	/**
	 * Writes the five files.
	 * @param arguments the folder; {@code demo-data} without one
	 * @throws IOException if a file cannot be written
	 */
	public static void main(String[] arguments) throws IOException {
		Path folder = Path.of((arguments.length > 0) ? arguments[0] : "demo-data");
		Files.createDirectories(folder);
		write(folder.resolve("people.csv"), people());
		write(folder.resolve("mornings.csv"), mornings());
		write(folder.resolve("sessions.csv"), sessions());
		write(folder.resolve("events.csv"), EVENTS);
		write(folder.resolve("programmes.csv"), DemoProgrammes.rows(FIRST));
	}

	private static List<String> people() {
		List<String> rows = new ArrayList<>();
		rows.add("code,name,birth_date,group,method,posture,story");
		for (DemoAthlete one : DemoCast.athletes()) {
			String story = one.story().contains(",") ? '"' + one.story() + '"' : one.story();
			rows.add(String.join(",", one.code(), one.name(), one.birthDate().toString(), one.group(), one.method(),
					one.posture(), story));
		}
		return rows;
	}

	private static List<String> mornings() {
		List<String> rows = new ArrayList<>();
		rows.add(DemoMornings.HEADER);
		DemoCast.athletes().forEach((one) -> rows.addAll(new DemoMornings(one).rows(FIRST, LAST_WRITTEN)));
		return rows;
	}

	private static List<String> sessions() {
		List<String> rows = new ArrayList<>();
		rows.add(DemoSessions.HEADER);
		DemoCast.athletes().forEach((one) -> rows.addAll(new DemoSessions(one).rows(FIRST, LAST_WRITTEN)));
		return rows;
	}

	private static void write(Path file, List<String> rows) throws IOException {
		Files.writeString(file, String.join("\n", rows) + "\n");
	}

}
