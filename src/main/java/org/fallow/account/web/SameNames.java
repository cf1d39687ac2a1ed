package org.fallow.account.web;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.team.NameKey;
import org.fallow.team.NameMatch;
import org.fallow.team.Roster;
import org.fallow.team.Rosters;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.validation.BindingResult;

/**
 * Asks whether somebody is the one a team has already, before there are two entries for
 * one person.
 */
@Component
class SameNames {

	private static final int CHOICES = 10;

	private final Rosters rosters;

	SameNames(Rosters rosters) {
		this.rosters = rosters;
	}

	/**
	 * Checks the name of an athlete to be invited, who agrees or not for themselves.
	 * @param team the team
	 * @param name the name
	 * @param another the name that was confirmed to be another person's
	 * @param field the name's field, where it is rejected
	 * @param result takes what is asked
	 * @return whether there is something to confirm, or was
	 */
	boolean asks(UUID team, String name, @Nullable String another, String field, BindingResult result) {
		Roster roster = this.rosters.of(team);
		Set<Roster.Entry> alike = new LinkedHashSet<>();
		NameMatch match = roster.match(name);
		if (match instanceof NameMatch.One one) {
			alike.add(one.member());
		}
		else if (match instanceof NameMatch.Several several) {
			alike.addAll(several.members());
		}
		alike.addAll(roster.near(name));
		if (!alike.isEmpty() && !isConfirmed(name, another)) {
			result.rejectValue(field, "people.same", new Object[] { told(List.copyOf(alike)) }, null);
		}
		return !alike.isEmpty();
	}

	/**
	 * Checks the same of an athlete to be kept on file: nobody is who shares nothing, or
	 * left.
	 */
	boolean asksOnFile(UUID team, String name, @Nullable String another, String field, BindingResult result) {
		if (!this.rosters.closed(team, List.of(name)).isEmpty()) {
			result.rejectValue(field, "people.closed");
			return false;
		}
		return asks(team, name, another, field, result);
	}

	private static boolean isConfirmed(String name, @Nullable String another) {
		return another != null && NameKey.of(another).equals(NameKey.of(name));
	}

	private static String told(List<Roster.Entry> alike) {
		return alike.subList(0, Math.min(CHOICES, alike.size()))
			.stream()
			.map(Roster.Entry::told)
			.collect(Collectors.joining("; "));
	}

}
