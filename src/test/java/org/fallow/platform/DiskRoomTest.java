package org.fallow.platform;

import org.fallow.platform.DiskRoom.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

/**
 * The levels are the issue's: 10 % and 2 %; the last is a file of PostgreSQL's journal.
 */
class DiskRoomTest {

	private static final long MEGABYTE = 1024L * 1024;

	@ParameterizedTest
	@CsvSource({ "10000, 10000, ROOMY", "1000, 10000, ROOMY", "999, 10000, LOW", "200, 10000, LOW", "199, 10000, SHORT",
			"16, 10000, SHORT", "15, 10000, FULL", "0, 10000, FULL", "15, 100, FULL", "16, 100, ROOMY" })
	void hasALevel(long free, long total, Level level) {
		assertThat(new DiskRoom(free * MEGABYTE, total * MEGABYTE).level()).isEqualTo(level);
	}

	@Test
	void hasNoMoreFreeThanThereIs() {
		assertThatIllegalArgumentException().isThrownBy(() -> new DiskRoom(2, 1));
		assertThatIllegalArgumentException().isThrownBy(() -> new DiskRoom(-1, 1));
	}

}
