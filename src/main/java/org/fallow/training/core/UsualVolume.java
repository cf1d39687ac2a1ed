package org.fallow.training.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;

import org.fallow.baseline.Statistics;
import org.jspecify.annotations.Nullable;

/**
 * What an athlete usually runs: the measure of a return's lower volume.
 *
 * @param weekMinutes a week's minutes; absent where nothing is known
 * @param longMinutes the long run's minutes; absent likewise
 * @param basis what they were taken from
 */
public record UsualVolume(@Nullable Integer weekMinutes, @Nullable Integer longMinutes, Basis basis) {

	/** Loading weeks that are asked for. */
	public static final int WEEKS = 4;

	private static final int DAYS = 7;

	private static final UsualVolume UNKNOWN = new UsualVolume(null, null, Basis.UNKNOWN);

	/**
	 * Of an athlete at an onset. By the median of the last four loading weeks before it;
	 * without four, by the last 28 healthy days; else as the athlete states; else
	 * unknown, and only limits in minutes hold.
	 * <p>
	 * Read narrowly: a loading week counts where it ended before the onset and the
	 * athlete was healthy all through it and logged a run; 28 days count where a run was
	 * logged in each of the four sevens.
	 * @param onset first day of the illness; the day itself does not count
	 * @param loading Mondays of the group's loading weeks
	 * @param runs minutes run by day; days without a run are absent
	 * @param unhealthy days ill or away
	 * @param stated what the athlete, or after a long absence the coach, stated; absent
	 * if nothing
	 * @return the usual volume
	 */
	public static UsualVolume of(LocalDate onset, Collection<LocalDate> loading,
			SortedMap<LocalDate, List<Integer>> runs, Collection<LocalDate> unhealthy, @Nullable UsualVolume stated) {
		UsualVolume logged = logged(onset, loading, runs, unhealthy);
		return (logged != null) ? logged : Objects.requireNonNullElse(stated, UNKNOWN);
	}

	/**
	 * As somebody states it.
	 * @param weekMinutes a week's minutes, 0 or more
	 * @param longMinutes the long run's minutes, at most the week's
	 * @return the usual volume
	 * @throws IllegalArgumentException if out of range
	 */
	public static UsualVolume stated(int weekMinutes, int longMinutes) {
		if (longMinutes < 0 || weekMinutes < longMinutes || weekMinutes > DAYS * PlannedSession.MOST_MINUTES) {
			throw new IllegalArgumentException("usual volume out of range: " + weekMinutes + ", " + longMinutes);
		}
		return new UsualVolume(weekMinutes, longMinutes, Basis.STATED);
	}

	/**
	 * Where nothing is known.
	 * @return no minutes
	 */
	public static UsualVolume unknown() {
		return UNKNOWN;
	}

	private static @Nullable UsualVolume logged(LocalDate onset, Collection<LocalDate> loading,
			SortedMap<LocalDate, List<Integer>> runs, Collection<LocalDate> unhealthy) {
		List<LocalDate> weeks = loading.stream()
			.distinct()
			.filter((monday) -> !monday.plusDays(DAYS).isAfter(onset))
			.filter((monday) -> unhealthy.stream().noneMatch((day) -> isWithin(day, monday)))
			.filter((monday) -> !minutes(runs, monday).isEmpty())
			.sorted()
			.toList();
		if (weeks.size() >= WEEKS) {
			return of(weeks.subList(weeks.size() - WEEKS, weeks.size()), runs, Basis.LOADING_WEEKS);
		}
		return ofHealthyDays(onset, runs, unhealthy);
	}

	/**
	 * The last 28 healthy days before the onset, moved together as if nothing lay
	 * between.
	 */
	private static @Nullable UsualVolume ofHealthyDays(LocalDate onset, SortedMap<LocalDate, List<Integer>> runs,
			Collection<LocalDate> unhealthy) {
		if (runs.isEmpty()) {
			return null;
		}
		SortedMap<LocalDate, List<Integer>> moved = new TreeMap<>();
		List<LocalDate> sevens = new ArrayList<>();
		LocalDate slot = onset;
		for (LocalDate day = onset.minusDays(1); sevens.size() < WEEKS; day = day.minusDays(1)) {
			if (day.isBefore(runs.firstKey())) {
				break;
			}
			if (!unhealthy.contains(day)) {
				slot = slot.minusDays(1);
				moved.put(slot, runs.getOrDefault(day, List.of()));
				if ((onset.toEpochDay() - slot.toEpochDay()) % DAYS == 0) {
					sevens.add(slot);
				}
			}
		}
		boolean enough = sevens.size() == WEEKS
				&& sevens.stream().noneMatch((first) -> minutes(moved, first).isEmpty());
		return enough ? of(sevens, moved, Basis.HEALTHY_DAYS) : null;
	}

	private static UsualVolume of(List<LocalDate> weeks, SortedMap<LocalDate, List<Integer>> runs, Basis basis) {
		double[] sums = weeks.stream()
			.mapToDouble((first) -> minutes(runs, first).stream().mapToInt(Integer::intValue).sum())
			.toArray();
		double[] longest = weeks.stream()
			.mapToDouble((first) -> minutes(runs, first).stream().mapToInt(Integer::intValue).max().orElse(0))
			.toArray();
		return new UsualVolume((int) Statistics.median(sums), (int) Statistics.median(longest), basis);
	}

	private static List<Integer> minutes(SortedMap<LocalDate, List<Integer>> runs, LocalDate first) {
		return runs.subMap(first, first.plusDays(DAYS)).values().stream().flatMap(List::stream).toList();
	}

	private static boolean isWithin(LocalDate day, LocalDate first) {
		return !day.isBefore(first) && day.isBefore(first.plusDays(DAYS));
	}

	/** What a usual volume was taken from. */
	public enum Basis {

		/** The median of the last four loading weeks. */
		LOADING_WEEKS,
		/** The last 28 healthy days, in sevens. */
		HEALTHY_DAYS,
		/** The athlete's, or the coach's, word. */
		STATED,
		/** Nothing: only limits in minutes hold. */
		UNKNOWN

	}

}
