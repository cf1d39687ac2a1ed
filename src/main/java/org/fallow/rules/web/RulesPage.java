package org.fallow.rules.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.rules.NoSuchRules;
import org.fallow.rules.RuleDraft;
import org.fallow.rules.RuleDrafts;
import org.fallow.rules.RuleSets;
import org.fallow.rules.RuleVersion;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * The rule sets of a coach's teams, and copying one to a draft.
 */
@Controller
class RulesPage {

	private final AthleteAccess access;

	private final Squad squad;

	private final RuleSets ruleSets;

	private final RuleDrafts drafts;

	private final Today today;

	RulesPage(AthleteAccess access, Squad squad, RuleSets ruleSets, RuleDrafts drafts, Today today) {
		this.access = access;
		this.squad = squad;
		this.ruleSets = ruleSets;
		this.drafts = drafts;
		this.today = today;
	}

	@GetMapping("/rules")
	String list(Model model) {
		model.addAttribute("teams", this.squad.teamsOf(this.access.person()).stream().map(this::lines).toList());
		return "rules/list";
	}

	@GetMapping("/rules/{teamId}/{version}")
	String version(@PathVariable UUID teamId, @PathVariable int version, Model model) {
		Team team = coached(teamId);
		RuleVersion one = this.ruleSets.version(teamId, version);
		model.addAttribute("team", team.name());
		model.addAttribute("version", line(one, team, false));
		model.addAttribute("hash", one.hash());
		model.addAttribute("paths", PathChoice.all(one.rules()));
		model.addAttribute("groups", FieldGroup.of(one.rules(), FieldRow.all(one.rules(), Map.of(), List.of())));
		return "rules/version";
	}

	@PostMapping("/rules/{teamId}/{version}/draft")
	String copy(@PathVariable UUID teamId, @PathVariable int version) {
		if (!this.access.leads(teamId)) {
			throw new NoSuchRules(teamId);
		}
		RuleDraft draft = this.drafts.start(this.ruleSets.version(teamId, version), this.access.person());
		return "redirect:/rules/drafts/" + draft.id();
	}

	private Team coached(UUID teamId) {
		return this.squad.teamsOf(this.access.person())
			.stream()
			.filter((team) -> team.id().equals(teamId))
			.findFirst()
			.orElseThrow(() -> new NoSuchRules(teamId));
	}

	private TeamLines lines(Team team) {
		List<RuleVersion> versions = this.ruleSets.versionsOf(team.id());
		LocalDate today = this.today.of(team);
		String inForce = this.ruleSets.bookOf(team.id()).on(today).hash();
		int now = versions.stream()
			.filter((one) -> one.hash().equals(inForce) && !one.effectiveFrom().isAfter(today))
			.mapToInt(RuleVersion::version)
			.max()
			.orElse(1);
		return new TeamLines(team.id(), team.name(),
				versions.stream().map((one) -> line(one, team, one.version() == now)).toList(),
				this.access.leads(team.id())
						? this.drafts.openOf(team.id()).stream().map((draft) -> draft(draft, team.zone())).toList()
						: List.of());
	}

	private VersionLine line(RuleVersion one, Team team, boolean now) {
		return new VersionLine(team.id(), one.version(), one.hash().substring(0, VersionLine.HASH_LENGTH),
				one.effectiveFrom().equals(LocalDate.EPOCH) ? null : one.effectiveFrom(),
				LocalDateTime.ofInstant(one.writtenAt(), team.zone()), name(one.writtenBy()), one.reason(),
				one.firstText(), one.becameOf(), now);
	}

	private DraftLine draft(RuleDraft draft, ZoneId zone) {
		return new DraftLine(draft.id(), draft.basedOn(), name(draft.startedBy()),
				LocalDateTime.ofInstant(draft.changedAt(), zone));
	}

	private @Nullable String name(@Nullable PersonId person) {
		return (person == null) ? null : this.squad.nameOf(person).orElse("–");
	}

	/**
	 * A team's rule sets.
	 *
	 * @param id for links
	 * @param name the team's
	 * @param versions newest first
	 * @param drafts those that can still be changed
	 */
	public record TeamLines(UUID id, String name, List<VersionLine> versions, List<DraftLine> drafts) {
	}

	/**
	 * A rule set in a list.
	 *
	 * @param teamId for links
	 * @param version counting from 1
	 * @param hash the first digits of its hash
	 * @param from first day it decides; absent for the one that always did
	 * @param written when it was adopted
	 * @param by who adopted it; absent for the first
	 * @param reason why; absent for the first
	 * @param firstText whether it is of the first rule text
	 * @param becameOf the version of that text it came of; absent for all others
	 * @param now whether it decides today
	 */
	public record VersionLine(UUID teamId, int version, String hash, @Nullable LocalDate from, LocalDateTime written,
			@Nullable String by, @Nullable String reason, boolean firstText, @Nullable Integer becameOf, boolean now) {

		static final int HASH_LENGTH = 12;

	}

	/**
	 * A draft in a list.
	 *
	 * @param id for links
	 * @param basedOn version it was copied from
	 * @param by who began it
	 * @param changed when it was last changed
	 */
	public record DraftLine(UUID id, int basedOn, @Nullable String by, LocalDateTime changed) {
	}

}
