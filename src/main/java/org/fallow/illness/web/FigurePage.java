package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.TraceSubject;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.illness.FigureFacts;
import org.fallow.illness.NewFigure;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
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
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * A coach records a clinician's own figure for a person, from which on a reading is too
 * fast at rest, and ends one.
 */
@Controller
@RequestMapping("/athletes/{id}/figure")
class FigurePage {

	private final AthleteAccess access;

	private final FigureFacts facts;

	private final TodayOf today;

	FigurePage(AthleteAccess access, FigureFacts facts, TodayOf today) {
		this.access = access;
		this.facts = facts;
		this.today = today;
	}

	@GetMapping
	String form(@PathVariable UUID id, Model model) {
		this.access.fullyCoached(id);
		Athlete athlete = this.access.coached(id, TraceSubject.CLEARANCE_PAGE);
		String today = this.today.today(athlete).toString();
		model.addAttribute("form", FigureForm.of(today, Submission.newRequestId().toString()));
		return show(athlete, model);
	}

	@PostMapping
	String record(@PathVariable UUID id, @ModelAttribute("form") FigureForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		NewFigure figure = figure(form, result);
		Saved saved = (figure == null) ? null : this.facts.record(athlete.id(), figure, submission(form));
		return answer(athlete, saved, result, "figure.stored", model, redirect);
	}

	@PostMapping("/end")
	String end(@PathVariable UUID id, @ModelAttribute("form") FigureForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		Optional<Method> method = Problems.oneOf(Method.class, form.method());
		Optional<Posture> posture = Problems.oneOf(Posture.class, form.posture());
		if (method.isEmpty() || posture.isEmpty()) {
			result.reject("figure.none");
			return show(athlete, model);
		}
		Saved saved = this.facts.end(athlete.id(), method.get(), posture.get(), Problems.words(form.reason()),
				submission(form));
		return answer(athlete, saved, result, "figure.ended", model, redirect);
	}

	private String answer(Athlete athlete, @Nullable Saved saved, BindingResult result, String stored, Model model,
			RedirectAttributes redirect) {
		if (saved instanceof Saved.Refused refused) {
			Problems.show(result, refused.problems());
		}
		if (saved == null || result.hasErrors()) {
			return show(athlete, model);
		}
		redirect.addFlashAttribute("notice", Message.of(stored));
		return "redirect:/athletes/" + athlete.id().value();
	}

	private Submission submission(FigureForm form) {
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		return Submission.page(this.access.person(), Role.COACH, request);
	}

	private static @Nullable NewFigure figure(FigureForm form, BindingResult result) {
		Optional<Method> method = Problems.oneOf(Method.class, form.method());
		Optional<Posture> posture = Problems.oneOf(Posture.class, form.posture());
		Optional<LocalDate> spokenOn = Problems.day(result, "spokenOn", form.spokenOn());
		String bpm = Problems.words(form.bpm());
		if (method.isEmpty()) {
			result.rejectValue("method", "entry.method.missing");
		}
		if (posture.isEmpty()) {
			result.rejectValue("posture", "entry.posture.missing");
		}
		if (spokenOn.isEmpty() && !result.hasFieldErrors("spokenOn")) {
			result.rejectValue("spokenOn", "day.unreadable");
		}
		if (!bpm.matches("\\d{1,3}")) {
			result.rejectValue("bpm", "figure.whole");
		}
		return result.hasErrors() ? null
				: new NewFigure(method.orElseThrow(), posture.orElseThrow(), Integer.parseInt(bpm),
						Problems.words(form.who()), Problems.words(form.role()), spokenOn.orElseThrow(),
						Problems.wordsOrNull(form.note()));
	}

	private String show(Athlete athlete, Model model) {
		model.addAttribute("athlete", AthleteName.of(athlete));
		model.addAttribute("today", this.today.today(athlete));
		model.addAttribute("figures", this.facts.of(athlete.id()));
		model.addAttribute("methods", Method.values());
		model.addAttribute("postures", Posture.values());
		model.addAttribute("requestId", Submission.newRequestId().toString());
		return "illness/figure";
	}

}
