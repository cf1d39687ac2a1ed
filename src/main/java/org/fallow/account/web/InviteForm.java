package org.fallow.account.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.team.Group;
import org.fallow.team.NewInvitation;
import org.fallow.team.Post;
import org.fallow.team.Team;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;

import org.springframework.validation.BindingResult;

/**
 * An invitation to make, as typed.
 *
 * @param whom whom it is for
 * @param kind ATHLETE or a post
 * @param intoTeam into which team
 * @param groupIds of an athlete one at most; of a coach of groups or deputy those covered
 * @param wholeTeam ticked for a deputy of the whole team
 * @param lastDay a deputy's last day
 * @param another the name, where it was confirmed to be another person's
 */
public record InviteForm(@Nullable String whom, @Nullable String kind, @Nullable String intoTeam,
		@Nullable List<String> groupIds, @Nullable Boolean wholeTeam, @Nullable String lastDay,
		@Nullable String another) {

	static InviteForm blank() {
		return new InviteForm(null, null, null, null, null, null, null);
	}

	/** Whether a group is ticked. */
	public boolean has(UUID group) {
		return this.groupIds != null && this.groupIds.contains(group.toString());
	}

	/** Reads the invitation, or rejects what is wrong. */
	@Nullable NewInvitation read(List<Team> teams, List<Group> groups, Today today, BindingResult result) {
		Team team = teams.stream().filter((one) -> one.id().toString().equals(this.intoTeam)).findFirst().orElse(null);
		String typedName = PersonForm.name(this.whom, "whom", result);
		Post post = post(result);
		if (team == null) {
			result.rejectValue("intoTeam", "people.team.unknown");
			return null;
		}
		List<UUID> covered = covered(team, groups, post, result);
		LocalDate last = (post == Post.DEPUTY) ? lastDay(today.of(team), result) : null;
		if (result.hasErrors()) {
			return null;
		}
		return new NewInvitation(post, team.clubId(), team.id(), typedName, null, covered,
				Boolean.TRUE.equals(this.wholeTeam),
				(last == null) ? null : last.plusDays(1).atStartOfDay(team.zone()).toInstant());
	}

	private @Nullable Post post(BindingResult result) {
		String typed = PersonForm.text(this.kind);
		if (typed.equals("ATHLETE")) {
			return null;
		}
		try {
			Post post = Post.valueOf(typed);
			if (post != Post.OWNER) {
				return post;
			}
		}
		catch (IllegalArgumentException ex) {
			// told below
		}
		result.rejectValue("kind", "invite.kind");
		return null;
	}

	private List<UUID> covered(Team team, List<Group> groups, @Nullable Post post, BindingResult result) {
		if (post == Post.HEAD_COACH || (post == Post.DEPUTY && Boolean.TRUE.equals(this.wholeTeam))) {
			return List.of();
		}
		Set<String> ticked = (this.groupIds == null) ? Set.of()
				: this.groupIds.stream().filter((id) -> !id.isEmpty()).collect(Collectors.toSet());
		List<UUID> own = groups.stream()
			.filter((group) -> group.teamId().equals(team.id()) && ticked.contains(group.id().toString()))
			.map(Group::id)
			.toList();
		if (own.size() != ticked.size()) {
			result.rejectValue("groupIds", "people.group.other-team");
		}
		else if (post == null && own.size() > 1) {
			result.rejectValue("groupIds", "invite.groups.one");
		}
		else if (post != null && own.isEmpty()) {
			result.rejectValue("groupIds", "invite.groups.none");
		}
		return own;
	}

	private @Nullable LocalDate lastDay(LocalDate today, BindingResult result) {
		try {
			LocalDate day = LocalDate.parse(PersonForm.text(this.lastDay));
			if (day.isBefore(today) || day.isAfter(today.plusYears(1))) {
				result.rejectValue("lastDay", "invite.last-day.range");
			}
			return day;
		}
		catch (DateTimeException ex) {
			result.rejectValue("lastDay", "invite.last-day");
			return null;
		}
	}

}
