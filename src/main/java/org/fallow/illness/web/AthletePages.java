package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.UUID;

import org.fallow.illness.Assessments;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.view.EpisodeView;
import org.fallow.illness.view.GateView;
import org.fallow.illness.view.StateView;
import org.fallow.illness.view.TimeLineView;
import org.fallow.rules.RuleBook;
import org.fallow.access.TraceSubject;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/**
 * An athlete's return path, and the coach's look at the same path.
 */
@Controller
class AthletePages {

	private static final int LOOK_BACK_DAYS = 180;

	private final AthleteAccess access;

	private final Assessments assessments;

	private final TodayOf today;

	AthletePages(AthleteAccess access, Assessments assessments, TodayOf today) {
		this.access = access;
		this.assessments = assessments;
		this.today = today;
	}

	@GetMapping("/return-path")
	String ownPath(Model model) {
		return path(this.access.self(), model);
	}

	@GetMapping("/athletes/{id}/return-path")
	String pathOf(@PathVariable UUID id, Model model) {
		Athlete athlete = this.access.coached(id, TraceSubject.ATHLETE_PAGE);
		model.addAttribute("afterLinks", this.today.afterLinks(athlete));
		return path(athlete, model);
	}

	private String path(Athlete athlete, Model model) {
		DayAssessment assessment = this.today.assessed(athlete);
		RuleBook book = this.today.book(athlete);
		LocalDate day = assessment.day();
		StateView state = StateView.of(assessment, book);
		model.addAttribute("athlete", AthleteName.of(athlete));
		model.addAttribute("state", state);
		model.addAttribute("episode", EpisodeView.of(assessment, book));
		model.addAttribute("gate", GateView.of(assessment, book));
		model.addAttribute("under18", athlete.isUnder18(day));
		model.addAttribute("timeLine",
				TimeLineView.of(this.assessments.of(athlete.id(), day.minusDays(LOOK_BACK_DAYS), day), state, book));
		return "illness/return-path";
	}

}
