package org.fallow.illness.web;

import java.util.List;
import java.util.UUID;

import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.ClearanceFacts;
import org.fallow.illness.NewClearance;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.view.HoldView;
import org.fallow.illness.view.StateView;
import org.fallow.rules.RuleBook;
import org.fallow.access.TraceSubject;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.wording.Message;
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
 * A coach records a clinician's clearance, the only way out of a hold.
 */
@Controller
@RequestMapping("/athletes/{id}/clearance")
class ClearancePage {

	private static final List<Symptom> EXAMINED = List.of(Symptom.CHEST_PAIN, Symptom.BREATHLESSNESS,
			Symptom.PALPITATIONS);

	private final AthleteAccess access;

	private final ClearanceFacts facts;

	private final TodayOf today;

	ClearancePage(AthleteAccess access, ClearanceFacts facts, TodayOf today) {
		this.access = access;
		this.facts = facts;
		this.today = today;
	}

	@GetMapping
	String form(@PathVariable UUID id, Model model) {
		this.access.fullyCoached(id);
		Athlete athlete = this.access.coached(id, TraceSubject.CLEARANCE_PAGE);
		String today = this.today.today(athlete).toString();
		model.addAttribute("form", ClearanceForm.of(today, Submission.newRequestId().toString()));
		return show(athlete, model);
	}

	@PostMapping
	String record(@PathVariable UUID id, @ModelAttribute("form") ClearanceForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.fullyCoached(id);
		NewClearance clearance = new ClearanceReader(form, result, this.today.today(athlete)).recorded();
		if (clearance == null) {
			return show(athlete, model);
		}
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		Saved saved = this.facts.clear(athlete.id(), clearance,
				Submission.page(this.access.person(), Role.COACH, request));
		if (saved instanceof Saved.Refused refused) {
			Problems.show(result, refused.problems());
			return show(athlete, model);
		}
		redirect.addFlashAttribute("notice", Message.of("clearance.stored"));
		return "redirect:/athletes/" + id;
	}

	private String show(Athlete athlete, Model model) {
		DayAssessment assessment = this.today.assessed(athlete);
		RuleBook book = this.today.book(athlete);
		model.addAttribute("athlete", AthleteName.of(athlete));
		model.addAttribute("state", StateView.of(assessment, book));
		model.addAttribute("holds", HoldView.standing(assessment));
		model.addAttribute("afterLinks", this.today.afterLinks(athlete));
		model.addAttribute("today", assessment.day());
		model.addAttribute("examinable", EXAMINED);
		model.addAttribute("scopes", List.of("REST", "EASY", "FULL"));
		return "illness/clearance";
	}

}
