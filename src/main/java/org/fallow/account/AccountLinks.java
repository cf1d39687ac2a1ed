package org.fallow.account;

import java.time.ZoneId;
import java.time.ZoneOffset;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Trace;
import org.fallow.access.TraceActor;
import org.fallow.access.TraceSubject;
import org.fallow.team.Post;
import org.fallow.team.Squad;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Service;

/**
 * What somebody does about the ways into an account stands in the trace of the person
 * whose account it is, and goes to their mail. Line and deed come about together.
 */
@Service
public class AccountLinks {

	private final Accounts accounts;

	private final Squad squad;

	private final CurrentPerson current;

	private final Trace trace;

	private final ResetMail mail;

	private final SignInWork work;

	AccountLinks(Accounts accounts, Squad squad, CurrentPerson current, Trace trace, ResetMail mail, SignInWork work) {
		this.accounts = accounts;
		this.squad = squad;
		this.current = current;
		this.trace = trace;
		this.mail = mail;
		this.work = work;
	}

	/**
	 * Draws a link as {@link Accounts#resetLink} does, for somebody else: a head coach's
	 * doing. Whoever calls has checked that this may be done.
	 * @param person whose account
	 * @return the token that ends the link's path
	 */
	public String make(PersonId person) {
		PersonId maker = this.current.id().orElseThrow();
		String name = this.work.call(() -> this.squad.nameOf(maker)).orElseThrow();
		String token = this.work.call(() -> {
			note(person, new TraceActor(maker, name, Post.HEAD_COACH.name()), TraceSubject.LINK_MADE, null);
			return this.accounts.resetLink(person, name);
		});
		this.mail.tell(person, "link-made.mail", name);
		return token;
	}

	/** Within the transaction that uses a link up. */
	void used(PersonId person, @Nullable String maker) {
		note(person, own(person), TraceSubject.LINK_USED, maker);
	}

	/** Once that transaction is through. */
	void tellUsed(PersonId person, @Nullable String maker) {
		if (maker == null) {
			this.mail.tell(person, "password-set.mail");
		}
		else {
			this.mail.tell(person, "link-used.mail", maker);
		}
	}

	/** Within the transaction that changes a password or makes a passkey. */
	void changed(PersonId person, TraceSubject what) {
		note(person, own(person), what, null);
	}

	/** Once that transaction is through. */
	void tellChanged(PersonId person) {
		this.mail.tell(person, "password-set.mail");
	}

	private void note(PersonId person, TraceActor actor, TraceSubject what, @Nullable String about) {
		ZoneId zone = this.squad.zoneOf(person).orElse(ZoneOffset.UTC);
		this.trace.noteAccount(person, zone, actor, what, about);
	}

	private static TraceActor own(PersonId person) {
		return new TraceActor(person, "", TraceActor.SELF);
	}

}
