package org.fallow.board.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

import org.fallow.contact.Marks;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.illness.AskedAgain;
import org.fallow.illness.Assessments;
import org.fallow.illness.CeilingFacts;
import org.fallow.illness.ClearanceFacts;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.StoredEvent;
import org.fallow.illness.Merges;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Mark;
import org.fallow.illness.core.RhrEvidence;
import org.fallow.illness.view.CeilingView;
import org.fallow.illness.view.EpisodeView;
import org.fallow.illness.view.Said;
import org.fallow.illness.view.StateView;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.fallow.training.Plans;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/**
 * An athlete's own day: the clearance and why, what opens next, what is run today, and
 * how the last sessions left the athlete.
 */
@Controller
class TodayPage {

	private static final int LOG_DAYS = 2;

	private final AthleteAccess access;

	private final Assessments assessments;

	private final RuleSets ruleSets;

	private final Plans plans;

	private final Sessions sessions;

	private final Marks marks;

	private final CeilingFacts ceilings;

	private final ClearanceFacts clearances;

	private final Squad squad;

	private final IllnessFacts facts;

	private final Merges merges;

	private final Today today;

	TodayPage(AthleteAccess access, Assessments assessments, RuleSets ruleSets, Plans plans, Sessions sessions,
			Marks marks, CeilingFacts ceilings, ClearanceFacts clearances, Squad squad, IllnessFacts facts,
			Merges merges, Today today) {
		this.access = access;
		this.assessments = assessments;
		this.ruleSets = ruleSets;
		this.plans = plans;
		this.sessions = sessions;
		this.marks = marks;
		this.ceilings = ceilings;
		this.clearances = clearances;
		this.squad = squad;
		this.facts = facts;
		this.merges = merges;
		this.today = today;
	}

	@GetMapping("/today")
	String today(Model model) {
		Athlete athlete = this.access.self();
		LocalDate today = this.today.of(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		RuleBook book = this.ruleSets.bookOf(athlete.teamId());
		DayAssessment assessment = this.assessments.now(athlete.id(), today)
			.orElseGet(() -> Course.nothing(book, today));
		model.addAttribute("state", StateView.of(assessment, book));
		model.addAttribute("entered", assessment.mark() != Mark.NONE);
		model.addAttribute("under18", athlete.isUnder18(today));
		model.addAttribute("advice", Said.all(assessment.notices()));
		model.addAttribute("ceilings", CeilingView.all(this.ceilings.from(athlete.id(), today),
				(person) -> this.squad.nameOf(person).orElse("–")));
		model.addAttribute("mayTell", assessment.holding() && this.clearances.isAllThereIs(athlete.id()));
		model.addAttribute("episode", EpisodeView.of(assessment, book));
		RhrEvidence rhr = assessment.rhr();
		int from = book.on(today).rules().baseline().provisionalFrom();
		boolean unknown = rhr.reading() != null && rhr.baseline() == null && assessment.state().episode() == null;
		model.addAttribute("readings", unknown ? rhr.n() : null);
		model.addAttribute("provisional", rhr.reading() != null && rhr.provisional());
		model.addAttribute("readingsWanted", from);
		model.addAttribute("words", this.marks.shared(athlete.id()));
		model.addAttribute("merged", this.merges.unread(athlete.id()));
		model.addAttribute("zone", athlete.zone());
		model.addAttribute("inGroup", athlete.groupId() != null);
		model.addAttribute("sessions",
				this.plans.of(athlete.id(), today).on(today).stream().map(TodaySession::of).toList());
		model.addAttribute("logged", logged(athlete, assessment));
		model.addAttribute("ticked", ticked(assessment));
		AskedAgain asked = AskedAgain.of(assessment, null, null);
		model.addAttribute("again", asked.counts() || asked.rests());
		return "board/today";
	}

	/** Whether anything was ticked today that could be told to be a slip, or was. */
	private static boolean ticked(DayAssessment assessment) {
		return assessment.seen().ticked() || assessment.seen().slip() != null
				|| assessment.state()
					.holds()
					.stream()
					.anyMatch((hold) -> hold.recorded().on().equals(assessment.day()));
	}

	private List<LoggedSession> logged(Athlete athlete, DayAssessment assessment) {
		LocalDate today = assessment.day();
		List<SessionLog> logs = this.sessions.of(athlete.id(), today.minusDays(LOG_DAYS - 1L), today);
		List<StoredEvent> events = logs.stream().allMatch((log) -> log.after().isEmpty()) ? List.of()
				: this.facts.of(athlete.id());
		Instant entered = assessment.seen().recordedAt();
		Recorded entry = (entered == null) ? null : new Recorded(entered, today);
		return logs.stream().map((log) -> LoggedSession.of(log, events, entry, athlete.zone())).toList();
	}

}
