package org.fallow.illness.core;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.NavigableMap;
import java.util.Random;
import java.util.TreeMap;

import org.fallow.entry.FeverMedicine;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Looking for mornings by their days, beside a sorted map of the JDK, with days added
 * late, twice and after silences.
 */
class MorningsByDayTest {

	private static final LocalDate BASE = LocalDate.of(2026, 1, 5);

	private final Random random = new Random(19);

	@Test
	void findsWhatASortedMapFinds() {
		for (int round = 0; round < 200; round++) {
			MorningsByDay mornings = new MorningsByDay();
			TreeMap<LocalDate, List<MorningEntry>> model = new TreeMap<>();
			int days = 1 + this.random.nextInt(150);
			for (int i = 0; i < days; i++) {
				int index = (this.random.nextInt(5) == 0) ? this.random.nextInt(days) : i + i / 40 * 30;
				MorningEntry entry = entry(BASE.plusDays(index), i);
				boolean last = model.isEmpty() || entry.day().isAfter(model.lastKey());
				assertThat(mornings.add(entry)).isEqualTo(last);
				model.computeIfAbsent(entry.day(), (day) -> new ArrayList<>()).add(entry);
				compare(mornings, model, this.random.nextInt(days + 120) - 5);
			}
			LocalDate from = BASE.plusDays(this.random.nextInt(days + 5));
			compare(mornings.from(from), new TreeMap<>(model.tailMap(from, true)), this.random.nextInt(days + 5));
		}
	}

	private void compare(MorningsByDay mornings, NavigableMap<LocalDate, List<MorningEntry>> model, int at) {
		LocalDate day = BASE.plusDays(at);
		Morning on = mornings.on(day);
		assertThat((on == null) ? null : on.revisions()).isEqualTo(model.get(day));
		assertThat(revisions(mornings.all())).isEqualTo(List.copyOf(model.values()));
		LocalDate to = day.plusDays(this.random.nextInt(60));
		assertThat(revisions(mornings.between(day.toEpochDay(), to.toEpochDay())))
			.isEqualTo(List.copyOf(model.subMap(day, true, to, false).values()));
		assertThat(mornings.between(to.toEpochDay() + 1, day.toEpochDay())).isEmpty();
		List<List<MorningEntry>> back = revisions(mornings.backFrom(day));
		Collections.reverse(back);
		assertThat(back).isEqualTo(List.copyOf(model.headMap(day, true).values()));
	}

	private static List<List<MorningEntry>> revisions(List<Morning> mornings) {
		List<List<MorningEntry>> all = new ArrayList<>();
		mornings.forEach((morning) -> all.add(morning.revisions()));
		return all;
	}

	private static MorningEntry entry(LocalDate day, int number) {
		return new MorningEntry(day, new Recorded(day.atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC), day), null,
				null, null, null, false, null, List.of(), false, FeverMedicine.NONE, null, null, null, List.of(),
				"" + number);
	}

}
