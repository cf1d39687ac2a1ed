package org.fallow.rules.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.PublishedPaths;
import org.fallow.rules.RuleBounds;
import org.fallow.rules.RuleDraft;
import org.fallow.rules.RuleDrafts;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleSet;
import org.fallow.rules.RuleSets;
import org.fallow.team.AthleteAccess;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * A draft: its numbers, whose paths it follows, its end and its adoption.
 */
@Controller
@RequestMapping("/rules/drafts/{id}")
class DraftPage {

	private final AthleteAccess access;

	private final RuleSets ruleSets;

	private final RuleDrafts drafts;

	DraftPage(AthleteAccess access, RuleSets ruleSets, RuleDrafts drafts) {
		this.access = access;
		this.ruleSets = ruleSets;
		this.drafts = drafts;
	}

	@GetMapping
	String edit(@PathVariable UUID id, Model model) {
		return edit(draft(id), Map.of(), List.of(), model);
	}

	@PostMapping
	String save(@PathVariable UUID id, @RequestParam Map<String, String> typed, Model model,
			RedirectAttributes redirect) {
		RuleDraft draft = draft(id);
		RuleEdit edit = RuleEdit.of(draft.rules(), typed);
		List<Problem> problems = edit.problems().isEmpty() ? change(id, typed, edit.rules()) : edit.problems();
		if (!problems.isEmpty()) {
			return edit(draft, typed, problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("rules.draft.saved"));
		return "redirect:/rules/drafts/" + id;
	}

	@PostMapping("/paths")
	String paths(@PathVariable UUID id, @RequestParam Map<String, String> typed, Model model,
			RedirectAttributes redirect) {
		RuleDraft draft = draft(id);
		List<Problem> problems = new ArrayList<>();
		RuleSet chosen = chosen(draft.rules(), typed, problems);
		problems.addAll(RuleBounds.check(chosen));
		if (problems.isEmpty()) {
			problems.addAll(change(id, typed, chosen));
		}
		if (!problems.isEmpty()) {
			return edit(draft, Map.of(), problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("rules.draft.saved"));
		return "redirect:/rules/drafts/" + id;
	}

	@PostMapping("/discard")
	String discard(@PathVariable UUID id, Model model, RedirectAttributes redirect) {
		List<Problem> problems = this.drafts.discard(id, this.access.person());
		if (!problems.isEmpty()) {
			return edit(draft(id), Map.of(), problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("rules.draft.discarded"));
		return "redirect:/rules";
	}

	@GetMapping("/adopt")
	String adoption(@PathVariable UUID id, Model model) {
		RuleDraft draft = draft(id);
		return adoption(draft, this.drafts.earliestDay(draft.teamId()).toString(), "", List.of(), model);
	}

	@PostMapping("/adopt")
	String adopt(@PathVariable UUID id, @RequestParam(defaultValue = "") String day,
			@RequestParam(defaultValue = "") String reason, Model model, RedirectAttributes redirect) {
		RuleDraft draft = draft(id);
		LocalDate from = day(day);
		List<Problem> problems = (from == null) ? List.of(Problem.of("day", "day.unreadable"))
				: this.drafts.adopt(id, this.access.person(), from, reason);
		if (from == null || !problems.isEmpty()) {
			return adoption(draft, day, reason, problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("rules.adopted", from));
		return "redirect:/rules";
	}

	private RuleDraft draft(UUID id) {
		return this.drafts.of(id, this.access.person());
	}

	private List<Problem> change(UUID id, Map<String, String> typed, RuleSet rules) {
		String text = typed.getOrDefault("changes", "");
		int changes = text.matches("\\d{1,9}") ? Integer.parseInt(text) : -1;
		return this.drafts.change(id, this.access.person(), changes, rules);
	}

	/** A path whose protocol stays keeps its numbers; another one begins with its own. */
	private static RuleSet chosen(RuleSet rules, Map<String, String> typed, List<Problem> problems) {
		RuleSet chosen = rules;
		for (PathName name : PathName.values()) {
			String text = typed.get("protocol." + name);
			Protocol protocol = Arrays.stream(Protocol.values())
				.filter((one) -> one.name().equals(text))
				.findFirst()
				.orElse(null);
			if (text != null && protocol == null) {
				problems.add(Problem.of("", "rules.path.unknown"));
			}
			else if (protocol != null && protocol != rules.path(name).definedBy()) {
				chosen = chosen.with(PublishedPaths.of(protocol, name));
			}
		}
		return chosen;
	}

	private static @Nullable LocalDate day(String text) {
		try {
			return LocalDate.parse(text.strip());
		}
		catch (DateTimeParseException ex) {
			return null;
		}
	}

	private static String edit(RuleDraft draft, Map<String, String> typed, List<Problem> problems, Model model) {
		model.addAttribute("draft", draft);
		model.addAttribute("changes", typed.getOrDefault("changes", String.valueOf(draft.changes())));
		model.addAttribute("problems", RuleWords.told(problems, draft.rules()));
		model.addAttribute("paths", PathChoice.all(draft.rules()));
		model.addAttribute("groups", FieldGroup.of(draft.rules(), FieldRow.all(draft.rules(), typed, problems)));
		return "rules/draft";
	}

	/** The numbers that differ from the version copied, where both have them. */
	private List<FieldGroup> changed(RuleDraft draft) {
		RuleSet before = this.ruleSets.version(draft.teamId(), draft.basedOn()).rules();
		Map<String, String> was = RuleEdit.texts(before);
		List<FieldRow> rows = FieldRow.all(draft.rules(), Map.of(), List.of())
			.stream()
			.map((row) -> row.usually(was.getOrDefault(row.pointer(), row.value())))
			.filter((row) -> !row.value().equals(row.usual()))
			.toList();
		return FieldGroup.of(draft.rules(), rows);
	}

	private String adoption(RuleDraft draft, String day, String reason, List<Problem> problems, Model model) {
		model.addAttribute("draft", draft);
		model.addAttribute("day", day);
		model.addAttribute("reason", reason);
		model.addAttribute("earliest", this.drafts.earliestDay(draft.teamId()));
		model.addAttribute("problems", RuleWords.told(problems, draft.rules()));
		model.addAttribute("changed", changed(draft));
		model.addAttribute("pathChanges",
				PathChange.all(this.ruleSets.version(draft.teamId(), draft.basedOn()).rules(), draft.rules()));
		model.addAttribute("paths", PathChoice.all(draft.rules()));
		return "rules/adopt";
	}

}
