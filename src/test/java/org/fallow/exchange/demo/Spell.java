package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Days on which something is other than usual for one athlete. Written as
 * {@code TR01 2026-07-02..2026-07-04 rhr=2 symptoms=cough:mild}, both days inclusive.
 *
 * @param code the athlete
 * @param from first day
 * @param to last day, inclusive
 * @param changes what is other than usual, by name
 */
record Spell(String code, LocalDate from, LocalDate to, Map<String, String> changes) {

	static Spell parse(String line) {
		String[] parts = line.strip().split(" +");
		String[] days = parts[1].split("\\.\\.");
		Map<String, String> changes = Arrays.stream(parts)
			.skip(2)
			.map((part) -> part.split("=", 2))
			.collect(Collectors.toMap((pair) -> pair[0], (pair) -> pair[1].replace('_', ' ')));
		return new Spell(parts[0], LocalDate.parse(days[0]), LocalDate.parse(days[days.length - 1]), changes);
	}

	boolean covers(String athlete, LocalDate day) {
		return this.code.equals(athlete) && !day.isBefore(this.from) && !day.isAfter(this.to);
	}

}
