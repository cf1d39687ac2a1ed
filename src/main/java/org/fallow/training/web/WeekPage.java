package org.fallow.training.web;

import java.util.UUID;

import org.fallow.access.TraceSubject;
import org.fallow.entry.Recording;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.training.Plan;
import org.fallow.training.Plans;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** What an athlete runs in the days ahead, for the athlete and for coaches. */
@Controller
class WeekPage {

	private static final int DAYS = 13;

	private final AthleteAccess access;

	private final Recording recording;

	private final Plans plans;

	WeekPage(AthleteAccess access, Recording recording, Plans plans) {
		this.access = access;
		this.recording = recording;
		this.plans = plans;
	}

	@GetMapping("/sessions")
	String own(Model model) {
		return show(this.access.self(), model);
	}

	@GetMapping("/athletes/{id}/sessions")
	String of(@PathVariable UUID id, Model model) {
		return show(this.access.coached(id, TraceSubject.PLAN), model);
	}

	private String show(Athlete athlete, Model model) {
		Plan plan = this.plans.of(athlete.id(), this.recording.today(athlete).plusDays(DAYS));
		model.addAttribute("name", athlete.id().equals(this.access.person()) ? null : athlete.name());
		model.addAttribute("athleteId", athlete.id());
		model.addAttribute("plan", plan);
		model.addAttribute("lines",
				plan.sessions().stream().map((session) -> PlanLine.of(session, plan.ceilings())).toList());
		model.addAttribute("under18", athlete.isUnder18(plan.position().today()));
		model.addAttribute("inGroup", athlete.groupId() != null);
		return "training/sessions";
	}

}
