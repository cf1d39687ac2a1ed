package org.fallow.entry.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.NewSession;
import org.fallow.entry.Saved;
import org.fallow.entry.Sessions;
import org.fallow.entry.Submission;
import org.fallow.rules.Intensity;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The session log with the after-session list, the signed-in athlete's own.
 */
@Controller
class SessionPage {

	private static final int BACK_FILL_DAYS = 14;

	private final AthleteAccess access;

	private final Sessions sessions;

	private final Clock clock;

	SessionPage(AthleteAccess access, Sessions sessions, Clock clock) {
		this.access = access;
		this.sessions = sessions;
		this.clock = clock;
	}

	@GetMapping("/session")
	String form(Model model) {
		Athlete athlete = this.access.self();
		SessionForm form = new SessionForm(today(athlete).toString(), Activity.RUN.name(), null, null,
				Intensity.EASY.name(), List.of(), null, Submission.newRequestId().toString(), false);
		model.addAttribute("form", form);
		return show(athlete, form, model);
	}

	@PostMapping("/session")
	String save(@ModelAttribute("form") SessionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		List<Problem> problems = new ArrayList<>();
		Optional<LocalDate> day = Typed.day(form.day(), "day", problems);
		Double minutes = Typed.number(form.minutes(), "minutes", problems);
		Double rpe = Typed.number(form.rpe(), "rpe", problems);
		if (minutes == null && problems.stream().noneMatch((p) -> p.field().equals("minutes"))) {
			problems.add(Problem.of("minutes", "session.minutes.missing"));
		}
		if (minutes != null && minutes != Math.rint(minutes)) {
			problems.add(Problem.of("minutes", "session.minutes.whole"));
		}
		model.addAttribute("confirmRedFlag", !form.redFlags().isEmpty());
		if (problems.isEmpty() && !form.redFlags().isEmpty() && !MorningForm.isTrue(form.redFlagConfirmed())) {
			return show(athlete, form, model);
		}
		if (problems.isEmpty() && minutes != null) {
			NewSession session = new NewSession(null, day.orElseThrow(),
					Typed.oneOf(Activity.class, form.activity()).orElse(Activity.RUN), minutes.intValue(), rpe,
					Typed.oneOf(Intensity.class, form.intensity()).orElse(null), form.noticed(), false,
					Typed.wordsOrNull(form.note()), null);
			Saved saved = this.sessions.save(athlete.id(), session,
					Submission.page(athlete.id(), Role.ATHLETE, Typed.requestId(form.requestId())));
			if (saved instanceof Saved.Refused refused) {
				problems.addAll(refused.problems());
			}
		}
		if (problems.isEmpty()) {
			redirect.addFlashAttribute("notice", Message.of("session.stored"));
			return "redirect:/today";
		}
		problems.forEach((problem) -> reject(result, form, problem));
		return show(athlete, form, model);
	}

	private static void reject(BindingResult result, SessionForm form, Problem problem) {
		Object[] arguments = problem.message().arguments().toArray();
		if (FormFields.has(form, problem.field())) {
			result.rejectValue(problem.field(), problem.message().code(), arguments, null);
		}
		else {
			result.reject(problem.message().code(), arguments, null);
		}
	}

	private String show(Athlete athlete, SessionForm form, Model model) {
		LocalDate today = today(athlete);
		model.addAttribute("today", today);
		model.addAttribute("earliestDay", today.minusDays(BACK_FILL_DAYS));
		model.addAttribute("activities", Activity.values());
		model.addAttribute("intensities", Intensity.values());
		model.addAttribute("afterCodes", AfterSession.values());
		model.addAttribute("effortCeiling", null);
		model.addAttribute("redFlagsNamed", form.redFlags());
		if (!model.containsAttribute("confirmRedFlag")) {
			model.addAttribute("confirmRedFlag", false);
		}
		return "entry/session";
	}

	private LocalDate today(Athlete athlete) {
		return LocalDate.now(this.clock.withZone(athlete.zone()));
	}

}
