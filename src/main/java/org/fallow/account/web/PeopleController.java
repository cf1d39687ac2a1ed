package org.fallow.account.web;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.account.Accounts;
import org.fallow.account.PublicUrl;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Group;
import org.fallow.team.Member;
import org.fallow.team.NewAthlete;
import org.fallow.team.People;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The people of a coach's own teams: who they are, and adding one more with a one-time
 * password that is shown once.
 */
@Controller
class PeopleController {

	private final AthleteAccess access;

	private final Squad squad;

	private final People people;

	private final Accounts accounts;

	private final PublicUrl address;

	private final Clock clock;

	PeopleController(AthleteAccess access, Squad squad, People people, Accounts accounts, PublicUrl address,
			Clock clock) {
		this.access = access;
		this.squad = squad;
		this.people = people;
		this.accounts = accounts;
		this.address = address;
		this.clock = clock;
	}

	@GetMapping("/people")
	String list(Model model) {
		model.addAttribute("form", new PersonForm(null, null, null, null, null, null));
		return show(model);
	}

	@GetMapping("/style")
	String style() {
		return "style";
	}

	@PostMapping("/people")
	String add(@ModelAttribute("form") PersonForm form, BindingResult result, Model model,
			RedirectAttributes redirect) {
		Team team = this.squad.teamsOf(this.access.person())
			.stream()
			.filter((own) -> own.id().toString().equals(form.teamId()))
			.findFirst()
			.orElse(null);
		LocalDate born = check(form, team, result);
		if (result.hasErrors() || team == null) {
			return show(model);
		}
		String name = PersonForm.text(form.name());
		PersonId person = Role.COACH.name().equals(form.role()) ? this.people.addCoach(team.id(), name)
				: this.people.addAthlete(team.id(), new NewAthlete(name, null, null, born, group(form, team))).id();
		String username = PersonForm.text(form.username());
		this.accounts.open(person, username);
		redirect.addFlashAttribute("created",
				new Created(name, username, this.address.link("/reset/" + this.accounts.resetLink(person))));
		return "redirect:/people";
	}

	private @Nullable LocalDate check(PersonForm form, @Nullable Team team, BindingResult result) {
		String name = PersonForm.text(form.name());
		if (name.isEmpty() || name.length() > NewAthlete.LONGEST_NAME) {
			result.rejectValue("name", "name.length", new Object[] { NewAthlete.LONGEST_NAME }, null);
		}
		String username = PersonForm.text(form.username());
		if (!username.matches("\\S{3,100}")) {
			result.rejectValue("username", "account.username.form");
		}
		else if (this.accounts.isTaken(username)) {
			result.rejectValue("username", "account.username.taken");
		}
		if (team == null) {
			result.rejectValue("teamId", "people.team.unknown");
		}
		else if (!PersonForm.text(form.groupId()).isEmpty() && group(form, team) == null) {
			result.rejectValue("groupId", "people.group.other-team");
		}
		try {
			String born = PersonForm.text(form.birthDate());
			LocalDate day = born.isEmpty() ? null : LocalDate.parse(born);
			if (day != null && day.isAfter(LocalDate.now(this.clock))) {
				result.rejectValue("birthDate", "people.born.future");
			}
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

	private String show(Model model) {
		PersonId coach = this.access.person();
		List<Team> teams = this.squad.teamsOf(coach);
		model.addAttribute("teams", teams);
		model.addAttribute("groups",
				teams.stream().flatMap((team) -> this.squad.groupsOf(team.id()).stream()).toList());
		model.addAttribute("people",
				this.squad.membersOf(coach, LocalDate.now(this.clock)).stream().map(PersonLine::of).toList());
		return "account/people";
	}

	/**
	 * A new account, shown once.
	 *
	 * @param name whose
	 * @param username to sign in with
	 * @param password the link that sets one
	 */
	public record Created(String name, String username, String password) implements java.io.Serializable {
	}

	/**
	 * A person of the squad.
	 *
	 * @param id for links
	 * @param name the person's
	 * @param username absent without an account
	 * @param role athlete or coach
	 * @param teamName the team's
	 * @param groupName absent without a group
	 * @param birthDate absent when not known
	 * @param under18 whether a guardian is to be named
	 */
	public record PersonLine(UUID id, String name, @Nullable String username, Role role, String teamName,
			@Nullable String groupName, @Nullable LocalDate birthDate, boolean under18) {

		static PersonLine of(Member member) {
			return new PersonLine(member.id().value(), member.name(), member.username(), Role.ATHLETE,
					member.teamName(), member.groupName(), member.birthDate(), member.under18());
		}

	}

}
