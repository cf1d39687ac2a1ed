package org.fallow.wording;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.time.LocalDate;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class MessageTest {

	@Test
	void survivesTheSessionBetweenTwoPages() throws Exception {
		Message message = Message.of("entry.day.future", LocalDate.of(2026, 11, 25), "x", 3);
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
			out.writeObject(message);
		}
		try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
			assertThat(in.readObject()).isEqualTo(message);
		}
	}

}
