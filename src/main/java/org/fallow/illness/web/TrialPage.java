package org.fallow.illness.web;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.function.ToIntFunction;

import org.fallow.access.TraceSubject;
import org.fallow.illness.RuleTrials;
import org.fallow.illness.RuleTrials.AthleteTrial;
import org.fallow.illness.core.Episodes;
import org.fallow.illness.core.Trial;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleDraft;
import org.fallow.rules.RuleDrafts;
import org.fallow.team.AthleteAccess;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * Rule trial: a draft replayed over the squad's past season.
 */
@Controller
class TrialPage {

	private final AthleteAccess access;

	private final RuleDrafts drafts;

	private final RuleTrials trials;

	TrialPage(AthleteAccess access, RuleDrafts drafts, RuleTrials trials) {
		this.access = access;
		this.drafts = drafts;
		this.trials = trials;
	}

	@GetMapping("/rules/drafts/{id}/trial")
	String trial(@PathVariable UUID id, Model model) {
		RuleDraft draft = this.drafts.of(id, this.access.person());
		List<AthleteTrial> all = this.trials.of(draft.teamId(), draft.rules());
		this.access.looked(all.stream().map(AthleteTrial::athlete).toList(), TraceSubject.RULE_TRIAL);
		List<Trial> trials = all.stream().map(AthleteTrial::trial).toList();
		model.addAttribute("draft", draft);
		model.addAttribute("seasonDays", RuleTrials.SEASON_DAYS);
		model.addAttribute("totals", Totals.of(trials));
		model.addAttribute("counts",
				Arrays.stream(Clearance.values()).map((level) -> Count.of(level, trials)).toList());
		model.addAttribute("athletes",
				all.stream().filter((one) -> one.trial().differs()).map(TrialPage::lines).toList());
		return "illness/trial";
	}

	private static Lines lines(AthleteTrial one) {
		return new Lines(AthleteName.of(one.athlete()), one.trial().stricterDays(), one.trial().looserDays(),
				one.trial().changes(), one.trial().episodes().stream().filter(Episodes::differs).toList());
	}

	private static int sum(List<Trial> trials, ToIntFunction<Trial> number) {
		return trials.stream().mapToInt(number).sum();
	}

	/**
	 * The whole squad in figures.
	 *
	 * @param athletes athletes looked at
	 * @param changed athletes with any difference
	 * @param days athlete-days looked at
	 * @param stricterDays of these, days that would have been stricter
	 * @param looserDays of these, days that would have been looser
	 * @param episodes illnesses as they were
	 * @param moreEpisodes illnesses that would be new
	 * @param fewerEpisodes illnesses that would not have opened, or gone on from another
	 * @param laterReturns illnesses whose full training would have come later, or not yet
	 * @param earlierReturns illnesses whose full training would have come earlier
	 */
	public record Totals(int athletes, int changed, int days, int stricterDays, int looserDays, int episodes,
			int moreEpisodes, int fewerEpisodes, int laterReturns, int earlierReturns) {

		static Totals of(List<Trial> trials) {
			List<Episodes> all = trials.stream().flatMap((trial) -> trial.episodes().stream()).toList();
			return new Totals(trials.size(), (int) trials.stream().filter(Trial::differs).count(),
					sum(trials, Trial::days), sum(trials, Trial::stricterDays), sum(trials, Trial::looserDays),
					(int) all.stream().filter((one) -> one.before() != null).count(),
					(int) all.stream().filter((one) -> one.before() == null).count(),
					(int) all.stream().filter((one) -> one.after() == null).count(),
					(int) all.stream().filter((one) -> one.returnsBy() > 0).count(),
					(int) all.stream().filter((one) -> one.returnsBy() < 0).count());
		}

	}

	/**
	 * Days of a clearance.
	 *
	 * @param clearance which
	 * @param before as it was
	 * @param after as it would have been
	 */
	public record Count(Clearance clearance, int before, int after) {

		static Count of(Clearance level, List<Trial> trials) {
			return new Count(level, sum(trials, (trial) -> trial.before().getOrDefault(level, 0)),
					sum(trials, (trial) -> trial.after().getOrDefault(level, 0)));
		}

	}

	/**
	 * What would have been different for one athlete.
	 *
	 * @param athlete who
	 * @param stricterDays days
	 * @param looserDays days
	 * @param changes days whose clearance differs
	 * @param episodes illnesses that differ
	 */
	public record Lines(AthleteName athlete, int stricterDays, int looserDays, List<Trial.Change> changes,
			List<Episodes> episodes) {
	}

}
