package org.fallow.illness.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.illness.Merges;
import org.fallow.illness.PersonMerge;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Entries;
import org.fallow.team.NoSuchAthlete;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * A coach says that two entries are the same person: first which, then both side by side,
 * then it is done.
 */
@Controller
@RequestMapping("/athletes/{id}/same")
class MergePage {

	private static final String PAGE = "illness/same";

	private final AthleteAccess access;

	private final Merges merges;

	private final Entries entries;

	private final TodayOf today;

	MergePage(AthleteAccess access, Merges merges, Entries entries, TodayOf today) {
		this.access = access;
		this.merges = merges;
		this.entries = entries;
		this.today = today;
	}

	@GetMapping
	String form(@PathVariable UUID id, @RequestParam(required = false) @Nullable String other, Model model,
			RedirectAttributes redirect) {
		Optional<PersonMerge> part = this.merges.thatPutAside(id);
		if (part.isPresent()) {
			return toKept(part.get(), redirect);
		}
		Athlete kept = this.access.fullyCoached(id);
		model.addAttribute("form", new MergeForm(other, null, Submission.newRequestId().toString()));
		return show(kept, other, model);
	}

	@PostMapping
	String merge(@PathVariable UUID id, @ModelAttribute("form") MergeForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Optional<PersonMerge> part = this.merges.thatPutAside(id);
		if (part.isPresent()) {
			return toKept(part.get(), redirect);
		}
		Athlete kept = this.access.fullyCoached(id);
		UUID other = id(form.other());
		if (other == null) {
			result.rejectValue("other", "merge.choose");
			return show(kept, null, model);
		}
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		Saved saved = this.merges.merge(kept.id(), new PersonId(other), Problems.words(form.reason()), request);
		if (saved instanceof Saved.Refused refused) {
			Problems.show(result, refused.problems());
			return show(kept, form.other(), model);
		}
		redirect.addFlashAttribute("notice", Message.of("merge.stored", kept.name()));
		return "redirect:/merges";
	}

	private static String toKept(PersonMerge part, RedirectAttributes redirect) {
		redirect.addFlashAttribute("problem", Message.of("merge.part-of", part.otherName(), part.keptName()));
		return "redirect:/merges";
	}

	private String show(Athlete kept, @Nullable String chosen, Model model) {
		List<Athlete> others = this.access.athletes()
			.stream()
			.filter((one) -> !one.id().equals(kept.id()) && this.access.mayLoosen(one.id()))
			.toList();
		UUID id = id(chosen);
		Athlete other = others.stream().filter((one) -> one.id().value().equals(id)).findFirst().orElse(null);
		if (other == null && id != null && !id.equals(kept.id().value()) && this.merges.thatPutAside(id).isEmpty()) {
			throw new NoSuchAthlete(new PersonId(id));
		}
		model.addAttribute("athlete", AthleteName.of(kept));
		model.addAttribute("others", others.stream().map(AthleteName::of).toList());
		model.addAttribute("sides", (other == null) ? List.of() : List.of(side(kept), side(other)));
		return PAGE;
	}

	private EntrySide side(Athlete athlete) {
		this.access.coached(athlete.id().value(), TraceSubject.ATHLETE_PAGE);
		return EntrySide.of(athlete, this.merges.mornings(athlete.id()), this.entries.hasAccount(athlete.id()),
				this.today.assessed(athlete), this.today.book(athlete));
	}

	private static @Nullable UUID id(@Nullable String text) {
		try {
			return (text == null || text.isBlank()) ? null : UUID.fromString(text.strip());
		}
		catch (IllegalArgumentException ex) {
			return null;
		}
	}

}
