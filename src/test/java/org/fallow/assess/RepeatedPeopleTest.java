package org.fallow.assess;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.MorningFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

/** Finding who comes again without remembering everybody. */
class RepeatedPeopleTest {

	@TempDir
	private Path folder;

	@Test
	void remembersEverybodyAndHardlyTakesAnybodyForAnother() {
		SeenPeople seen = new SeenPeople();
		int mistaken = 0;
		for (int i = 0; i < 200_000; i++) {
			mistaken += seen.add("P" + i) ? 1 : 0;
		}
		assertThat(mistaken).isLessThan(5);
		for (int i = 0; i < 200_000; i++) {
			assertThat(seen.add("P" + i)).isTrue();
		}
	}

	/**
	 * With a memory that takes everybody for somebody met, the file has the last word.
	 */
	@Test
	void looksForSuspectsInTheFile() throws IOException {
		RepeatedPeople people = metIn("A,2026-01-01,50\nB,2026-01-01,50\nC,2026-01-01,50\n");
		people.meet("A", 2);
		people.meet("B", 3);
		people.meet("C", 4);
		assertThatCode(people::confirm).doesNotThrowAnyException();
	}

	@Test
	void findsWhoComesAgainWhileStillASuspect() throws IOException {
		RepeatedPeople people = metIn("A,2026-01-01,50\nB,2026-01-01,50\nA,2026-01-02,50\n");
		people.meet("A", 2);
		people.meet("B", 3);
		assertThatThrownBy(() -> people.meet("A", 4)).isInstanceOfSatisfying(BadInput.class,
				(bad) -> assertThat(bad.place().line()).isEqualTo(4));
	}

	@Test
	void findsWhoComesAgainAfterHavingBeenClearedOfIt() throws IOException {
		RepeatedPeople people = metIn("A,2026-01-01,50\nB,2026-01-01,50\nA,2026-01-02,50\n");
		people.meet("A", 2);
		people.meet("B", 3);
		people.confirm();
		people.meet("A", 4);
		assertThatThrownBy(people::confirm).isInstanceOfSatisfying(BadInput.class,
				(bad) -> assertThat(bad.place().line()).isEqualTo(4));
	}

	private RepeatedPeople metIn(String rows) throws IOException {
		Path path = Files.writeString(this.folder.resolve("mornings.csv"), "person,date,rhr_bpm\n" + rows);
		CsvFile file = CsvFile.open(path);
		MorningFile reader = new ColumnChoice(Map.of(), Method.OTHER, Posture.LYING).of(file);
		return new RepeatedPeople(file, reader, (person) -> true);
	}

}
