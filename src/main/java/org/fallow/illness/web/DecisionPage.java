package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.illness.CeilingFacts;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.NewSaid;
import org.fallow.illness.NewStricter;
import org.fallow.illness.NewWorkingLevel;
import org.fallow.illness.SlipFacts;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.LevelOffer;
import org.fallow.illness.view.CeilingView;
import org.fallow.illness.view.EpisodeView;
import org.fallow.illness.view.StateView;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;
import org.fallow.access.TraceSubject;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.team.Squad;
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
 * What a coach may decide beside the rules, each with a reason: stricter, a hold,
 * symptoms alone, a withdrawal. Nothing here loosens a hold.
 */
@Controller
@RequestMapping("/athletes/{id}/decision")
class DecisionPage {

	private final AthleteAccess access;

	private final IllnessFacts facts;

	private final CeilingFacts ceilings;

	private final SlipFacts slips;

	private final Squad squad;

	private final TodayOf today;

	DecisionPage(AthleteAccess access, IllnessFacts facts, CeilingFacts ceilings, SlipFacts slips, Squad squad,
			TodayOf today) {
		this.access = access;
		this.facts = facts;
		this.ceilings = ceilings;
		this.slips = slips;
		this.squad = squad;
		this.today = today;
	}

	@GetMapping
	String form(@PathVariable UUID id, Model model) {
		model.addAttribute("form", DecisionForm.of(Submission.newRequestId().toString()));
		return show(this.access.coached(id, TraceSubject.DECISION_PAGE), "STRICTER", model);
	}

	@PostMapping("/stricter")
	String stricter(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.coached(id);
		NewStricter stricter = stricter(athlete, form, result);
		return (stricter == null) ? show(athlete, "STRICTER", model) : done(athlete, "STRICTER",
				this.ceilings.stricter(athlete.id(), stricter, submission(form)), result, model, redirect);
	}

	private @Nullable NewStricter stricter(Athlete athlete, DecisionForm form, BindingResult result) {
		Optional<LocalDate> until = Problems.day(result, "until", form.until());
		Optional<Clearance> ceiling = Problems.oneOf(Clearance.class, form.ceiling());
		if (ceiling.isEmpty()) {
			result.rejectValue("ceiling", "stricter.ceiling");
		}
		if (until.isEmpty() && !result.hasFieldErrors("until")) {
			result.rejectValue("until", "stricter.until.missing", new Object[] { ceilingDays(athlete) }, null);
		}
		return result.hasErrors() ? null : new NewStricter(this.today.today(athlete), until.orElseThrow(),
				ceiling.orElseThrow(), Problems.words(form.reason()), form.spoken());
	}

	@PostMapping("/lift")
	String lift(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		boolean replaces = !Problems.words(form.ceiling()).isEmpty();
		NewStricter instead = replaces ? stricter(athlete, form, result) : null;
		if (result.hasErrors()) {
			return show(athlete, "LIFT", model);
		}
		Saved saved = this.ceilings.lift(athlete.id(), Problems.words(form.names()), Problems.words(form.reason()),
				form.spoken(), instead, submission(form));
		return done(athlete, "LIFT", saved, result, model, redirect);
	}

	@PostMapping("/said-today")
	String saidToday(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result,
			Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		NewSaid said = new NewSaid("true".equals(form.able()), "true".equals(form.eating()),
				Problems.words(form.reason()));
		return done(athlete, "SAID_TODAY", this.ceilings.saidToday(athlete.id(), said, submission(form)), result, model,
				redirect);
	}

	@PostMapping("/withdraw")
	String withdraw(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		Saved saved = this.facts.withdraw(athlete.id(), Problems.words(form.reason()), submission(form));
		return done(athlete, "WITHDRAW", saved, result, model, redirect);
	}

	@PostMapping("/symptoms-only")
	String symptomsOnly(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result,
			Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		Saved saved = this.facts.symptomsOnly(athlete.id(), Problems.words(form.reason()), submission(form));
		return done(athlete, "SYMPTOMS_ONLY", saved, result, model, redirect);
	}

	@PostMapping("/working-level")
	String workingLevel(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result,
			Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		NewWorkingLevel level = new NewWorkingLevel(Problems.words(form.who()), Problems.words(form.role()),
				Problems.words(form.word()), Problems.words(form.reason()));
		Saved saved = this.facts.workingLevel(athlete.id(), level, submission(form));
		return done(athlete, "WORKING_LEVEL", saved, result, model, redirect);
	}

	@PostMapping("/hold")
	String hold(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.coached(id);
		Saved saved = this.facts.hold(athlete.id(), this.today.today(athlete), Problems.words(form.reason()),
				submission(form));
		return done(athlete, "HOLD", saved, result, model, redirect);
	}

	@PostMapping("/asked")
	String asked(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		Saved saved = this.slips.asked(athlete.id(), Problems.words(form.reason()), submission(form));
		return done(athlete, "ASKED", saved, result, model, redirect);
	}

	@PostMapping("/slip")
	String slip(@PathVariable UUID id, @ModelAttribute("form") DecisionForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		Saved saved = this.slips.accept(athlete.id(), Problems.words(form.reason()), submission(form));
		return done(athlete, "SLIP", saved, result, model, redirect);
	}

	private Submission submission(DecisionForm form) {
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		return Submission.page(this.access.person(), Role.COACH, request);
	}

	private String done(Athlete athlete, String kind, Saved saved, BindingResult result, Model model,
			RedirectAttributes redirect) {
		if (saved instanceof Saved.Refused refused) {
			Problems.show(result, refused.problems());
			return show(athlete, kind, model);
		}
		redirect.addFlashAttribute("notice", Message.of("decision.stored"));
		return "redirect:/athletes/" + athlete.id().value();
	}

	private int ceilingDays(Athlete athlete) {
		return this.today.rules(athlete).words().ceilingDays();
	}

	private String show(Athlete athlete, String kind, Model model) {
		DayAssessment assessment = this.today.assessed(athlete);
		RuleBook book = this.today.book(athlete);
		model.addAttribute("athlete", AthleteName.of(athlete));
		model.addAttribute("state", StateView.of(assessment, book));
		model.addAttribute("episode", EpisodeView.of(assessment, book));
		model.addAttribute("under18", athlete.isUnder18(assessment.day()));
		model.addAttribute("today", assessment.day());
		boolean full = this.access.mayLoosen(athlete.id());
		model.addAttribute("level", full ? LevelView.of(assessment.level()) : null);
		model.addAttribute("kind", kind);
		model.addAttribute("lastDay", assessment.day().plusDays(ceilingDays(athlete)));
		model.addAttribute("ceilings", full ? CeilingView.all(this.ceilings.from(athlete.id(), assessment.day()),
				(person) -> this.squad.nameOf(person).orElse("–")) : List.of());
		model.addAttribute("maySay", full && assessment.gate() != null && !athlete.isUnder18(assessment.day()));
		model.addAttribute("available", full ? available(assessment) : List.of("STRICTER", "HOLD"));
		return "illness/decision";
	}

	private static List<String> available(DayAssessment assessment) {
		List<String> kinds = new ArrayList<>(List.of("STRICTER", "HOLD"));
		Episode episode = assessment.state().episode();
		if (assessment.seen().unasked() != null) {
			kinds.add("ASKED");
		}
		if (assessment.notices().stream().anyMatch((notice) -> notice.code().equals("advised.slip-waits"))) {
			kinds.add("SLIP");
		}
		if (assessment.mayGoBySymptoms()) {
			kinds.add("SYMPTOMS_ONLY");
		}
		LevelOffer level = assessment.level();
		if (level != null && level.possible()) {
			kinds.add("WORKING_LEVEL");
		}
		if (episode != null && !assessment.holding()) {
			kinds.add("WITHDRAW");
		}
		return kinds;
	}

}
