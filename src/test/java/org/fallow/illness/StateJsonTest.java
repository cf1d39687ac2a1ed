package org.fallow.illness;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Objects;

import org.fallow.illness.core.State;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

/** Stored states of this version, of the first one and of one that is yet to come. */
class StateJsonTest {

	private static final State STATE = State.before(LocalDate.of(2026, 1, 29));

	@Test
	void readsWhatItWrote() {
		String text = StateJson.write(STATE);
		assertThat(text).contains("\"version\":" + StateJson.VERSION);
		assertThat(StateJson.read(text)).isEqualTo(STATE);
	}

	/** A text that the first version wrote, with a sustained rise that stood. */
	@Test
	void doesNotReadOneOfTheFirstVersion() throws IOException {
		try (InputStream in = Objects.requireNonNull(getClass().getResourceAsStream("state-1.json"))) {
			String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
			assertThat(text).contains("\"signal\":true").doesNotContain("version");
			assertThat(StateJson.read(text)).isNull();
		}
	}

	@Test
	void decidesNothingFromOneOfANewerVersion() {
		String newer = StateJson.write(STATE).replace("\"version\":" + StateJson.VERSION, "\"version\":99");
		assertThatIllegalStateException().isThrownBy(() -> StateJson.read(newer))
			.withMessageContaining("version 99")
			.withMessageContaining("newer Fallow");
	}

}
