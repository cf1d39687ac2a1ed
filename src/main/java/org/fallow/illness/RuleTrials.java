package org.fallow.illness;

import org.fallow.team.ByHeadCoach;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.fallow.entry.Recording;
import org.fallow.illness.core.Trial;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * A draft rule set replayed over a squad's past season before it is adopted. It only
 * reads.
 */
@Service
public class RuleTrials {

	/** Days compared, today among them. */
	public static final int SEASON_DAYS = 365;

	private final Replays replays;

	private final RuleSets ruleSets;

	private final Squad squad;

	private final Recording recording;

	RuleTrials(Replays replays, RuleSets ruleSets, Squad squad, Recording recording) {
		this.replays = replays;
		this.ruleSets = ruleSets;
		this.squad = squad;
		this.recording = recording;
	}

	/**
	 * Replays the season of each athlete, known then, under the rules as they were and
	 * under a draft as if it had been in force throughout.
	 * @param teamId whose athletes
	 * @param draft the draft
	 * @return by athlete, in order of names; those without any fact are absent
	 */
	@ByHeadCoach
	@Transactional(readOnly = true)
	public List<AthleteTrial> of(UUID teamId, RuleSet draft) {
		RuleBook book = this.ruleSets.bookOf(teamId);
		RuleBook other = RuleBook.of(draft);
		return this.squad.athletesIn(teamId)
			.stream()
			.map((athlete) -> of(athlete, book, other))
			.filter((one) -> one.trial().days() > 0)
			.toList();
	}

	private AthleteTrial of(Athlete athlete, RuleBook book, RuleBook other) {
		LocalDate today = this.recording.today(athlete);
		return new AthleteTrial(athlete,
				Trial.of(this.replays.everything(athlete), book, other, today.minusDays(SEASON_DAYS - 1L), today));
	}

	/**
	 * What would have been different for one athlete.
	 *
	 * @param athlete who
	 * @param trial what
	 */
	public record AthleteTrial(Athlete athlete, Trial trial) {
	}

}
