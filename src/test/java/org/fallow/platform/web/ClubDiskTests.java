package org.fallow.platform.web;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.Locale;

import org.fallow.access.PersonId;
import org.fallow.platform.DatabaseState;
import org.fallow.platform.DiskRoom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;
import org.springframework.test.util.ReflectionTestUtils;

import static org.assertj.core.api.Assertions.assertThat;

/** The line of the page Club by which an owner learns that the disk fills. */
class ClubDiskTests extends OverHttp {

	private static final long MEGABYTE = 1024 * 1024;

	/** A refused write is remembered for a minute. */
	private static final Duration FORGOTTEN = Duration.ofSeconds(61);

	@Autowired
	private DatabaseState database;

	@Autowired
	private MessageSource messages;

	private Caller owner;

	@BeforeEach
	void makeAnOwner() {
		knowNothingOfTheDisk();
		PersonId olu = this.people.addPerson("Olu", ZoneOffset.UTC);
		this.people.owns(this.team.clubId(), olu);
		this.owner = signedIn(open(olu));
	}

	@AfterEach
	void knowNothingOfTheDisk() {
		// each test begins at the same instant, when the other's refusal is not forgotten
		ReflectionTestUtils.setField(this.database, "room", null);
		ReflectionTestUtils.setField(this.database, "refused", null);
	}

	/** Below a tenth, below a fiftieth, below one file of the journal. */
	@ParameterizedTest
	@CsvSource({ "1000, ", "999, LOW", "200, LOW", "199, SHORT", "16, SHORT", "15, FULL" })
	void tellsAnOwner(long free, String level) {
		measure(free);
		String page = this.owner.get("/club").body();
		for (DiskRoom.Level one : DiskRoom.Level.values()) {
			if (one.name().equals(level)) {
				assertThat(page).containsOnlyOnce(said(one, free));
			}
			else if (one != DiskRoom.Level.ROOMY) {
				assertThat(page).doesNotContain(said(one, free));
			}
		}
	}

	@Test
	void tellsOfARefusedWriteWhereverTheDatabaseIs() {
		this.database.refusedForWantOfRoom();
		assertThat(this.owner.get("/club").body()).contains(said(DiskRoom.Level.FULL, 0));
		this.clock.advance(FORGOTTEN);
		assertThat(this.owner.get("/club").body()).doesNotContain(said(DiskRoom.Level.FULL, 0));
	}

	@Test
	void tellsItInGerman() {
		measure(150);
		assertThat(this.owner.get("/club", "Accept", Caller.BROWSER, "Accept-Language", "de").body())
			.contains(this.messages.getMessage("club.disk.SHORT", new Object[] { 150 }, Locale.GERMAN));
	}

	private void measure(long free) {
		ReflectionTestUtils.invokeMethod(this.database, "measured", new DiskRoom(free * MEGABYTE, 10_000 * MEGABYTE));
	}

	private String said(DiskRoom.Level level, long free) {
		return this.messages.getMessage("club.disk." + level, new Object[] { free }, Locale.ENGLISH);
	}

}
