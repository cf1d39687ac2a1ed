package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;

/**
 * The same history decided twice, under the rules as they were and under others: what
 * would have been different. Nothing that was decided is touched.
 *
 * @param days days compared
 * @param before days of each clearance as it was, those that occur
 * @param after days of each clearance as it would have been, those that occur
 * @param changes days whose clearance differs, neighbours of one kind together
 * @param episodes all episodes of either, by the day they opened
 */
public record Trial(int days, Map<Clearance, Integer> before, Map<Clearance, Integer> after, List<Change> changes,
		List<Episodes> episodes) {

	/** Copies the lists and keeps the order of the maps. */
	public Trial {
		before = new EnumMap<>(before);
		after = new EnumMap<>(after);
		changes = List.copyOf(changes);
		episodes = List.copyOf(episodes);
	}

	/**
	 * Decides a history twice.
	 * @param timeline all facts
	 * @param book the rules as they were
	 * @param other the rules as if they had always been in force
	 * @param from first day compared; earlier days are lived but not compared
	 * @param to last day, inclusive
	 * @return what differs
	 */
	public static Trial of(Timeline timeline, RuleBook book, RuleBook other, LocalDate from, LocalDate to) {
		List<DayAssessment> was = Course.withoutForecast(timeline, book, to);
		List<DayAssessment> would = Course.withoutForecast(timeline, other, to);
		EnumMap<Clearance, Integer> before = new EnumMap<>(Clearance.class);
		EnumMap<Clearance, Integer> after = new EnumMap<>(Clearance.class);
		List<Change> changes = new ArrayList<>();
		int days = 0;
		for (int i = 0; i < was.size(); i++) {
			if (!was.get(i).day().isBefore(from)) {
				days++;
				before.merge(was.get(i).clearance(), 1, Integer::sum);
				after.merge(would.get(i).clearance(), 1, Integer::sum);
				note(changes, was.get(i), would.get(i).clearance());
			}
		}
		return new Trial(days, before, after, changes,
				Episodes.paired(Lived.all(was, book, from), Lived.all(would, other, from)));
	}

	private static void note(List<Change> changes, DayAssessment was, Clearance would) {
		if (was.clearance() == would) {
			return;
		}
		Change last = changes.isEmpty() ? null : changes.get(changes.size() - 1);
		if (last != null && last.before() == was.clearance() && last.after() == would
				&& last.to().plusDays(1).equals(was.day())) {
			changes.set(changes.size() - 1, new Change(last.from(), was.day(), last.before(), last.after()));
		}
		else {
			changes.add(new Change(was.day(), was.day(), was.clearance(), would));
		}
	}

	/**
	 * Days that would have been stricter.
	 * @return how many
	 */
	public int stricterDays() {
		return this.changes.stream().filter(Change::isStricter).mapToInt(Change::days).sum();
	}

	/**
	 * Days that would have been looser.
	 * @return how many
	 */
	public int looserDays() {
		return this.changes.stream().filter((change) -> !change.isStricter()).mapToInt(Change::days).sum();
	}

	/**
	 * Whether anything would have been different.
	 * @return true if a day or an episode differs
	 */
	public boolean differs() {
		return !this.changes.isEmpty() || this.episodes.stream().anyMatch(Episodes::differs);
	}

	/**
	 * Days running whose clearance would have been another.
	 *
	 * @param from first day
	 * @param to last day, inclusive
	 * @param before as it was
	 * @param after as it would have been
	 */
	public record Change(LocalDate from, LocalDate to, Clearance before, Clearance after) {

		/**
		 * How many days.
		 * @return at least 1
		 */
		public int days() {
			return (int) (this.to.toEpochDay() - this.from.toEpochDay()) + 1;
		}

		/**
		 * Whether it would have been stricter.
		 * @return false if looser
		 */
		public boolean isStricter() {
			return this.after.compareTo(this.before) < 0;
		}

	}

}
