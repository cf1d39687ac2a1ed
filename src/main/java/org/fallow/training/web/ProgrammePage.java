package org.fallow.training.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Charge;
import org.fallow.team.Group;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.fallow.training.Programmes;
import org.fallow.training.StoredWeek;
import org.fallow.training.core.PartsText;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * A group's programme, week by week: read by who trains or coaches in its team, changed
 * by its coaches.
 */
@Controller
class ProgrammePage {

	private static final int MOST_ROWS = 40;

	private static final int BLANK_ROWS = 2;

	private static final int OVERVIEW_WEEKS = 8;

	private final AthleteAccess access;

	private final Squad squad;

	private final Programmes programmes;

	private final Today today;

	ProgrammePage(AthleteAccess access, Squad squad, Programmes programmes, Today today) {
		this.access = access;
		this.squad = squad;
		this.programmes = programmes;
		this.today = today;
	}

	/** The first of one's groups. */
	@GetMapping("/programme")
	String first(Model model) {
		List<Group> groups = groups();
		if (groups.isEmpty()) {
			return "training/no-programme";
		}
		return "redirect:/programme/" + groups.get(0).id();
	}

	@GetMapping("/programme/{id}")
	String show(@PathVariable UUID id, @RequestParam(required = false) @Nullable String week, Model model) {
		Group group = group(id);
		Optional<LocalDate> asked = asked(week);
		StoredWeek stored = this.programmes.week(id, asked.orElseGet(() -> this.today.ofTeam(group.teamId())));
		fill(model, group, stored);
		model.addAttribute("rows", SessionRow.rows(stored.week().sessions(), BLANK_ROWS));
		model.addAttribute("kind", stored.week().kind());
		boolean known = week == null || week.isBlank() || asked.isPresent();
		model.addAttribute("problems", known ? List.of() : List.of(Problem.of("", "programme.week.unknown")));
		return "training/programme";
	}

	@PostMapping("/programme/{id}")
	String save(@PathVariable UUID id, @RequestParam Map<String, String> typed, Model model,
			RedirectAttributes redirect) {
		Group group = own(id);
		LocalDate monday = monday(typedDay(typed));
		List<SessionRow> rows = rows(typed);
		List<Problem> problems = new ArrayList<>();
		List<PlannedSession> sessions = rows.stream()
			.filter((row) -> !row.isEmpty())
			.flatMap((row) -> Optional.ofNullable(row.read(monday, problems)).stream())
			.toList();
		ProgrammeWeek.Kind kind = kind(typed.get("kind"), problems);
		PersonId by = this.access.person();
		if (problems.isEmpty()
				&& !this.programmes.write(id, new ProgrammeWeek(monday, kind, sessions), revision(typed), by)) {
			problems.add(Problem.of("", "programme.changed-elsewhere"));
		}
		if (problems.isEmpty()) {
			redirect.addFlashAttribute("notice", Message.of("programme.saved", monday));
			return to(id, monday);
		}
		fill(model, group, this.programmes.week(id, monday));
		model.addAttribute("rows", rows);
		model.addAttribute("kind", kind);
		model.addAttribute("problems", problems);
		return "training/programme";
	}

	@PostMapping("/programme/{id}/back")
	String goBack(@PathVariable UUID id, @RequestParam Map<String, String> typed, RedirectAttributes redirect) {
		own(id);
		LocalDate monday = monday(typedDay(typed));
		boolean done = this.programmes.goBack(id, monday, revision(typed), this.access.person());
		redirect.addFlashAttribute("notice",
				done ? Message.of("programme.taken-back", monday) : Message.of("programme.changed-elsewhere"));
		return to(id, monday);
	}

	/** Puts a copy of a week in the place of the next one. */
	@PostMapping("/programme/{id}/copy")
	String copy(@PathVariable UUID id, @RequestParam Map<String, String> typed, RedirectAttributes redirect) {
		own(id);
		LocalDate monday = monday(typedDay(typed));
		if (!Programmes.hasWeekOf(monday.plusWeeks(1))) {
			throw new ResponseStatusException(HttpStatus.BAD_REQUEST);
		}
		StoredWeek next = this.programmes.week(id, monday.plusWeeks(1));
		ProgrammeWeek week = this.programmes.week(id, monday).week();
		List<PlannedSession> sessions = week.sessions()
			.stream()
			.map((session) -> new PlannedSession(Ids.next().toString(), session.day().plusWeeks(1), session.kind(),
					session.terrain(), session.time(), session.place(), session.name(), session.parts()))
			.toList();
		boolean done = this.programmes.write(id, new ProgrammeWeek(monday.plusWeeks(1), week.kind(), sessions),
				next.revision(), this.access.person());
		redirect.addFlashAttribute("notice",
				done ? Message.of("programme.copied", monday.plusWeeks(1)) : Message.of("programme.changed-elsewhere"));
		return to(id, monday.plusWeeks(1));
	}

	private void fill(Model model, Group group, StoredWeek stored) {
		LocalDate monday = stored.week().monday();
		model.addAttribute("group", group);
		model.addAttribute("groups", groups());
		model.addAttribute("may", this.access.mayProgramme(group.id()));
		model.addAttribute("stored", stored);
		model.addAttribute("monday", monday);
		model.addAttribute("written",
				stored.week()
					.sessions()
					.stream()
					.collect(Collectors.toMap(PlannedSession::key, (session) -> PartsText.write(session.parts()),
							(one, other) -> one)));
		model.addAttribute("shares", PartView.of(stored.week().secondsBy()));
		model.addAttribute("kinds", ProgrammeWeek.Kind.values());
		model.addAttribute("sessionKinds", PlannedSession.Kind.values());
		model.addAttribute("terrains", PlannedSession.Terrain.values());
		model.addAttribute("days", java.util.stream.Stream.iterate(monday, (day) -> day.plusDays(1)).limit(7).toList());
		model.addAttribute("weeks", WeekLine.of(this.programmes.weeks(group.id(), monday.minusWeeks(OVERVIEW_WEEKS / 2),
				monday.plusWeeks(OVERVIEW_WEEKS / 2)), monday, OVERVIEW_WEEKS / 2));
	}

	/** Those in one's charge, or where one trains. */
	private List<Group> groups() {
		PersonId person = this.access.person();
		List<Group> groups = new ArrayList<>(this.squad.groupsCoachedBy(person).stream().map(Charge::group).toList());
		this.squad.find(person)
			.map(Athlete::groupId)
			.filter(this.access::maySeeGroup)
			.flatMap(this.squad::group)
			.filter((group) -> groups.stream().noneMatch((one) -> one.id().equals(group.id())))
			.ifPresent(groups::add);
		return groups;
	}

	private Group group(UUID id) {
		if (!this.access.maySeeGroup(id)) {
			throw new NoSuchAthlete(new PersonId(id));
		}
		return this.squad.group(id).orElseThrow(() -> new NoSuchAthlete(new PersonId(id)));
	}

	private Group own(UUID id) {
		if (!this.access.mayProgramme(id)) {
			throw new NoSuchAthlete(new PersonId(id));
		}
		return group(id);
	}

	private static List<SessionRow> rows(Map<String, String> typed) {
		List<SessionRow> rows = new ArrayList<>();
		for (int at = 0; at < MOST_ROWS && typed.containsKey("parts" + at); at++) {
			rows.add(SessionRow.typed(at, typed));
		}
		return rows;
	}

	private static int revision(Map<String, String> typed) {
		String revision = typed.getOrDefault("revision", "");
		return revision.matches("\\d{1,9}") ? Integer.parseInt(revision) : -1;
	}

	private static ProgrammeWeek.Kind kind(@Nullable String typed, List<Problem> problems) {
		return Arrays.stream(ProgrammeWeek.Kind.values())
			.filter((one) -> one.name().equals(typed))
			.findFirst()
			.orElseGet(() -> {
				problems.add(Problem.of("kind", "entry.code.unknown"));
				return ProgrammeWeek.Kind.LOADING;
			});
	}

	/** The week a form is of: one that cannot be read must not become another. */
	private static LocalDate typedDay(Map<String, String> typed) {
		return asked(typed.get("week")).orElseThrow(() -> new ResponseStatusException(HttpStatus.BAD_REQUEST));
	}

	/** A day of a week that has a page; empty for any other and for what is no day. */
	private static Optional<LocalDate> asked(@Nullable String typed) {
		try {
			return Optional.of(LocalDate.parse(String.valueOf(typed))).filter(Programmes::hasWeekOf);
		}
		catch (DateTimeException ex) {
			return Optional.empty();
		}
	}

	private static LocalDate monday(LocalDate day) {
		return day.minusDays(day.getDayOfWeek().getValue() - 1L);
	}

	private static String to(UUID group, LocalDate monday) {
		return "redirect:/programme/" + group + "?week=" + monday;
	}

}
