package org.fallow.measure;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeMap;

import org.fallow.illness.core.DayAssessment;
import org.fallow.measure.HealthyShares.Alarm;

/**
 * In how many windows of days an alarm sounds: around onset, and in healthy time.
 *
 * @param windows windows that count: those with enough mornings with a deviation
 * @param with of these, those with the alarm on at least one morning
 * @param mornings mornings with a deviation in the windows that count
 */
record Windows(int windows, int with, int mornings) {

	/** Windows around onset, one for each person who told of one. */
	static Windows aroundOnset(List<Decided> people, int firstDay, int length, int least, Alarm alarm) {
		Windows sum = new Windows(0, 0, 0);
		for (Decided person : people) {
			if (person.onset() != null) {
				List<DayAssessment> window = person.window(person.onset().plusDays(firstDay), length);
				sum = (window.size() >= least) ? sum.plus(window, alarm) : sum;
			}
		}
		return sum;
	}

	/** Windows side by side from each person's first healthy morning on. */
	static Windows healthy(List<Decided> people, int length, int least, Alarm alarm) {
		Windows sum = new Windows(0, 0, 0);
		for (Decided person : people) {
			if (!person.days().isEmpty()) {
				LocalDate from = person.days().firstKey();
				while (!from.isAfter(person.healthyUntil().minusDays(length - 1L))) {
					List<DayAssessment> window = person.window(from, length);
					boolean counts = window.size() >= least;
					sum = counts ? sum.plus(window, alarm) : sum;
					from = from.plusDays(counts ? length : 1);
				}
			}
		}
		return sum;
	}

	private Windows plus(List<DayAssessment> window, Alarm alarm) {
		int sounds = window.stream().anyMatch(alarm::isOn) ? 1 : 0;
		return new Windows(this.windows + 1, this.with + sounds, this.mornings + window.size());
	}

	/** Mornings with a deviation in a window, on average. */
	double filled() {
		return this.mornings / (double) this.windows;
	}

	double share() {
		return this.with / (double) this.windows;
	}

	/** Wilson's interval of 95 %: lower end. */
	double lower() {
		return Math.max(0, wilson(-1));
	}

	/** Wilson's interval of 95 %: upper end. */
	double upper() {
		return Math.min(1, wilson(1));
	}

	private double wilson(int side) {
		double z = 1.959964;
		double n = this.windows;
		double p = share();
		double half = z * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
		return (p + z * z / (2 * n) + side * half) / (1 + z * z / n);
	}

	/**
	 * One person's days that have a deviation, decided by the numbers alone.
	 *
	 * @param days by day
	 * @param onset first day of illness; absent if none was told
	 * @param healthyUntil last day taken as healthy
	 */
	record Decided(TreeMap<LocalDate, DayAssessment> days, LocalDate onset, LocalDate healthyUntil) {

		static Decided of(OpenData.Person person) {
			TreeMap<LocalDate, DayAssessment> days = new TreeMap<>();
			Diary.healthy(person.readings()).stream().filter((day) -> day.rhr().dev() != null).forEach((day) -> {
				days.put(day.day(), day);
			});
			LocalDate last = person.readings().mornings().lastKey();
			LocalDate until = (person.onset() == null) ? last : person.onset().minusDays(OpenData.HEALTHY_BEFORE);
			return new Decided(days, person.onset(), until.isBefore(last) ? until : last);
		}

		List<DayAssessment> window(LocalDate from, int length) {
			return List.copyOf(this.days.subMap(from, from.plusDays(length)).values());
		}

	}

}
