package org.fallow.board.web;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;

import org.fallow.illness.AssessedDay;
import org.fallow.illness.view.Said;
import org.fallow.illness.view.StageView;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;
import org.fallow.team.Athlete;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * One athlete on the squad board.
 *
 * @param athleteId for links
 * @param name the athlete's
 * @param groupName the group's; absent without one
 * @param clearance what the athlete may do
 * @param reasons why
 * @param advised whether a clinician's look is advised
 * @param stage ill or the stage; absent without an episode
 * @param dayInStage counting from 1
 * @param rhr the day's reading, bpm
 * @param rhrBaseline bpm
 * @param rhrDeviation bpm, signed
 * @param rhrFlag absent without a reading, NONE without a baseline
 * @param provisional whether the baseline is
 * @param rmssd geometric mean of the last mornings, ms
 * @param hrvState normal, suppressed or not available; absent without any reading
 * @param lastEntry latest morning entered
 * @param quietDays days since
 * @param nextStage what the next gate leads to
 * @param earliest earliest day of it; absent under a hold
 */
public record BoardRow(UUID athleteId, String name, @Nullable String groupName, Clearance clearance,
		List<Message> reasons, boolean advised, @Nullable Message stage, @Nullable Integer dayInStage,
		@Nullable Double rhr, @Nullable Double rhrBaseline, @Nullable Double rhrDeviation, @Nullable String rhrFlag,
		boolean provisional, @Nullable Long rmssd, @Nullable String hrvState, @Nullable LocalDate lastEntry,
		@Nullable Long quietDays, @Nullable Message nextStage, @Nullable LocalDate earliest) {

	static BoardRow of(Athlete athlete, @Nullable String group, @Nullable AssessedDay day, @Nullable LocalDate last,
			LocalDate asOf, RuleBook book) {
		Long quiet = (last == null) ? null : Long.valueOf(ChronoUnit.DAYS.between(last, asOf));
		if (day == null) {
			return new BoardRow(athlete.id().value(), athlete.name(), group, Clearance.NOT_ASSESSED,
					List.of(Message.of("reason.no-entry")), false, null, null, null, null, null, null, false, null,
					null, last, quiet, null, null);
		}
		boolean provisional = day.rhrBaseline() != null && day.rhrReadings() < established(day, book);
		return new BoardRow(athlete.id().value(), athlete.name(), group, day.clearance(), Said.all(day.reasons()),
				isAdvised(day), StageView.shortName(day), day.dayInStage(), day.rhrBpm(), day.rhrBaseline(),
				day.rhrDeviation(), flag(day), provisional,
				(day.hrvRecent() == null) ? null : Long.valueOf(Math.round(Math.exp(day.hrvRecent()))), hrv(day), last,
				quiet, StageView.nextShort(day, book), day.holding() ? null : day.nextGateEarliest());
	}

	private static int established(AssessedDay day, RuleBook book) {
		return book.find(day.ruleHash()).orElseGet(() -> book.on(day.day())).rules().baseline().establishedFrom();
	}

	/** Whether a clinician's look is advised, without a hold. */
	private static boolean isAdvised(AssessedDay day) {
		return day.notices()
			.stream()
			.map(Message::code)
			.anyMatch((code) -> code.startsWith("advised.clinician") || code.equals("advised.stalled"));
	}

	private static @Nullable String flag(AssessedDay day) {
		if (day.rhrFlag() != null) {
			return day.rhrFlag().name();
		}
		return (day.rhrBpm() == null) ? null : "NONE";
	}

	private static @Nullable String hrv(AssessedDay day) {
		if (day.hrvFlag() != null) {
			return day.hrvFlag().name();
		}
		return (day.hrvRecent() == null && day.hrvMean() == null) ? null : "NOT_AVAILABLE";
	}

}
