package org.fallow.account.web;

import java.time.LocalDateTime;
import java.time.ZoneId;

import org.fallow.access.TraceActor;
import org.fallow.access.TraceLine;
import org.jspecify.annotations.Nullable;

/**
 * A line of the trace as pages show it.
 *
 * @param at when, in the person's zone
 * @param own whether it was done in the person's own name
 * @param name who
 * @param post by which right
 * @param action looked or changed
 * @param what which page or fact
 * @param address where from; absent for work without a request
 * @param about whom else it is about; empty for most
 * @param aboutPost the post given or ended; absent for what is about none
 * @param linkBy who had made the link by which the password had been set; absent for a
 * sign-in of one's own
 */
public record Noted(LocalDateTime at, boolean own, String name, String post, String action, String what,
		@Nullable String address, String about, @Nullable String aboutPost, @Nullable String linkBy) {

	static Noted of(TraceLine line, ZoneId zone) {
		String about = line.about();
		return new Noted(LocalDateTime.ofInstant(line.at(), zone), line.actor().post().equals(TraceActor.SELF),
				line.actor().name(), line.actor().post(), line.action().name(), line.what().name(), line.address(),
				(about == null) ? "" : about, line.post(), line.linkBy());
	}

	/**
	 * Whether it was surely the person who did it.
	 * @return false for others, and for what somebody with a link of theirs could have
	 * done
	 */
	public boolean isSurelyOwn() {
		return this.own && this.linkBy == null && !this.what.equals("LINK_USED");
	}

	/**
	 * The sentence's key: a link somebody else had made is used in other words than one's
	 * own.
	 * @return a key
	 */
	public String code() {
		return "trace." + this.action + "." + this.what
				+ ((this.what.equals("LINK_USED") && this.about.isEmpty()) ? ".own" : "");
	}

}
