package org.fallow.account.web;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.PersonId;
import org.fallow.account.AccountLinks;
import org.fallow.account.Accounts;
import org.fallow.account.PublicUrl;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Member;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.Posts;
import org.fallow.team.Squad;
import org.fallow.team.StaffPost;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * A head coach hands a person of the team a link that sets a new password. Whoever could
 * do more than the head coach, or something elsewhere, is left out: the link would hand
 * that over, too; and so would it an athlete's data that is not shared. So is the head
 * coach, whose own password asks for the present one.
 */
@Controller
class ResetLinkController {

	private final AthleteAccess access;

	private final Squad squad;

	private final Posts posts;

	private final Accounts accounts;

	private final AccountLinks links;

	private final PublicUrl address;

	ResetLinkController(AthleteAccess access, Squad squad, Posts posts, Accounts accounts, AccountLinks links,
			PublicUrl address) {
		this.access = access;
		this.squad = squad;
		this.posts = posts;
		this.accounts = accounts;
		this.links = links;
		this.address = address;
	}

	@PostMapping("/people/{id}/reset-link")
	String issue(@PathVariable UUID id, Model model) {
		PersonId person = new PersonId(id);
		if (person.equals(this.access.person()) || !mayIssue(person) || !this.accounts.hasAccount(person)) {
			throw new NoSuchAthlete(person);
		}
		model.addAttribute("name", this.squad.nameOf(person).orElseThrow());
		model.addAttribute("link", this.address.link("/reset/" + this.links.make(person)));
		model.addAttribute("hours", Accounts.LINK_BY_HAND.toHours());
		return "account/reset-link";
	}

	private boolean mayIssue(PersonId person) {
		List<UUID> led = this.squad.teamsLedBy(this.access.person()).stream().map((team) -> team.id()).toList();
		List<StaffPost> held = this.posts.of(person);
		Stream<UUID> trains = athlete(person).map(Member::teamId).stream();
		boolean here = Stream.concat(trains, held.stream().map(StaffPost::teamId)).anyMatch(led::contains);
		return here && !this.posts.hasMore(person);
	}

	private Optional<Member> athlete(PersonId person) {
		return this.squad.membersOf(this.access.person())
			.stream()
			.filter((member) -> member.id().equals(person) && member.shares())
			.findFirst();
	}

}
