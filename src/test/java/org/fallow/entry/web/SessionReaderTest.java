package org.fallow.entry.web;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.NewSession;
import org.fallow.rules.Intensity;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import static org.assertj.core.api.Assertions.assertThat;

class SessionReaderTest {

	private final Map<String, String> typed = new TreeMap<>(
			Map.of("day", "2026-03-10", "activity", "RUN", "minutes", "45"));

	@Test
	void readsAFullForm() {
		this.typed.putAll(Map.of("rpe", "3.5", "intensity", "STRIDES", "note", " steady ", "key", "k"));
		NewSession session = read("HEADACHE", "CHEST_PAIN", "HEADACHE").session();
		assertThat(session.key()).isEqualTo("k");
		assertThat(session.activity()).isEqualTo(Activity.RUN);
		assertThat(session.minutes()).isEqualTo(45);
		assertThat(session.rpe()).isEqualTo(3.5);
		assertThat(session.intensity()).isEqualTo(Intensity.STRIDES);
		assertThat(session.after()).containsExactly(AfterSession.CHEST_PAIN, AfterSession.HEADACHE);
		assertThat(session.note()).isEqualTo("steady");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "minutes|fifty|typed.no-number", "minutes||session.minutes.missing",
					"minutes|45.5|session.minutes.whole", "minutes|45,5|session.minutes.whole",
					"day|soon|day.unreadable", "activity||session.activity.missing",
					"activity|SWIM|session.activity.missing", "intensity|FAST|entry.code.unknown" })
	void saysWhatIsWrong(String field, @Nullable String value, String code) {
		this.typed.put(field, (value == null) ? "" : value);
		assertThat(read().problems()).singleElement().satisfies((problem) -> {
			assertThat(problem.field()).isEqualTo(field);
			assertThat(problem.message().code()).isEqualTo(code);
		});
	}

	@Test
	void takesADecimalComma() {
		this.typed.put("rpe", "3,5");
		assertThat(read().session().rpe()).isEqualTo(3.5);
	}

	@Test
	void dropsNothingNoticedThatItDoesNotKnow() {
		assertThat(read("CHEST_PAINS").problems()).extracting((problem) -> problem.field()).containsExactly("after");
	}

	private SessionReader read(String... after) {
		return new SessionReader(new SessionForm(this.typed.get("key"), this.typed.get("day"),
				this.typed.get("activity"), this.typed.get("minutes"), this.typed.get("rpe"),
				this.typed.get("intensity"), List.of(after), this.typed.get("note"), null));
	}

}
