package org.fallow.measure;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;

import org.fallow.baseline.HrvFlag;
import org.fallow.baseline.RhrFlag;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.RhrEvidence;
import org.fallow.rules.Clearance;

/**
 * What healthy mornings with a reading and a baseline come to.
 */
final class HealthyShares {

	/** Mornings in a month of a person. */
	static final double MONTH = 30;

	private int people;

	private long mornings;

	private long inBand;

	private long inThreeBpm;

	private final Map<Clearance, Long> clearances = new EnumMap<>(Clearance.class);

	private final Map<String, Long> onlyReasons = new TreeMap<>();

	private final Map<Alarm, Long> alarms = new EnumMap<>(Alarm.class);

	private final Map<Alarm, Long> alarmMornings = new EnumMap<>(Alarm.class);

	/** What can wrongly say that something is up. */
	enum Alarm {

		STARTS("above the line, by the morning itself"), ABOVE_THE_LINE("above the line, standing too"),
		HIGH("High or Very high"), LOW_AGAIN("Low on a second morning"), SUPPRESSED("HRV Suppressed"),
		ANY_RHR("above the line or High");

		private final String words;

		Alarm(String words) {
			this.words = words;
		}

		String words() {
			return this.words;
		}

		boolean isOn(DayAssessment day) {
			RhrEvidence rhr = day.rhr();
			boolean high = rhr.flag() != null && rhr.flag().isHigh();
			return switch (this) {
				case STARTS -> rhr.starts();
				case ABOVE_THE_LINE -> rhr.above() != null;
				case HIGH -> high;
				case LOW_AGAIN -> rhr.lowAgain();
				case SUPPRESSED -> day.hrv().flag() == HrvFlag.SUPPRESSED;
				case ANY_RHR -> rhr.above() != null || high;
			};
		}

	}

	void add(List<DayAssessment> days, Predicate<DayAssessment> healthy) {
		List<DayAssessment> counted = days.stream()
			.filter((day) -> day.rhr().dev() != null && healthy.test(day))
			.toList();
		this.people += counted.isEmpty() ? 0 : 1;
		DayAssessment before = null;
		for (DayAssessment day : counted) {
			count(day, before);
			before = day;
		}
	}

	private void count(DayAssessment day, DayAssessment before) {
		this.mornings++;
		this.inBand += (day.rhr().flag() == RhrFlag.WITHIN) ? 1 : 0;
		this.inThreeBpm += (Math.abs(day.rhr().dev()) <= 3) ? 1 : 0;
		this.clearances.merge(day.clearance(), 1L, Long::sum);
		if (day.reasons().size() == 1) {
			this.onlyReasons.merge(day.reasons().get(0).code(), 1L, Long::sum);
		}
		for (Alarm alarm : Alarm.values()) {
			if (alarm.isOn(day)) {
				this.alarmMornings.merge(alarm, 1L, Long::sum);
				this.alarms.merge(alarm, (before != null && alarm.isOn(before)) ? 0L : 1L, Long::sum);
			}
		}
	}

	int people() {
		return this.people;
	}

	long mornings() {
		return this.mornings;
	}

	double inBand() {
		return this.inBand / (double) this.mornings;
	}

	double outsideThreeBpm() {
		return 1 - this.inThreeBpm / (double) this.mornings;
	}

	double share(Clearance clearance) {
		return this.clearances.getOrDefault(clearance, 0L) / (double) this.mornings;
	}

	Set<String> onlyReasons() {
		return this.onlyReasons.keySet();
	}

	/** Share of mornings that would be Full but for one reason. */
	double shareOnlyFor(String reason) {
		return this.onlyReasons.getOrDefault(reason, 0L) / (double) this.mornings;
	}

	/** Alarms that begin, in 30 mornings. */
	double perMonth(Alarm alarm) {
		return MONTH * this.alarms.getOrDefault(alarm, 0L) / this.mornings;
	}

	double share(Alarm alarm) {
		return this.alarmMornings.getOrDefault(alarm, 0L) / (double) this.mornings;
	}

}
