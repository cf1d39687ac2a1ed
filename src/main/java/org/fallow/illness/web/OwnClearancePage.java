package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.illness.ClearanceFacts;
import org.fallow.illness.NewClearance;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.view.HoldView;
import org.fallow.illness.view.StateView;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * An athlete who is all there is tells what a clinician said. For anybody with a coach or
 * a club's owner there is no such page.
 */
@Controller
@RequestMapping("/clearance")
class OwnClearancePage {

	private final AthleteAccess access;

	private final ClearanceFacts facts;

	private final TodayOf today;

	OwnClearancePage(AthleteAccess access, ClearanceFacts facts, TodayOf today) {
		this.access = access;
		this.facts = facts;
		this.today = today;
	}

	@GetMapping
	String form(Model model) {
		Athlete athlete = alone();
		model.addAttribute("form",
				ClearanceForm.of(this.today.today(athlete).toString(), Submission.newRequestId().toString()));
		return show(athlete, model);
	}

	@PostMapping
	String tell(@ModelAttribute("form") ClearanceForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = alone();
		NewClearance clearance = new ClearanceReader(form, result, this.today.today(athlete)).told(days(athlete));
		if (clearance == null) {
			return show(athlete, model);
		}
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		Saved saved = this.facts.tell(athlete.id(), clearance,
				Submission.page(this.access.person(), Role.ATHLETE, request));
		if (saved instanceof Saved.Refused refused) {
			Problems.show(result, refused.problems());
			return show(athlete, model);
		}
		redirect.addFlashAttribute("notice", Message.of("clearance.told.stored"));
		return "redirect:/today";
	}

	private Athlete alone() {
		Athlete athlete = this.access.self();
		if (!this.facts.isAllThereIs(athlete.id())) {
			throw new NoSuchAthlete(athlete.id());
		}
		return athlete;
	}

	private int days(Athlete athlete) {
		return this.today.rules(athlete).words().toldByAthleteDays();
	}

	private String show(Athlete athlete, Model model) {
		DayAssessment assessment = this.today.assessed(athlete);
		LocalDate today = assessment.day();
		model.addAttribute("state", StateView.of(assessment, this.today.book(athlete)));
		model.addAttribute("holds", HoldView.standing(assessment));
		model.addAttribute("today", today);
		model.addAttribute("last", today.plusDays(days(athlete) - 1L));
		model.addAttribute("days", days(athlete));
		model.addAttribute("scopes", List.of("REST", "EASY"));
		return "illness/own-clearance";
	}

}
