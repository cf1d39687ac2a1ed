package org.fallow.measure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

import de.siegmar.fastcsv.reader.CsvRecord;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.exchange.csv.ReadRow;
import org.fallow.illness.core.SharedData;
import org.fallow.measure.Readings.Reading;

/**
 * The people of the open data file, with the day their illness began.
 */
final class OpenData {

	/** Days before onset up to which a morning is taken as healthy. [own] */
	static final int HEALTHY_BEFORE = 8;

	private OpenData() {
	}

	/**
	 * One person.
	 *
	 * @param readings all mornings
	 * @param onset first day of illness as that person told; absent for people who told
	 * of none
	 */
	record Person(Readings readings, LocalDate onset) {

		boolean isHealthy(LocalDate day) {
			return this.onset == null || !day.isAfter(this.onset.minusDays(HEALTHY_BEFORE));
		}

		/** The mornings taken as healthy. */
		Readings healthy() {
			SortedMap<LocalDate, Reading> some = new TreeMap<>(this.readings.mornings());
			some.keySet().removeIf((day) -> !isHealthy(day));
			return new Readings(this.readings.person(), this.readings.method(), some);
		}

	}

	static List<Person> people() {
		CsvFile file = CsvFile.open(SharedData.folder().resolve("covid_onset_daily.csv"));
		MorningFile mornings = new MorningFile(file.headers(),
				ColumnMapping.guess(file.headers()).withDefaults(Method.WORN, Posture.LYING));
		int fromOnset = file.headers().indexOf("day_rel_onset");
		Map<String, TreeMap<LocalDate, Reading>> all = new LinkedHashMap<>();
		Map<String, LocalDate> onsets = new LinkedHashMap<>();
		file.forEachRow((record) -> {
			ReadRow row = mornings.read(record.getStartingLineNumber(), record.getFields(), LocalDate.MAX);
			if (row.problems().isEmpty()) {
				LocalDate day = row.goodMorning().day();
				all.computeIfAbsent(row.person(), (person) -> new TreeMap<>())
					.put(day, new Reading(row.goodMorning().rhrBpm(), row.goodMorning().rmssdMs(),
							row.goodMorning().unsure()));
				putOnset(onsets, row.person(), day, record, fromOnset);
			}
		});
		List<Person> people = new ArrayList<>();
		all.forEach((person, readings) -> people
			.add(new Person(new Readings(person, Method.WORN, readings), onsets.get(person))));
		return people;
	}

	private static void putOnset(Map<String, LocalDate> onsets, String person, LocalDate day, CsvRecord record,
			int column) {
		String text = record.getField(column);
		if (!text.isBlank()) {
			onsets.put(person, day.minusDays(Math.round(Double.parseDouble(text))));
		}
	}

}
