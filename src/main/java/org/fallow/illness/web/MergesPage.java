package org.fallow.illness.web;

import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.entry.Saved;
import org.fallow.illness.Merges;
import org.fallow.illness.PersonMerge;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.NoSuchAthlete;
import org.fallow.wording.Message;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The merges a coach may take back, what they changed, and the athlete's having read of
 * one.
 */
@Controller
class MergesPage {

	private static final int MOST_DAYS = 200;

	private final AthleteAccess access;

	private final Merges merges;

	MergesPage(AthleteAccess access, Merges merges) {
		this.access = access;
		this.merges = merges;
	}

	@GetMapping("/merges")
	String list(Model model) {
		model.addAttribute("merges", this.merges.all().stream().filter(this::isCoached).map(this::line).toList());
		return "illness/merges";
	}

	@GetMapping("/merges/{id}")
	String one(@PathVariable UUID id, Model model) {
		PersonMerge merge = coached(id);
		model.addAttribute("merge", line(merge));
		model.addAttribute("days", this.merges.replaced(merge, MOST_DAYS));
		model.addAttribute("most", MOST_DAYS);
		return "illness/merge";
	}

	@PostMapping("/merges/{id}/undo")
	String undo(@PathVariable UUID id, RedirectAttributes redirect) {
		PersonMerge merge = coached(id);
		this.access.fullyCoached(merge.kept().value());
		Saved saved = this.merges.undo(merge.kept(), id);
		if (saved instanceof Saved.Refused refused) {
			redirect.addFlashAttribute("problem", refused.problems().get(0).message());
		}
		else {
			redirect.addFlashAttribute("notice", Message.of("merge.undone", merge.keptName()));
		}
		return "redirect:/merges";
	}

	@PostMapping("/merges/{id}/read")
	String read(@PathVariable UUID id) {
		Athlete self = this.access.self();
		if (!this.merges.read(self.id(), id)) {
			throw new NoSuchAthlete(self.id());
		}
		return "redirect:/today";
	}

	private PersonMerge coached(UUID id) {
		return this.merges.find(id).filter(this::isCoached).orElseThrow(() -> new NoSuchAthlete(this.access.person()));
	}

	/** The athletes themselves are told on Today; the list is for coaches. */
	private boolean isCoached(PersonMerge merge) {
		return this.access.mayCoach(merge.kept());
	}

	private MergeLine line(PersonMerge merge) {
		boolean undoable = this.access.mayLoosen(merge.kept()) && this.merges.againstUndoing(merge).isEmpty();
		return MergeLine.of(merge, zone(), undoable);
	}

	private ZoneId zone() {
		List<Athlete> athletes = this.access.athletes();
		return athletes.isEmpty() ? ZoneOffset.UTC : athletes.get(0).zone();
	}

}
