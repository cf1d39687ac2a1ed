package org.fallow.training.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.TraceSubject;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.training.Plan;
import org.fallow.training.Plans;
import org.fallow.training.RaceWords;
import org.fallow.training.Statements;
import org.fallow.training.TrainingLog;
import org.fallow.training.core.Rejoin;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What an athlete runs in the days ahead, for the athlete and for coaches. */
@Controller
class WeekPage {

	private static final int DAYS = 13;

	private static final int WEEKS = 4;

	private final AthleteAccess access;

	private final Recording recording;

	private final Plans plans;

	private final Statements statements;

	private final RaceWords raceWords;

	private final TrainingLog log;

	WeekPage(AthleteAccess access, Recording recording, Plans plans, Statements statements, RaceWords raceWords,
			TrainingLog log) {
		this.access = access;
		this.recording = recording;
		this.plans = plans;
		this.statements = statements;
		this.raceWords = raceWords;
		this.log = log;
	}

	@GetMapping("/sessions")
	String own(Model model) {
		return show(this.access.self(), StatementForm.blank(), List.of(), model);
	}

	@GetMapping("/athletes/{id}/sessions")
	String of(@PathVariable UUID id, Model model) {
		return show(this.access.coached(id, TraceSubject.PLAN), StatementForm.blank(), List.of(), model);
	}

	@PostMapping("/sessions/usual")
	String say(@ModelAttribute StatementForm form, Model model, RedirectAttributes redirect) {
		return say(this.access.self(), form, Role.ATHLETE, "redirect:/sessions", model, redirect);
	}

	@PostMapping("/athletes/{id}/sessions/usual")
	String sayFor(@PathVariable UUID id, @ModelAttribute StatementForm form, Model model, RedirectAttributes redirect) {
		return say(this.access.fullyCoached(id), form, Role.COACH, "redirect:/athletes/" + id + "/sessions", model,
				redirect);
	}

	@PostMapping("/athletes/{id}/sessions/race")
	String raceWord(@PathVariable UUID id, @ModelAttribute RaceWordForm form, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		List<Problem> problems = this.raceWords.say(athlete.id(), form.day(), form.agrees(), form.reason(),
				Submission.page(this.access.person(), Role.COACH, form.request()));
		if (!problems.isEmpty()) {
			model.addAttribute("raceReason", form.raceReason());
			return show(athlete, StatementForm.blank(), problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("race-word.saved"));
		return "redirect:/athletes/" + id + "/sessions";
	}

	private String say(Athlete athlete, StatementForm form, Role role, String next, Model model,
			RedirectAttributes redirect) {
		List<Problem> problems = new ArrayList<>();
		Integer week = StatementForm.number("weekMinutes", form.weekMinutes(), problems);
		Integer longRun = StatementForm.number("longMinutes", form.longMinutes(), problems);
		Integer maximum = StatementForm.number("maximumBpm", form.maximumBpm(), problems);
		if (problems.isEmpty()) {
			problems.addAll(this.statements.say(athlete.id(), week, longRun, maximum,
					Submission.page(this.access.person(), role, form.request())));
		}
		if (!problems.isEmpty()) {
			return show(athlete, form, problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("statement.saved"));
		return next;
	}

	private String show(Athlete athlete, StatementForm form, List<Problem> problems, Model model) {
		Plan plan = this.plans.of(athlete.id(), this.recording.today(athlete).plusDays(DAYS));
		boolean own = athlete.id().equals(this.access.person());
		LocalDate lastIll = plan.position().lastIll();
		model.addAttribute("name", own ? null : athlete.name());
		model.addAttribute("raceWords", this.raceWords.of(athlete.id(), plan.position().today()));
		model.addAttribute("racesSoon",
				(own || lastIll == null || !this.access.mayLoosen(athlete.id())) ? List.of()
						: this.raceWords.races(athlete.id())
							.stream()
							.filter((race) -> !race.isAfter(lastIll.plusDays(Rejoin.RACE_DAYS)))
							.toList());
		model.addAttribute("athleteId", athlete.id());
		model.addAttribute("plan", plan);
		model.addAttribute("lines",
				plan.sessions().stream().map((session) -> PlanLine.of(session, plan.ceilings())).toList());
		model.addAttribute("under18", athlete.isUnder18(plan.position().today()));
		model.addAttribute("inGroup", athlete.groupId() != null);
		model.addAttribute("weeks",
				this.log.of(athlete.id(), WEEKS)
					.stream()
					.filter((week) -> !week.sessions().isEmpty() || week.minutesRun() > 0)
					.toList());
		model.addAttribute("statement", this.statements.of(athlete.id()));
		model.addAttribute("problems", problems);
		model.addAttribute("requestId", Submission.newRequestId());
		model.addAttribute("weekMinutes", form.weekMinutes());
		model.addAttribute("longMinutes", form.longMinutes());
		model.addAttribute("maximumBpm", form.maximumBpm());
		return "training/sessions";
	}

}
