package org.fallow.assess;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

/** Events beside the mornings. */
class EventsTest {

	private static final String EVENTS = "person,recorded,day,kind,arg,value\n";

	@TempDir
	private Path folder;

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			A,,2026-01-02,report,above,3        | ,Rest,ill,
			A,,2026-01-02,report,myocarditis,   | ,Refer,,,hold; ill,,long,
			A,,2026-01-02,hold,,                | ,Refer,,,hold; ill,,three,
			A,,2026-01-02,run,breathless,       | ,Refer,,,
			A,,2026-01-02,run,chest_pain,       | ,Refer,,,
			A,,2026-01-02,run,dark_urine,       | ,Refer,,,
			A,,2026-01-02,run,seizure,          | ,Refer,,,
			A,,2026-01-02,clear,Full no_illness palpitations:mild, | ,Full,
			A,,2026-01-02,clear,Easy athlete,   | ,Easy,
			A,,2026-01-02,said,able eating,     | ,Full,
			A,,2026-01-02,lift,Easy,2026-01-01  | ,Full,
			A,,2026-01-02,run,odd feeling,      | ,Full,
			A,,2026-01-02,stricter,Easy,        | ,Easy,
			A,2026-01-01,2026-01-02,stricter,rest,2026-01-03 | ,Rest,
			A,2026-01-01,2026-01-02,clear,Easy,2026-01-03 | ,Easy,
			A,2026-01-02,2026-01-01,report,covid, | ,Rest,ill,
			A,,2026-01-02,withdraw,,            | ,Full,
			A,,2026-01-02,symptoms_only,,       | ,Full,
			A,,2026-01-02,med_on,,              | ,Full,
			A,,2026-01-02,med_off,,             | ,Full,
			A,,2026-01-02,known,sneezing,mild   | ,Full,
			A,,2026-01-02,slip,chest_pain,      | ,Easy,
			A,,2026-01-02,slip,chest_pain,no_coach | ,Easy,
			A,,2026-01-02,slip,sneezing,        | ,Easy,
			A,,2026-01-02,asked,,               | ,Full,
			A,,2026-01-02,again,strap,57        | ,Easy,
			A,,2026-01-02,count,count_60,124    | ,Refer,
			A,,2026-01-02,count,count_30 sitting,60 | ,Full,
			A,,2026-01-02,figure,strap,110      | ,Full,
			A,,2026-01-02,figure,strap standing, | ,Full,
			""")
	void decidesWithEveryKindOfEvent(String event, String expected) throws IOException {
		Ran ran = assess(EVENTS + event + "\n");
		assertThat(ran.code()).as(ran.said()).isZero();
		assertThat(Files.readAllLines(out()).get(2)).startsWith("A,2026-01-02").contains(expected);
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', textBlock = """
			A,,2026-01-02,party,,                     | kind     | party
			A,,2026-01-02,again,sleep,57              | arg      | sleep
			A,,2026-01-02,again,strap sitting,57      | arg      | strap sitting
			A,,2026-01-02,again,strap,                | value    |
			A,,2026-01-02,again,strap,19.9            | value    | 19.9
			A,2026-01-03,2026-01-02,again,strap,57    | recorded | 2026-01-03
			A,,2026-01-02,count,strap,60              | arg      | strap
			A,,2026-01-02,figure,strap,119.5          | value    | 119.5
			A,,2026-01-02,figure,strap flying,110     | arg      | strap flying
			A,,2026-01-02,report,malaria,             | arg      | malaria
			A,,2026-01-02,report,covid,11             | value    | 11
			A,,2026-01-02,report,covid,NaN            | value    | NaN
			A,,2026-01-02,report,covid,-1             | value    | -1
			A,2026-01-01,2026-01-02,report,covid,     | recorded | 2026-01-01
			A,2026-01-01,2026-01-02,run,,             | recorded | 2026-01-01
			A,,2026-01-02,run,stiff_neck,             | arg      | stiff_neck
			A,,2026-01-02,clear,Easy no_illness,      | arg      | Easy no_illness
			A,,2026-01-02,clear,Full no_illness,2026-01-09 | arg | Full no_illness
			A,,2026-01-02,clear,Full fainting:mild,   | arg      | Full fainting:mild
			A,,2026-01-02,clear,Full palpitations,    | arg      | Full palpitations
			A,,2026-01-02,clear,Full athlete,         | arg      | Full athlete
			A,,2026-01-02,clear,Easy athlete,2026-01-16 | arg    | Easy athlete
			A,,2026-01-02,lift,Easy,                  | value    |
			A,,2026-01-02,lift,Everything,2026-01-01  | arg      | Everything
			A,,2026-01-02,said,happy,                 | arg      | happy
			A,2026-01-03,2026-01-02,said,able,        | arg      | able
			A,2026-01-03,2026-01-02,clear,Full,       | day      | 2026-01-02
			A,,2026-01-02,clear,Everything,           | arg      | Everything
			A,,2026-01-02,clear,Full,2026-01-01       | value    | 2026-01-01
			A,,2026-01-02,known,chest_pain,mild       | arg      | chest_pain
			A,,2026-01-02,known,cough,               | value    |
			A,,2026-01-02,slip,other,                | arg      | other
			A,,2026-01-02,slip,headaches,            | arg      | headaches
			A,,2026-01-02,slip,cough,soon            | value    | soon
			A,2026-01-03,2026-01-02,slip,cough,      | recorded | 2026-01-03
			A,,,hold,,                                | day      |
			A,,yesterday,hold,,                       | day      | yesterday
			A,,1726-01-01,hold,,                      | day      | 1726-01-01
			A,,2026-01-02,med_on,,                    | day      |
			,,2026-01-02,hold,,                       | person   |
			C,,2026-01-02,hold,,                      | person   | C
			B,,2026-01-02,hold,,/A,,2026-01-02,hold,, | person   | A
			A,,2026-01-02,hold,,/B,,2026-01-02,hold,,/A,,2026-01-02,hold,, | person | A
			A,,2026-01-02,hold                        | columns  |
			""")
	void refusesAnEventThatCannotBe(String events, String column, String value) {
		String text = events.replace('/', '\n');
		if (text.contains("med_on")) {
			text = text.replace("2026-01-02", "2100-01-01");
		}
		Ran ran = assess(EVENTS + text + "\n");
		assertThat(ran.code()).as(ran.said()).isEqualTo(AssessCommand.BAD_INPUT);
		assertThat(ran.said()).contains("events.csv", "line " + (text.lines().count() + 1), column,
				(value == null) ? "" : value);
		assertThat(out()).doesNotExist();
	}

	@Test
	void liftsTheCeilingNamed() throws IOException {
		Ran ran = assess(EVENTS + "A,2026-01-01,2026-01-01,stricter,Easy,2026-01-02\n"
				+ "A,2026-01-01,2026-01-01,stricter,Rest,2026-01-02\nA,,2026-01-02,lift,Rest,2026-01-01\n");
		assertThat(ran.code()).as(ran.said()).isZero();
		assertThat(Files.readAllLines(out()).get(1)).contains(",Rest,");
		assertThat(Files.readAllLines(out()).get(2)).contains(",Easy,");
	}

	@Test
	void needsTheColumnsOfEvents() {
		Ran ran = assess("person,day,arg\nA,2026-01-02,covid\n");
		assertThat(ran.code()).isEqualTo(AssessCommand.BAD_INPUT);
		assertThat(ran.said()).contains("events.csv", "line 1", "kind");
	}

	@Test
	void takesAFileOfEventsWithoutAny() {
		assertThat(assess(EVENTS).code()).isZero();
		assertThat(assess("").code()).isEqualTo(AssessCommand.BAD_INPUT);
	}

	@Test
	void passesOverNobodyWhoHasNoEvents() throws IOException {
		assertThat(assess(EVENTS + "B,,2026-01-02,hold,,\n").code()).isZero();
		List<String> rows = Files.readAllLines(out());
		assertThat(rows.get(2)).contains("A,2026-01-02", ",Full,");
		assertThat(rows.get(4)).contains("B,2026-01-02", ",Refer,");
	}

	private Path out() {
		return this.folder.resolve("out.csv");
	}

	private Ran assess(String events) {
		try {
			Path in = Files.writeString(this.folder.resolve("mornings.csv"), """
					person,date,rhr_bpm
					A,2026-01-01,50
					A,2026-01-02,51
					B,2026-01-01,50
					B,2026-01-02,51
					""");
			Path file = Files.writeString(this.folder.resolve("events.csv"), events);
			return Ran.assess("--in", in.toString(), "--out", out().toString(), "--events", file.toString());
		}
		catch (IOException ex) {
			throw new AssertionError(ex);
		}
	}

}
