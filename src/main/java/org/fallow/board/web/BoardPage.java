package org.fallow.board.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import jakarta.servlet.ServletContext;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.board.LastEntries;
import org.fallow.contact.Needs;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.Assessments;
import org.fallow.platform.Sentences;
import org.fallow.rules.Clearance;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Group;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The squad board of a day, worst first: today's, or any past day's as it was known then.
 */
@Controller
class BoardPage {

	/** UTC+14 and UTC-12 can be two dates apart. */
	private static final int ZONES_APART_DAYS = 2;

	/** How far a clock may have run ahead when somebody was held (own, no source). */
	private static final int CLOCK_AHEAD_DAYS = 3660;

	private final AthleteAccess access;

	private final Squad squad;

	private final Assessments assessments;

	private final LastEntries lastEntries;

	private final Needs needs;

	private final RuleSets ruleSets;

	private final Sentences sentences;

	private final ServletContext servlet;

	private final Today today;

	BoardPage(AthleteAccess access, Squad squad, Assessments assessments, LastEntries lastEntries, Needs needs,
			RuleSets ruleSets, Sentences sentences, ServletContext servlet, Today today) {
		this.access = access;
		this.squad = squad;
		this.assessments = assessments;
		this.lastEntries = lastEntries;
		this.needs = needs;
		this.ruleSets = ruleSets;
		this.sentences = sentences;
		this.servlet = servlet;
		this.today = today;
	}

	@GetMapping("/board")
	String board(@RequestParam(required = false) @Nullable String day,
			@RequestParam(required = false) @Nullable String group,
			@RequestParam(required = false) @Nullable String clearance, Model model) {
		PersonId coach = this.access.person();
		List<Team> teams = this.squad.teamsOf(coach);
		List<Athlete> athletes = this.access.athletes();
		this.access.looked(athletes, TraceSubject.BOARD);
		LocalDate today = today(teams);
		LocalDate earliest = this.lastEntries.firstDay(ids(athletes)).orElse(today);
		LocalDate asOf = chosenDay(day, earliest, today);
		List<Group> groups = teams.stream().flatMap((team) -> this.squad.groupsOf(team.id()).stream()).toList();
		UUID chosenGroup = chosenGroup(group, groups);
		Clearance chosen = chosenClearance(clearance);
		List<Athlete> shown = athletes.stream()
			.filter((athlete) -> chosenGroup == null || chosenGroup.equals(athlete.groupId()))
			.toList();
		List<BoardRow> rows = rows(shown, groups, asOf, today);
		days(model, asOf, today, earliest);
		model.addAttribute("needs", asOf.equals(today) ? this.needs.lines(ids(shown), today) : null);
		model.addAttribute("offDays", Needs.OFF_DAYS);
		model.addAttribute("counts", counts(rows));
		model.addAttribute("total", rows.size());
		model.addAttribute("silent", this.squad.silentOnesOf(coach));
		model.addAttribute("groups", groups);
		model.addAttribute("group", chosenGroup);
		model.addAttribute("clearance", chosen);
		List<BoardRow> fitting = rows.stream().filter((row) -> chosen == null || row.clearance() == chosen).toList();
		model.addAttribute("rows", fitting);
		model.addAttribute("tableRows",
				new BoardTable(this.sentences.ofPage(), this.servlet.getContextPath(), asOf).rows(fitting));
		return "board/squad";
	}

	/** The day looked at and its neighbours, as both pages of the board show them. */
	static void days(Model model, LocalDate asOf, LocalDate today, LocalDate earliest) {
		model.addAttribute("asOf", asOf);
		model.addAttribute("today", today);
		model.addAttribute("earliestDay", earliest);
		model.addAttribute("previousDay", asOf.isAfter(earliest) ? asOf.minusDays(1) : null);
		model.addAttribute("nextDay", asOf.isBefore(today) ? asOf.plusDays(1) : null);
	}

	private static List<PersonId> ids(List<Athlete> athletes) {
		return athletes.stream().map(Athlete::id).toList();
	}

	private List<BoardRow> rows(List<Athlete> athletes, List<Group> groups, LocalDate asOf, LocalDate today) {
		List<PersonId> ids = ids(athletes);
		if (asOf.equals(today)) {
			this.assessments.bringUpTo(ids, today);
		}
		Map<PersonId, AssessedDay> days = ownDays(ids, asOf, today);
		Map<UUID, RuleBook> books = new HashMap<>();
		Map<UUID, LocalDate> last = this.lastEntries.knownOn(ids, asOf);
		return athletes.stream()
			.map((athlete) -> BoardRow.of(athlete, groupName(athlete, groups), days.get(athlete.id()),
					last.get(athlete.id().value()), asOf,
					books.computeIfAbsent(athlete.teamId(), this.ruleSets::bookOf)))
			.sorted(Comparator.comparing(BoardRow::clearance).thenComparing(BoardRow::name))
			.toList();
	}

	/**
	 * The day of each athlete. Where the team's day has not begun in an athlete's zone,
	 * the athlete's own latest one; where the athlete has begun a later one than the
	 * team's today, the stricter of the two: so no hold is ever out of sight.
	 */
	private Map<PersonId, AssessedDay> ownDays(List<PersonId> ids, LocalDate asOf, LocalDate today) {
		Map<PersonId, AssessedDay> days = new HashMap<>();
		this.assessments.around(ids, asOf, ZONES_APART_DAYS, asOf.equals(today) ? CLOCK_AHEAD_DAYS : 0)
			.forEach((day) -> days.merge(day.athlete(), day, BoardPage::stricter));
		return days;
	}

	private static AssessedDay stricter(AssessedDay one, AssessedDay other) {
		return (other.clearance().compareTo(one.clearance()) < 0) ? other : one;
	}

	static @Nullable String groupName(Athlete athlete, List<Group> groups) {
		return groups.stream()
			.filter((group) -> Objects.equals(group.id(), athlete.groupId()))
			.map(Group::name)
			.findFirst()
			.orElse(null);
	}

	private static List<Count> counts(List<BoardRow> rows) {
		return Arrays.stream(Clearance.values())
			.map((level) -> new Count(level, rows.stream().filter((row) -> row.clearance() == level).count()))
			.toList();
	}

	private LocalDate today(List<Team> teams) {
		return this.today.ofFirst(teams);
	}

	static LocalDate chosenDay(@Nullable String text, LocalDate earliest, LocalDate today) {
		try {
			LocalDate day = (text == null || text.isBlank()) ? today : LocalDate.parse(text);
			return day.isAfter(today) ? today : (day.isBefore(earliest) ? earliest : day);
		}
		catch (DateTimeParseException ex) {
			return today;
		}
	}

	private static @Nullable UUID chosenGroup(@Nullable String text, List<Group> groups) {
		return groups.stream().map(Group::id).filter((id) -> id.toString().equals(text)).findFirst().orElse(null);
	}

	private static @Nullable Clearance chosenClearance(@Nullable String text) {
		return Arrays.stream(Clearance.values()).filter((level) -> level.name().equals(text)).findFirst().orElse(null);
	}

	/**
	 * How many athletes have a clearance.
	 *
	 * @param clearance which
	 * @param count how many
	 */
	public record Count(Clearance clearance, long count) {
	}

}
