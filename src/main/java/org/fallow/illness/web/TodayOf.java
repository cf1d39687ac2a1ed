package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.List;

import org.fallow.illness.AfterLinks;
import org.fallow.illness.Assessments;
import org.fallow.illness.EnteredAfterLink;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.springframework.stereotype.Component;

/**
 * An athlete's assessment of today, brought up to date first.
 */
@Component
class TodayOf {

	private final Assessments assessments;

	private final RuleSets ruleSets;

	private final AfterLinks afterLinks;

	private final Squad squad;

	private final Today today;

	TodayOf(Assessments assessments, RuleSets ruleSets, AfterLinks afterLinks, Squad squad, Today today) {
		this.afterLinks = afterLinks;
		this.squad = squad;
		this.assessments = assessments;
		this.ruleSets = ruleSets;
		this.today = today;
	}

	LocalDate today(Athlete athlete) {
		return this.today.of(athlete);
	}

	DayAssessment assessed(Athlete athlete) {
		LocalDate today = today(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		return this.assessments.now(athlete.id(), today).orElseGet(() -> Course.nothing(book(athlete), today));
	}

	/** What a coach is told of entries after somebody else's link. */
	List<EnteredAfterLink.Line> afterLinks(Athlete athlete) {
		return this.afterLinks.knownOn(athlete.id(), today(athlete))
			.lines(athlete.zone(), (person) -> this.squad.nameOf(person).orElse("–"));
	}

	/** The rules in effect today. */
	RuleSet rules(Athlete athlete) {
		return book(athlete).on(today(athlete)).rules();
	}

	RuleBook book(Athlete athlete) {
		return this.ruleSets.bookOf(athlete.teamId());
	}

}
