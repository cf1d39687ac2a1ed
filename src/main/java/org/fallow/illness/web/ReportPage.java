package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.entry.IocConsensus;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.NewReport;
import org.fallow.illness.core.ReportKind;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * An athlete reports being ill, in a minute. A ticked red flag opens a hold at once, as
 * in a morning entry, whatever else is wrong in the form.
 */
@Controller
class ReportPage {

	private static final int EARLIEST_ONSET_DAYS = 60;

	private final AthleteAccess access;

	private final IllnessFacts facts;

	private final TodayOf today;

	ReportPage(AthleteAccess access, IllnessFacts facts, TodayOf today) {
		this.access = access;
		this.facts = facts;
		this.today = today;
	}

	@GetMapping("/report")
	String form(Model model) {
		Athlete athlete = this.access.self();
		model.addAttribute("form", new ReportForm(this.today.today(athlete).toString(), null, null, List.of(), null,
				Submission.newRequestId().toString()));
		return show(athlete, model);
	}

	@PostMapping("/report")
	String report(@ModelAttribute("form") ReportForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		LocalDate today = this.today.today(athlete);
		Optional<LocalDate> onset = Problems.day(result, "onset", form.onset());
		Optional<ReportKind> kind = Problems.oneOf(ReportKind.class, form.kind());
		Optional<Integer> worst = worst(form);
		if (onset.isEmpty() && !result.hasFieldErrors("onset")) {
			result.rejectValue("onset", "report.onset.missing");
		}
		if (onset.isPresent() && onset.get().isBefore(today.minusDays(EARLIEST_ONSET_DAYS))) {
			result.rejectValue("onset", "report.onset.old", new Object[] { EARLIEST_ONSET_DAYS }, null);
		}
		if (kind.isEmpty()) {
			result.rejectValue("kind", "report.kind.missing");
		}
		if (worst.isEmpty()) {
			result.rejectValue("worst", "report.worst.missing");
		}
		if (result.hasErrors()) {
			return refused(athlete, form, model);
		}
		return store(athlete, form, new NewReport(onset.orElseThrow(), kind.orElseThrow(), worst.orElseThrow(),
				Problems.wordsOrNull(form.note()), null), result, model, redirect);
	}

	private String store(Athlete athlete, ReportForm form, NewReport report, BindingResult result, Model model,
			RedirectAttributes redirect) {
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		Submission submission = Submission.page(athlete.id(), Role.ATHLETE, request);
		Saved saved = redFlags(form).isEmpty() ? this.facts.report(athlete.id(), report, submission)
				: this.facts.reportWithRedFlags(athlete.id(), report, redFlags(form), submission);
		if (saved instanceof Saved.Refused refused) {
			Problems.show(result, refused.problems());
			return refused(athlete, form, model);
		}
		redirect.addFlashAttribute("notice", Message.of("report.stored"));
		return redFlags(form).isEmpty() ? "redirect:/today" : "redirect:/slip";
	}

	/** The form comes back; red flags in it hold all the same. */
	private String refused(Athlete athlete, ReportForm form, Model model) {
		List<Symptom> redFlags = redFlags(form);
		if (!redFlags.isEmpty()) {
			UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
			this.facts.redFlags(athlete.id(), this.today.today(athlete), redFlags,
					Submission.page(athlete.id(), Role.ATHLETE, request));
		}
		model.addAttribute("redFlagsKept", !redFlags.isEmpty());
		return show(athlete, model);
	}

	private static Optional<Integer> worst(ReportForm form) {
		String text = Problems.words(form.worst());
		return text.matches("\\d|10") ? Optional.of(Integer.valueOf(text)) : Optional.empty();
	}

	private static List<Symptom> redFlags(ReportForm form) {
		return form.ticked()
			.stream()
			.map((code) -> Problems.oneOf(Symptom.class, code))
			.flatMap(Optional::stream)
			.filter(Symptom::isRedFlag)
			.toList();
	}

	private String show(Athlete athlete, Model model) {
		LocalDate today = this.today.today(athlete);
		model.addAttribute("today", today);
		model.addAttribute("earliestDay", today.minusDays(EARLIEST_ONSET_DAYS));
		model.addAttribute("mildTo", IocConsensus.MILD_TO);
		model.addAttribute("moderateTo", IocConsensus.MODERATE_TO);
		model.addAttribute("kinds", ReportKind.values());
		model.addAttribute("redFlagSymptoms", Arrays.stream(Symptom.values()).filter(Symptom::isRedFlag).toList());
		if (!model.containsAttribute("redFlagsKept")) {
			model.addAttribute("redFlagsKept", false);
		}
		ReportForm form = (ReportForm) model.getAttribute("form");
		model.addAttribute("redFlagsNamed", (form == null) ? List.of() : redFlags(form));
		return "illness/report";
	}

}
