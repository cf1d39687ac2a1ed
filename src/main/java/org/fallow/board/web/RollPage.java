package org.fallow.board.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import org.fallow.access.PersonId;
import org.fallow.access.Secret;
import org.fallow.access.TraceSubject;
import org.fallow.platform.Sentences;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Charge;
import org.fallow.team.Group;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.fallow.training.PartsWords;
import org.fallow.training.Plan;
import org.fallow.training.Plans;
import org.fallow.training.Programmes;
import org.fallow.training.core.ModifiedSession;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.context.request.WebRequest;

/**
 * The session roll: who runs what at the sessions of a day, for a phone at the track and
 * for paper.
 */
@Controller
class RollPage {

	private final AthleteAccess access;

	private final Squad squad;

	private final Programmes programmes;

	private final Plans plans;

	private final LoggedSessions logged;

	private final Sentences sentences;

	private final PartsWords parts;

	private final Today today;

	RollPage(AthleteAccess access, Squad squad, Programmes programmes, Plans plans, LoggedSessions logged,
			Sentences sentences, PartsWords parts, Today today) {
		this.access = access;
		this.squad = squad;
		this.programmes = programmes;
		this.plans = plans;
		this.logged = logged;
		this.sentences = sentences;
		this.parts = parts;
		this.today = today;
	}

	/**
	 * Asked again and again by a page that stands open: answered in full only when
	 * something changed.
	 */
	@GetMapping("/roll")
	@Nullable String roll(@RequestParam(required = false) @Nullable String day,
			@RequestParam(required = false) @Nullable String group, WebRequest request, Model model) {
		PersonId coach = this.access.person();
		List<Charge> charges = this.squad.groupsCoachedBy(coach);
		LocalDate today = today(this.squad.teamsOf(coach));
		LocalDate last = today.plusDays(Plans.DAYS_AHEAD);
		LocalDate chosen = chosenDay(day, today, last);
		List<Group> groups = charges.stream().map(Charge::group).toList();
		List<Athlete> athletes = this.access.athletes();
		Map<PersonId, List<LoggedSession>> logged = this.logged.of(athletes, chosen);
		List<RollSession> sessions = groups.stream()
			.filter((one) -> group == null || group.isBlank() || one.id().toString().equals(group))
			.flatMap((one) -> sessions(one, athletes, chosen, logged).stream())
			.sorted(Comparator.comparing(RollSession::group)
				.thenComparing((session) -> Objects.requireNonNullElse(session.session().time(), LocalTime.MIN)))
			.toList();
		this.access.looked(athletes, TraceSubject.BOARD);
		// weak, or the server would send the page uncompressed
		String tag = "W/\"" + Secret.sha256(chosen + sessions.toString()) + "\"";
		if (request.checkNotModified(tag)) {
			return null;
		}
		model.addAttribute("headers", "{\"If-None-Match\":\"" + tag.replace("\"", "\\\"") + "\"}");
		model.addAttribute("day", chosen);
		model.addAttribute("today", today);
		model.addAttribute("lastDay", last);
		model.addAttribute("groups", groups);
		model.addAttribute("group", group);
		RollTable table = new RollTable(this.sentences.ofPage(), this.parts, request.getContextPath());
		model.addAttribute("sessions", sessions.stream().map(table::write).toList());
		return "board/roll";
	}

	private List<RollSession> sessions(Group group, List<Athlete> athletes, LocalDate day,
			Map<PersonId, List<LoggedSession>> logged) {
		ProgrammeWeek week = this.programmes.weeks(group.id(), day, day).values().stream().findFirst().orElse(null);
		List<PlannedSession> planned = (week == null) ? List.of()
				: week.sessions().stream().filter((session) -> session.day().equals(day)).toList();
		if (planned.isEmpty()) {
			return List.of();
		}
		List<Athlete> own = athletes.stream().filter((one) -> group.id().equals(one.groupId())).toList();
		List<PersonId> ids = own.stream().map(Athlete::id).toList();
		Map<PersonId, Plan> plans = this.plans.of(ids, day);
		return planned.stream().map((session) -> roll(group, session, own, plans, logged)).toList();
	}

	private static RollSession roll(Group group, PlannedSession session, List<Athlete> athletes,
			Map<PersonId, Plan> plans, Map<PersonId, List<LoggedSession>> logged) {
		List<RollLine> lines = new ArrayList<>();
		for (Athlete athlete : athletes) {
			Plan plan = Objects.requireNonNull(plans.get(athlete.id()));
			int ran = session.day().equals(plan.position().today()) ? plan.ranToday() : 0;
			plan.sessions()
				.stream()
				.filter((one) -> one.programmed().key().equals(session.key()))
				.findFirst()
				.map((one) -> line(athlete, one, ran, logged.getOrDefault(athlete.id(), List.of())))
				.ifPresent(lines::add);
		}
		lines.sort(Comparator.comparing(RollLine::version).reversed().thenComparing(RollLine::name));
		return new RollSession(group.name(), session, PartsText.write(session.parts()), session.minutes(), lines);
	}

	private static RollLine line(Athlete athlete, ModifiedSession session, int ranToday, List<LoggedSession> logged) {
		return new RollLine(athlete.id().value(), athlete.name(), session.version(), session.minutes(),
				(session.instead() == null) ? null : PartsText.write(session.instead().parts()),
				session.reasons().isEmpty() ? null : session.reasons().get(0), ranToday, logged);
	}

	private static LocalDate chosenDay(@Nullable String text, LocalDate today, LocalDate last) {
		try {
			LocalDate day = (text == null || text.isBlank()) ? today : LocalDate.parse(text);
			return (day.isBefore(today) || day.isAfter(last)) ? today : day;
		}
		catch (DateTimeException ex) {
			return today;
		}
	}

	private LocalDate today(List<Team> teams) {
		return this.today.ofFirst(teams);
	}

}
