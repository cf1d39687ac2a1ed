package org.fallow.access;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

class IdsTests {

	@Test
	void drawsVersionSeven() {
		UUID id = Ids.next();
		assertThat(id.version()).isEqualTo(7);
		assertThat(id.variant()).isEqualTo(2);
	}

	@Test
	void startsWithTheMilliseconds() {
		long before = System.currentTimeMillis();
		long millis = Ids.next().getMostSignificantBits() >>> 16;
		assertThat(millis).isBetween(before, System.currentTimeMillis() + 100);
	}

	@Test
	void drawsEachIdAfterTheOneBefore() {
		List<String> drawn = new ArrayList<>();
		IntStream.range(0, 20_000).forEach((index) -> drawn.add(Ids.next().toString()));
		assertThat(drawn).isSorted().doesNotHaveDuplicates();
	}

	@Test
	void drawsDifferentIdsInSeveralThreads() {
		List<UUID> drawn = IntStream.range(0, 20_000).parallel().mapToObj((index) -> Ids.next()).toList();
		assertThat(drawn).doesNotHaveDuplicates();
	}

}
