package org.fallow.board.web;

import java.time.LocalDate;
import java.util.List;

import org.fallow.illness.Assessments;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** An athlete's own mornings, drawn over four weeks to a year. */
@Controller
class OwnMorningsPage {

	private final AthleteAccess access;

	private final Assessments assessments;

	private final RuleSets ruleSets;

	private final Charts charts;

	private final Today today;

	OwnMorningsPage(AthleteAccess access, Assessments assessments, RuleSets ruleSets, Charts charts, Today today) {
		this.access = access;
		this.assessments = assessments;
		this.ruleSets = ruleSets;
		this.charts = charts;
		this.today = today;
	}

	@GetMapping("/mornings")
	String mornings(@RequestParam(required = false) @Nullable String weeks, Model model) {
		Athlete athlete = this.access.self();
		LocalDate today = this.today.of(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		int chosen = Charts.weeks(weeks);
		this.charts.put(model, athlete, this.assessments.of(athlete.id(), today.minusWeeks(chosen), today),
				this.ruleSets.bookOf(athlete.teamId()), chosen);
		model.addAttribute("under18", athlete.isUnder18(today));
		return "board/mornings";
	}

}
