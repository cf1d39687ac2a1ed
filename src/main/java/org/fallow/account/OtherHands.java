package org.fallow.account;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

import org.fallow.access.PersonId;
import org.fallow.access.Trace;
import org.fallow.access.TraceLine;

import org.springframework.stereotype.Service;

/**
 * What others did about the ways into somebody's account, which is told at sign-in. For
 * {@link #TOLD_FOR} it is told at each, so that whoever used the link cannot use the
 * telling up; what was done since the sign-in before is told however long ago that is.
 */
@Service
public class OtherHands {

	/** For so long each sign-in tells it. */
	public static final Duration TOLD_FOR = Duration.ofDays(30);

	private final Accounts accounts;

	private final Trace trace;

	private final Clock clock;

	OtherHands(Accounts accounts, Trace trace, Clock clock) {
		this.accounts = accounts;
		this.trace = trace;
		this.clock = clock;
	}

	/**
	 * Notes a sign-in.
	 * @param person who signed in
	 * @return from when on there is something to tell; empty if there is nothing
	 */
	public Optional<Instant> signedIn(PersonId person) {
		Instant lately = this.clock.instant().minus(TOLD_FOR);
		Instant since = this.accounts.signedIn(person).filter((before) -> before.isBefore(lately)).orElse(lately);
		return since(person, since).isEmpty() ? Optional.empty() : Optional.of(since);
	}

	/**
	 * What is to be told.
	 * @param person whose account; nobody else is told
	 * @param since from when on
	 * @return newest first
	 */
	public List<TraceLine> since(PersonId person, Instant since) {
		return this.trace.ofOtherHands(person, since);
	}

}
