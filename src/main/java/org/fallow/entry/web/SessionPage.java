package org.fallow.entry.web;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.EffortCeilings;
import org.fallow.entry.NewSession;
import org.fallow.entry.Saved;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.entry.SlippedTicks;
import org.fallow.entry.Submission;
import org.fallow.rules.Intensity;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.team.Today;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
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

	private final EffortCeilings ceilings;

	private final RedFlagsFirst redFlagsFirst;

	private final SlippedTicks slips;

	private final Today today;

	SessionPage(AthleteAccess access, Sessions sessions, EffortCeilings ceilings, RedFlagsFirst redFlagsFirst,
			SlippedTicks slips, Today today) {
		this.access = access;
		this.sessions = sessions;
		this.ceilings = ceilings;
		this.redFlagsFirst = redFlagsFirst;
		this.slips = slips;
		this.today = today;
	}

	@GetMapping("/session")
	String form(Model model) {
		Athlete athlete = this.access.self();
		SessionForm form = new SessionForm(null, today(athlete).toString(), Activity.RUN.name(), null, null,
				Intensity.EASY.name(), List.of(), null, Submission.newRequestId().toString());
		model.addAttribute("form", form);
		return show(athlete, form, model);
	}

	/**
	 * A stored session once more, for what was noticed later: the next morning above all.
	 */
	@GetMapping("/session/{id}")
	String stored(@PathVariable("id") String key, Model model) {
		Athlete athlete = this.access.self();
		LocalDate today = today(athlete);
		Optional<SessionLog> log = this.sessions.of(athlete.id(), today.minusDays(BACK_FILL_DAYS), today)
			.stream()
			.filter((one) -> one.key().equals(key))
			.findFirst();
		if (log.isEmpty()) {
			model.addAttribute("notice", Message.of("session.not-there", BACK_FILL_DAYS));
			return form(model);
		}
		SessionForm form = SessionForm.of(log.get(), this.slips.of(athlete, log.get().day(), key),
				Submission.newRequestId().toString());
		model.addAttribute("form", form);
		return show(athlete, form, model);
	}

	@PostMapping("/session")
	String save(@ModelAttribute SessionForm form, Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		SessionReader reader = new SessionReader(form);
		List<Problem> problems = reader.problems().isEmpty() ? tooOld(athlete, reader.session().day())
				: reader.problems();
		if (!problems.isEmpty()) {
			return refused(athlete, form, problems, model);
		}
		return store(athlete, form, reader.session(), model, redirect);
	}

	private List<Problem> tooOld(Athlete athlete, LocalDate day) {
		LocalDate earliest = today(athlete).minusDays(BACK_FILL_DAYS);
		return day.isBefore(earliest) ? List.of(Problem.of("day", "entry.day.too-old", day, earliest)) : List.of();
	}

	private String store(Athlete athlete, SessionForm form, NewSession session, Model model,
			RedirectAttributes redirect) {
		Saved saved = this.sessions.save(athlete.id(), session,
				Submission.page(athlete.id(), Role.ATHLETE, Typed.requestId(form.requestId())));
		if (saved instanceof Saved.Refused refused) {
			return refused(athlete, form, refused.problems(), model);
		}
		if (saved instanceof Saved.Stored stored && stored.again() && !stands(athlete, session, stored.key())) {
			SessionForm correction = form.correcting(stored.key(), Submission.newRequestId().toString());
			return refused(athlete, correction, List.of(Problem.of("", "session.sent-before")), model);
		}
		redirect.addFlashAttribute("notice", Message.of("session.stored"));
		return form.redFlags().isEmpty() ? "redirect:/today" : "redirect:/slip";
	}

	/** Whether the stored session of a key says what was sent again just now. */
	private boolean stands(Athlete athlete, NewSession session, String key) {
		return this.sessions.of(athlete.id(), session.day(), session.day())
			.stream()
			.filter((log) -> log.key().equals(key))
			.anyMatch((log) -> session.equals(new NewSession(session.key(), log.day(), log.activity(), log.minutes(),
					log.rpe(), log.intensity(), log.after(), log.removed(), log.note(), null)));
	}

	/**
	 * A form that was sent comes back. Red flags in it are stored all the same, and the
	 * page says first what to do.
	 */
	private String refused(Athlete athlete, SessionForm typed, List<Problem> problems, Model model) {
		SessionForm form = this.redFlagsFirst.kept(athlete, typed, today(athlete).minusDays(BACK_FILL_DAYS));
		model.addAttribute("redFlagsKept", !form.redFlags().isEmpty());
		BindingResult result = new BeanPropertyBindingResult(form, "form");
		FormFields.reject(result, problems);
		model.addAttribute("form", form);
		model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", result);
		return show(athlete, form, model);
	}

	private String show(Athlete athlete, SessionForm form, Model model) {
		LocalDate today = today(athlete);
		model.addAttribute("today", today);
		model.addAttribute("earliestDay", today.minusDays(BACK_FILL_DAYS));
		model.addAttribute("activities", Activity.values());
		model.addAttribute("intensities", Intensity.values());
		model.addAttribute("afterCodes", AfterSession.values());
		Double ceiling = this.ceilings.today(athlete);
		model.addAttribute("effortCeiling", ceiling);
		model.addAttribute("corrects", form.key() != null);
		model.addAttribute("redFlagsNamed", form.redFlags());
		if (!model.containsAttribute("redFlagsKept")) {
			model.addAttribute("redFlagsKept", false);
		}
		return "entry/session";
	}

	private LocalDate today(Athlete athlete) {
		return this.today.of(athlete);
	}

}
