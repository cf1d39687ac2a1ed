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
 * An athlete reports being ill, in a minute. A ticked red flag is asked once more, then
 * opens a hold as in a morning entry.
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
				Submission.newRequestId().toString(), null));
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
		model.addAttribute("confirmRedFlag", !redFlags(form).isEmpty());
		if (result.hasErrors() || !form.ticked().isEmpty() && !"true".equals(form.redFlagConfirmed())) {
			return show(athlete, model);
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
			return show(athlete, model);
		}
		redirect.addFlashAttribute("notice", Message.of("report.stored"));
		return "redirect:/today";
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
		if (!model.containsAttribute("confirmRedFlag")) {
			model.addAttribute("confirmRedFlag", false);
		}
		ReportForm form = (ReportForm) model.getAttribute("form");
		model.addAttribute("redFlagsNamed", (form == null) ? List.of() : redFlags(form));
		return "illness/report";
	}

}
