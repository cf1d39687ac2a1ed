package org.fallow.account.web;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.team.AthleteAccess;
import org.fallow.team.EmergencyNumber;
import org.fallow.team.Invitations;
import org.fallow.team.NameKey;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewInvitation;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Squad;
import org.fallow.team.StaffPost;
import org.fallow.team.Team;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * An owner's club: its teams and who leads them. Nobody's mornings are on it.
 */
@Controller
class ClubController {

	private static final String PAGE = "redirect:/club";

	private final AthleteAccess access;

	private final Squad squad;

	private final People people;

	private final Posts posts;

	private final Invitations invitations;

	private final Inviting inviting;

	private final EmergencyNumber emergency;

	ClubController(AthleteAccess access, Squad squad, People people, Posts posts, Invitations invitations,
			Inviting inviting, EmergencyNumber emergency) {
		this.access = access;
		this.squad = squad;
		this.people = people;
		this.posts = posts;
		this.invitations = invitations;
		this.inviting = inviting;
		this.emergency = emergency;
	}

	@GetMapping("/club")
	String show(Model model) {
		model.addAttribute("form", new ClubForm(null, null, ZoneId.systemDefault().getId()));
		return page(model);
	}

	@PostMapping("/club/teams")
	String add(@ModelAttribute("form") ClubForm form, BindingResult result, Model model, RedirectAttributes redirect) {
		UUID club = club(form.clubId()).orElseThrow(Inviting::notFound);
		String name = PersonForm.name(form.name(), "name", result);
		if (teams().stream().anyMatch((team) -> team.clubId().equals(club) && team.name().equals(name))) {
			result.rejectValue("name", "club.team.taken");
		}
		ZoneId zone = zone(form, result);
		if (result.hasErrors() || zone == null) {
			return page(model);
		}
		this.people.addTeam(club, name, zone);
		redirect.addFlashAttribute("notice", Message.of("club.team.added", name));
		return PAGE;
	}

	@PostMapping("/club/emergency")
	String choose(@RequestParam(defaultValue = "") String clubId, @RequestParam(defaultValue = "") String number,
			RedirectAttributes redirect) {
		UUID club = club(clubId).orElseThrow(Inviting::notFound);
		Optional<String> dialled = EmergencyNumber.dialled(number);
		if (dialled.isEmpty() && !number.isBlank()) {
			redirect.addFlashAttribute("problem", Message.of("club.emergency.digits"));
			return PAGE;
		}
		this.emergency.choose(club, dialled.orElse(null));
		redirect.addFlashAttribute("notice", dialled.map((chosen) -> Message.of("club.emergency.chosen", chosen))
			.orElseGet(() -> Message.of("club.emergency.none")));
		return PAGE;
	}

	@PostMapping("/club/invitations")
	String invite(@RequestParam(defaultValue = "") String name, @RequestParam String kind,
			@RequestParam(defaultValue = "") String teamId, @RequestParam(defaultValue = "") String clubId, Model model,
			RedirectAttributes redirect) {
		String typed = NameKey.cleaned(name);
		if (NameKey.hasControl(typed)) {
			redirect.addFlashAttribute("problem", Message.of("name.control"));
			return PAGE;
		}
		if (typed.isEmpty() || typed.length() > NewAthlete.LONGEST_NAME) {
			redirect.addFlashAttribute("problem", Message.of("name.length", NewAthlete.LONGEST_NAME));
			return PAGE;
		}
		NewInvitation offer = offer(typed, kind, teamId, clubId).orElseThrow(Inviting::notFound);
		model.addAttribute("invited", this.inviting.invite(offer));
		return show(model);
	}

	private Optional<NewInvitation> offer(String name, String kind, String teamId, String clubId) {
		if (kind.equals(Post.OWNER.name())) {
			return club(clubId)
				.map((club) -> new NewInvitation(Post.OWNER, club, null, name, null, List.of(), false, null));
		}
		return teams().stream()
			.filter((team) -> kind.equals(Post.HEAD_COACH.name()) && team.id().toString().equals(teamId))
			.findFirst()
			.map((team) -> new NewInvitation(Post.HEAD_COACH, team.clubId(), team.id(), name, null, List.of(), true,
					null));
	}

	@PostMapping("/club/invitations/{id}/revoke")
	String revoke(@PathVariable UUID id, RedirectAttributes redirect) {
		redirect.addFlashAttribute("notice", this.inviting.revoke(id));
		return PAGE;
	}

	@PostMapping("/club/posts/{id}/end")
	String end(@PathVariable UUID id, RedirectAttributes redirect) {
		StaffPost post = this.posts.find(id)
			.filter((one) -> club(one.clubId().toString()).isPresent())
			.orElseThrow(Inviting::notFound);
		redirect.addFlashAttribute("notice", this.inviting.end(post));
		return PAGE;
	}

	private static @Nullable ZoneId zone(ClubForm form, BindingResult result) {
		try {
			return ZoneId.of(PersonForm.text(form.zone()));
		}
		catch (DateTimeException ex) {
			result.rejectValue("zone", "set-up.zone.unknown");
			return null;
		}
	}

	private Optional<UUID> club(@Nullable String id) {
		return owned().map(StaffPost::clubId).filter((club) -> club.toString().equals(id)).findFirst();
	}

	private Stream<StaffPost> owned() {
		return this.posts.of(this.access.person()).stream().filter((post) -> post.kind() == Post.OWNER);
	}

	private List<Team> teams() {
		return this.squad.teamsOwnedBy(this.access.person());
	}

	private String page(Model model) {
		List<Team> teams = teams();
		List<UUID> clubs = owned().map(StaffPost::clubId).distinct().toList();
		model.addAttribute("clubs", this.squad.clubs(clubs));
		model.addAttribute("emergencyNumbers", this.emergency.of(clubs));
		model.addAttribute("teams", teams);
		model.addAttribute("zone", teams.isEmpty() ? ZoneOffset.UTC : teams.get(0).zone());
		model.addAttribute("staff", this.posts.inClubs(clubs));
		model.addAttribute("open", this.invitations.open(teams.stream().map(Team::id).toList(), clubs));
		return "account/club";
	}

}
