package org.fallow.account.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.team.Athlete;
import org.fallow.team.Basis;
import org.fallow.team.AthleteAccess;
import org.fallow.team.BirthDates;
import org.fallow.team.Group;
import org.fallow.team.Invitations;
import org.fallow.team.Kept;
import org.fallow.team.Member;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewInvitation;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.People;
import org.fallow.team.Posts;
import org.fallow.team.Squad;
import org.fallow.team.StaffPost;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The people of the teams that a head coach leads: athletes, coaches and who is invited.
 */
@Controller
class PeopleController {

	private static final String PAGE = "account/people";

	private final AthleteAccess access;

	private final Squad squad;

	private final People people;

	private final Posts posts;

	private final Invitations invitations;

	private final Inviting inviting;

	private final SameNames names;

	private final Today today;

	PeopleController(AthleteAccess access, Squad squad, People people, Posts posts, Invitations invitations,
			Inviting inviting, SameNames names, Today today) {
		this.access = access;
		this.squad = squad;
		this.people = people;
		this.posts = posts;
		this.invitations = invitations;
		this.inviting = inviting;
		this.names = names;
		this.today = today;
	}

	@GetMapping("/people")
	String list(Model model) {
		return show(PersonForm.blank(), InviteForm.blank(), model);
	}

	@GetMapping("/style")
	String style() {
		return "style";
	}

	@PostMapping("/people")
	String add(@ModelAttribute("form") PersonForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Team team = team(form.teamId()).orElse(null);
		String name = PersonForm.name(form.name(), "name", result);
		LocalDate born = check(form, team, result);
		Kept kept = form.kept(Athlete.isUnder18(born, today(team)), result);
		if (team != null && !result.hasFieldErrors("name")
				&& this.names.asksOnFile(team.id(), name, form.another(), "name", result)) {
			model.addAttribute("askAnother", "name");
		}
		if (result.hasErrors() || team == null || kept == null) {
			return show(null, InviteForm.blank(), model);
		}
		this.people.addAthlete(team.id(), new NewAthlete(name, null, null, born, group(form, team)), kept);
		redirect.addFlashAttribute("notice", Message.of("people.added", name));
		return "redirect:/people";
	}

	@PostMapping("/people/invitations")
	String invite(@ModelAttribute("invite") InviteForm form, BindingResult result, Model model) {
		List<Team> teams = teams();
		NewInvitation offer = form.read(teams, groups(teams), this.today, result);
		if (offer != null && offer.post() == null && offer.teamId() != null
				&& this.names.asks(offer.teamId(), offer.name(), form.another(), "whom", result)) {
			model.addAttribute("askAnother", "whom");
		}
		if (offer == null || result.hasErrors()) {
			return show(PersonForm.blank(), null, model);
		}
		return invited(offer, model);
	}

	@PostMapping("/people/{id}/invitation")
	String inviteOnFile(@PathVariable UUID id, Model model) {
		PersonId person = new PersonId(id);
		Member member = members().stream()
			.filter((one) -> one.id().equals(person) && one.username() == null)
			.findFirst()
			.orElseThrow(() -> new NoSuchAthlete(person));
		Athlete athlete = this.squad.athlete(person);
		Team team = team(member.teamId().toString()).orElseThrow(() -> new NoSuchAthlete(person));
		return invited(NewInvitation.onFile(athlete, team.clubId()), model);
	}

	@PostMapping("/people/invitations/{id}/revoke")
	String revoke(@PathVariable UUID id, RedirectAttributes redirect) {
		redirect.addFlashAttribute("notice", this.inviting.revoke(id));
		return "redirect:/people";
	}

	@PostMapping("/people/posts/{id}/end")
	String end(@PathVariable UUID id, RedirectAttributes redirect) {
		StaffPost post = this.posts.find(id)
			.filter((one) -> one.teamId() != null && this.access.leads(one.teamId()))
			.orElseThrow(Inviting::notFound);
		redirect.addFlashAttribute("notice", this.inviting.end(post));
		return "redirect:/people";
	}

	private String invited(NewInvitation offer, Model model) {
		model.addAttribute("invited", this.inviting.invite(offer));
		return show(PersonForm.blank(), InviteForm.blank(), model);
	}

	private @Nullable LocalDate check(PersonForm form, @Nullable Team team, BindingResult result) {
		if (team == null) {
			result.rejectValue("teamId", "people.team.unknown");
		}
		else if (!PersonForm.text(form.groupId()).isEmpty() && group(form, team) == null) {
			result.rejectValue("groupId", "people.group.other-team");
		}
		try {
			String born = PersonForm.text(form.birthDate());
			LocalDate day = born.isEmpty() ? null : LocalDate.parse(born);
			Optional.ofNullable(day)
				.flatMap((one) -> BirthDates.problem(one, today(team)))
				.ifPresent((problem) -> result.rejectValue("birthDate", problem.code(), problem.arguments().toArray(),
						null));
			return day;
		}
		catch (DateTimeException ex) {
			result.rejectValue("birthDate", "day.unreadable");
			return null;
		}
	}

	private @Nullable String group(PersonForm form, Team team) {
		return this.squad.groupsOf(team.id())
			.stream()
			.filter((group) -> group.id().toString().equals(form.groupId()))
			.map(Group::name)
			.findFirst()
			.orElse(null);
	}

	/** The team's day; UTC's where no team is chosen, which is refused. */
	private LocalDate today(@Nullable Team team) {
		return this.today.ofFirst((team == null) ? List.of() : List.of(team));
	}

	private Optional<Team> team(@Nullable String id) {
		return teams().stream().filter((own) -> own.id().toString().equals(id)).findFirst();
	}

	private List<Team> teams() {
		return this.squad.teamsLedBy(this.access.person());
	}

	private List<Group> groups(List<Team> teams) {
		return teams.stream().flatMap((team) -> this.squad.groupsOf(team.id()).stream()).toList();
	}

	private List<Member> members() {
		return this.squad.membersOf(this.access.person());
	}

	private String show(@Nullable PersonForm form, @Nullable InviteForm invite, Model model) {
		List<Team> teams = teams();
		if (form != null) {
			model.addAttribute("form", form);
		}
		if (invite != null) {
			model.addAttribute("invite", invite);
		}
		model.addAttribute("teams", teams);
		model.addAttribute("zone", teams.isEmpty() ? ZoneOffset.UTC : teams.get(0).zone());
		model.addAttribute("groups", groups(teams));
		model.addAttribute("people", members());
		model.addAttribute("bases", Basis.values());
		model.addAttribute("staff", teams.stream().flatMap((team) -> this.posts.in(team).stream()).distinct().toList());
		model.addAttribute("open", this.invitations.open(teams.stream().map(Team::id).toList(), List.of()));
		return PAGE;
	}

}
