package org.fallow.board.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;

import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Measurements;
import org.fallow.entry.Recorded;
import org.fallow.entry.Sessions;
import org.fallow.illness.AfterLinks;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.illness.CeilingFacts;
import org.fallow.illness.EnteredAfterLink;
import org.fallow.illness.IllnessFacts;
import org.fallow.illness.StoredEvent;
import org.fallow.illness.core.Course;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.view.CeilingView;
import org.fallow.illness.view.EpisodeView;
import org.fallow.illness.view.GateView;
import org.fallow.illness.view.HoldView;
import org.fallow.illness.view.Said;
import org.fallow.illness.view.StateView;
import org.fallow.illness.view.TimeLineView;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.access.TraceSubject;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The coach's page of one athlete, as of today or of any past day as it was known then.
 */
@Controller
class AthletePage {

	private static final int ENTRY_DAYS = 28;

	private static final int LOOK_BACK_DAYS = 180;

	private final AthleteAccess access;

	private final Squad squad;

	private final Assessments assessments;

	private final IllnessFacts facts;

	private final CeilingFacts ceilings;

	private final Sessions sessions;

	private final AfterLinks afterLinks;

	private final Measurements measurements;

	private final Charts charts;

	private final RuleSets ruleSets;

	private final Today today;

	AthletePage(AthleteAccess access, Squad squad, Assessments assessments, IllnessFacts facts, CeilingFacts ceilings,
			Sessions sessions, AfterLinks afterLinks, Measurements measurements, Charts charts, RuleSets ruleSets,
			Today today) {
		this.afterLinks = afterLinks;
		this.access = access;
		this.squad = squad;
		this.assessments = assessments;
		this.facts = facts;
		this.ceilings = ceilings;
		this.sessions = sessions;
		this.measurements = measurements;
		this.charts = charts;
		this.ruleSets = ruleSets;
		this.today = today;
	}

	@GetMapping("/athletes/{id}")
	String athlete(@PathVariable UUID id, @RequestParam(required = false) @Nullable String day,
			@RequestParam(required = false) @Nullable String weeks, Model model) {
		Athlete athlete = this.access.coached(id, TraceSubject.ATHLETE_PAGE);
		model.addAttribute("mayLoosen", this.access.mayLoosen(athlete.id()));
		LocalDate today = this.today.of(athlete);
		this.assessments.bringUpTo(List.of(athlete.id()), today);
		List<AssessedDay> all = this.assessments.of(athlete.id(), LocalDate.EPOCH, today);
		LocalDate earliest = all.isEmpty() ? today : all.get(0).day();
		LocalDate asOf = BoardPage.chosenDay(day, earliest, today);
		RuleBook book = this.ruleSets.bookOf(athlete.teamId());
		BoardPage.days(model, asOf, today, earliest);
		DayAssessment assessment = (asOf.equals(today) ? this.assessments.now(athlete.id(), asOf)
				: this.assessments.day(athlete.id(), asOf))
			.orElseGet(() -> Course.nothing(book, asOf));
		model.addAttribute("athlete", AthleteHead.of(athlete, this.squad, this.access.person(), asOf));
		List<AssessedDay> seen = all.stream().filter((d) -> !d.day().isAfter(asOf)).toList();
		now(model, assessment, last(seen, LOOK_BACK_DAYS), book);
		history(model, athlete, assessment);
		this.charts.put(model, athlete, seen, book, Charts.weeks(weeks));
		return "board/athlete";
	}

	private static void now(Model model, DayAssessment assessment, List<AssessedDay> seen, RuleBook book) {
		StateView state = StateView.of(assessment, book);
		model.addAttribute("state", state);
		model.addAttribute("episode", EpisodeView.of(assessment, book));
		model.addAttribute("advice", Said.all(assessment.notices()));
		model.addAttribute("gate", GateView.of(assessment, book));
		model.addAttribute("holds", HoldView.standing(assessment));
		model.addAttribute("timeLine", TimeLineView.of(seen, state, book));
	}

	private void history(Model model, Athlete athlete, DayAssessment assessment) {
		LocalDate asOf = assessment.day();
		List<StoredEvent> events = this.facts.of(athlete.id())
			.stream()
			.filter((stored) -> !stored.event().recorded().on().isAfter(asOf))
			.toList();
		EnteredAfterLink after = this.afterLinks.knownOn(athlete.id(), asOf);
		model.addAttribute("afterLinks",
				after.lines(athlete.zone(), (person) -> this.squad.nameOf(person).orElse("–")));
		List<MeasuredAgain> again = this.measurements.of(athlete.id(), asOf.minusDays(ENTRY_DAYS), asOf);
		List<EntryRow> entries = new ArrayList<>(this.charts.effective(athlete, asOf.minusDays(ENTRY_DAYS), asOf)
			.values()
			.stream()
			.map((stored) -> EntryRow.of(stored, events, after, again))
			.toList());
		Collections.reverse(entries);
		model.addAttribute("entries", entries);
		model.addAttribute("ceilings", CeilingView.all(this.ceilings.from(athlete.id(), asOf),
				(person) -> this.squad.nameOf(person).orElse("–")));
		model.addAttribute("decisions", DecisionRow.of(
				this.assessments.decisions(athlete.id()).stream().filter((d) -> !d.day().isAfter(asOf)).toList(),
				events, athlete.zone(), (person) -> this.squad.nameOf(person).orElse("–"), after));
		Instant entered = assessment.seen().recordedAt();
		Recorded entry = (entered == null) ? null : new Recorded(entered, asOf);
		model.addAttribute("sessions",
				this.sessions.knownOn(athlete.id(), asOf.minusDays(ENTRY_DAYS), asOf, asOf)
					.stream()
					.map((log) -> LoggedSession.of(log, events, entry, athlete.zone())
						.after(after.by(TraceSubject.SESSION, log.recorded().at())))
					.toList());
	}

	private static <T> List<T> last(List<T> all, int most) {
		return all.subList(Math.max(0, all.size() - most), all.size());
	}

}
