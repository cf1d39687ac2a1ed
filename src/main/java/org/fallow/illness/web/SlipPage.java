package org.fallow.illness.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.illness.SlipFacts;
import org.fallow.illness.core.Tick;
import org.fallow.illness.view.Said;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The answer to a red flag: everything is stored when it is shown; it says whom to call
 * and only then asks whether it was meant. Other ticks of today can be told to be slips
 * here too. Always the signed-in athlete's own.
 */
@Controller
class SlipPage {

	private final AthleteAccess access;

	private final SlipFacts slips;

	private final TodayOf today;

	SlipPage(AthleteAccess access, SlipFacts slips, TodayOf today) {
		this.access = access;
		this.slips = slips;
		this.today = today;
	}

	@GetMapping("/slip")
	String show(Model model) {
		Athlete athlete = this.access.self();
		List<TickLine> lines = this.slips.today(athlete.id()).stream().map(TickLine::of).toList();
		List<TickLine> redFlags = lines.stream().filter((line) -> line.ticked().redFlag()).toList();
		model.addAttribute("redFlags", redFlags);
		model.addAttribute("anyRedFlagPossible", redFlags.stream().anyMatch(TickLine::possible));
		model.addAttribute("others", lines.stream().filter((line) -> !line.ticked().redFlag()).toList());
		model.addAttribute("holding", this.today.assessed(athlete).holding());
		return "illness/slip";
	}

	@PostMapping("/slip")
	String tell(@ModelAttribute SlipForm form, Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		Optional<Tick> tick = tick(form);
		Optional<LocalDate> day = day(form);
		if (tick.isEmpty() || day.isEmpty()) {
			model.addAttribute("problem", Message.of("slip.tick"));
			return show(model);
		}
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		Saved saved = this.slips.slip(athlete.id(), day.get(), tick.get(),
				Submission.page(athlete.id(), Role.ATHLETE, request));
		if (saved instanceof Saved.Refused refused) {
			model.addAttribute("problem", Said.of(refused.problems().get(0).message()));
			return show(model);
		}
		redirect.addFlashAttribute("notice", Message.of("slip.stored"));
		return "redirect:/today";
	}

	private static Optional<Tick> tick(SlipForm form) {
		try {
			String session = Problems.wordsOrNull(form.session());
			return Optional.of(new Tick(session, Problems.words(form.tick())));
		}
		catch (IllegalArgumentException ex) {
			return Optional.empty();
		}
	}

	private static Optional<LocalDate> day(SlipForm form) {
		try {
			return Optional.of(LocalDate.parse(Problems.words(form.day())));
		}
		catch (DateTimeException ex) {
			return Optional.empty();
		}
	}

}
