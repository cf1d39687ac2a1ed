package org.fallow.board.web;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.entry.MorningEntry;
import org.fallow.entry.Mornings;
import org.fallow.entry.StoredMorning;
import org.fallow.illness.AssessedDay;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.fallow.team.Athlete;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** The charts of an athlete's mornings, with the same figures as a table. */
@Component
class Charts {

	/** How many weeks can be looked at. */
	static final List<Integer> WEEKS = List.of(4, 12, 26, 52);

	private static final int USUAL_WEEKS = 12;

	private static final int WEEK = 7;

	private static final JsonMapper JSON = JsonMapper.builder().build();

	private final Mornings mornings;

	Charts(Mornings mornings) {
		this.mornings = mornings;
	}

	/**
	 * What was asked for, or twelve weeks where it is none of the choices.
	 */
	static int weeks(@Nullable String asked) {
		return WEEKS.stream().filter((weeks) -> weeks.toString().equals(asked)).findFirst().orElse(USUAL_WEEKS);
	}

	/** The entries known by the end of a day, the latest revision of each. */
	Map<LocalDate, StoredMorning> effective(Athlete athlete, LocalDate from, LocalDate asOf) {
		Map<LocalDate, StoredMorning> effective = new TreeMap<>();
		for (StoredMorning stored : this.mornings.of(athlete.id(), from, asOf)) {
			if (!stored.entry().recorded().on().isAfter(asOf)) {
				effective.put(stored.day(), stored);
			}
		}
		return effective;
	}

	/**
	 * Puts the charts into a page.
	 * @param model the page's
	 * @param athlete whose
	 * @param all the athlete's days up to the last one drawn, in order
	 * @param book the team's rule sets
	 * @param weeks how many weeks are drawn
	 */
	void put(Model model, Athlete athlete, List<AssessedDay> all, RuleBook book, int weeks) {
		model.addAttribute("weeksChosen", weeks);
		model.addAttribute("weeksToChoose", WEEKS);
		List<AssessedDay> days = all.subList(Math.max(0, all.size() - weeks * WEEK), all.size());
		if (days.isEmpty()) {
			model.addAttribute("chartJson", null);
			model.addAttribute("chartRows", List.of());
			model.addAttribute("rmssdWords", null);
			return;
		}
		LocalDate asOf = days.get(days.size() - 1).day();
		Map<LocalDate, MorningEntry> entries = new TreeMap<>();
		effective(athlete, days.get(0).day(), asOf).forEach((day, stored) -> entries.put(day, stored.entry()));
		ChartData chart = ChartData.of(days, entries, book, asOf);
		model.addAttribute("chartJson", JSON.writeValueAsString(chart).replace("<", "\\u003c"));
		model.addAttribute("chartRows", ChartRow.of(days, entries, chart));
		model.addAttribute("rmssdWords",
				(chart.rmssd() == null) ? null : rmssdWords(days.get(days.size() - 1), book.on(asOf).rules().hrv()));
	}

	/**
	 * The mean that is acted on, and the value below which it acts: neither is drawn, for
	 * single mornings cannot be held against them.
	 */
	private static Message rmssdWords(AssessedDay day, RuleSet.Hrv rules) {
		return rmssdWords(day.hrvRecent(), day.hrvMean(), day.hrvSd(), rules);
	}

	static Message rmssdWords(@Nullable Double recent, @Nullable Double mean, @Nullable Double sd, RuleSet.Hrv rules) {
		if (mean == null || sd == null) {
			return Message.of("chart.rmssd.no-baseline");
		}
		double acts = Math.exp(mean - rules.suppressedSds() * sd);
		return (recent == null) ? Message.of("chart.rmssd.no-mean", rules.days(), acts, rules.leastReadings())
				: Message.of("chart.rmssd.mean", rules.days(), acts, Math.exp(recent));
	}

}
