package org.fallow.contact.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;

import org.fallow.access.PersonId;
import org.fallow.contact.ThreadMessage;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A message as pages show it.
 *
 * @param about day of the decision it is about
 * @param decided what was decided on that day; absent where nothing of the return changed
 * @param body plain text with its line breaks
 * @param name the sender's
 * @param role as the athlete or as a coach
 * @param own whether the reader sent it
 * @param at when, in the reader's zone
 */
public record ThreadLine(LocalDate about, @Nullable Message decided, String body, String name, Role role, boolean own,
		LocalDateTime at) {

	static ThreadLine of(ThreadMessage message, @Nullable Message decided, PersonId reader, ZoneId zone) {
		return new ThreadLine(message.about(), decided, message.body(), message.name(), message.role(),
				message.actor().equals(reader), LocalDateTime.ofInstant(message.at(), zone));
	}

}
