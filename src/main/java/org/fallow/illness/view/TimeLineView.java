package org.fallow.illness.view;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.illness.AssessedDay;
import org.fallow.illness.core.Mark;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * An episode on a line of days: illness, holds and stages as they were, and the rest of
 * the current stage as it could be.
 *
 * @param start first day of the line
 * @param days days on the line
 * @param todayOffset the day looked at, from the start
 * @param spans illness, holds and stages, in order
 * @param ticks the Mondays
 * @param marks what each morning was
 */
public record TimeLineView(LocalDate start, int days, @Nullable Integer todayOffset, List<Span> spans, List<Tick> ticks,
		List<Marked> marks) {

	private static final int LEAST_DAYS = 14;

	/**
	 * The line of the episode that is open on the last of some days.
	 * @param assessed days in order, without gaps
	 * @param state the last day's view
	 * @param book the team's rule sets
	 * @return the line; null if no episode is open on the last day
	 */
	public static @Nullable TimeLineView of(List<AssessedDay> assessed, StateView state, RuleBook book) {
		List<AssessedDay> episode = lastEpisode(assessed);
		if (episode.isEmpty()) {
			return null;
		}
		LocalDate start = episode.get(0).day();
		LocalDate today = episode.get(episode.size() - 1).day();
		List<Span> spans = spans(episode, start, book);
		LocalDate end = today;
		if (state.earliest() != null && state.earliest().isAfter(today.plusDays(1))) {
			end = state.earliest().minusDays(1);
			spans.add(span(episode.get(episode.size() - 1), book, start, today.plusDays(1), end, true));
		}
		int days = Math.max(LEAST_DAYS, offset(start, end) + 2);
		List<Marked> marks = episode.stream().map((d) -> new Marked(offset(start, d.day()), d.mark())).toList();
		return new TimeLineView(start, days, offset(start, today), spans, ticks(start, days), marks);
	}

	private static List<AssessedDay> lastEpisode(List<AssessedDay> assessed) {
		int first = assessed.size();
		while (first > 0 && assessed.get(first - 1).inEpisode()) {
			first--;
		}
		return assessed.subList(first, assessed.size());
	}

	private static List<Span> spans(List<AssessedDay> episode, LocalDate start, RuleBook book) {
		List<Span> spans = new ArrayList<>();
		LocalDate from = start;
		for (int i = 0; i < episode.size(); i++) {
			AssessedDay day = episode.get(i);
			boolean last = i + 1 == episode.size();
			if (last || !StageView.isSame(day, episode.get(i + 1))) {
				spans.add(span(day, book, start, from, day.day(), false));
				from = day.day().plusDays(1);
			}
		}
		return spans;
	}

	private static Span span(AssessedDay day, RuleBook book, LocalDate start, LocalDate from, LocalDate to,
			boolean planned) {
		return new Span(StageView.drawn(day, book), StageView.name(day, book), StageView.mark(day), offset(start, from),
				offset(from, to) + 1, from, to, planned);
	}

	private static List<Tick> ticks(LocalDate start, int days) {
		List<Tick> ticks = new ArrayList<>();
		for (int i = 0; i < days; i++) {
			LocalDate day = start.plusDays(i);
			if (day.getDayOfWeek() == DayOfWeek.MONDAY) {
				ticks.add(new Tick(i, day));
			}
		}
		return ticks;
	}

	private static int offset(LocalDate from, LocalDate to) {
		return (int) (to.toEpochDay() - from.toEpochDay());
	}

	/**
	 * Days of one kind.
	 *
	 * @param kind how it is drawn: ILL, HOLD, STAGE_3 for the last stage, STAGE_1 and
	 * STAGE_2 in turn for those before
	 * @param name what it is
	 * @param mark the same in a few letters
	 * @param offset first day, from the start
	 * @param length days
	 * @param from first day
	 * @param to last day, inclusive
	 * @param planned true for days to come
	 */
	public record Span(String kind, Message name, Message mark, int offset, int length, LocalDate from, LocalDate to,
			boolean planned) {
	}

	/**
	 * A Monday.
	 *
	 * @param offset from the start
	 * @param day the day
	 */
	public record Tick(int offset, LocalDate day) {
	}

	/**
	 * A morning.
	 *
	 * @param offset from the start
	 * @param kind what it was
	 */
	public record Marked(int offset, Mark kind) {
	}

}
