package org.fallow.account.web;

import java.time.Clock;
import java.util.UUID;

import org.fallow.access.Secret;
import org.fallow.account.PublicUrl;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Invitations;
import org.fallow.team.NewInvitation;
import org.fallow.team.Posts;
import org.fallow.team.StaffPost;
import org.fallow.wording.Message;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.server.ResponseStatusException;

/**
 * What the people's page and the club's do alike: making a link, taking one back, ending
 * a post.
 */
@Component
class Inviting {

	private final AthleteAccess access;

	private final Invitations invitations;

	private final Posts posts;

	private final PublicUrl address;

	private final Clock clock;

	Inviting(AthleteAccess access, Invitations invitations, Posts posts, PublicUrl address, Clock clock) {
		this.access = access;
		this.invitations = invitations;
		this.posts = posts;
		this.address = address;
		this.clock = clock;
	}

	Invited invite(NewInvitation offer) {
		Secret secret = this.invitations.make(offer, this.access.person()).orElseThrow(Inviting::notFound);
		String link = this.address.link("/join/" + secret.text());
		return new Invited(offer.name(), link, QrCode.of(link), this.clock.instant().plus(Invitations.LIFE));
	}

	Message revoke(UUID invitation) {
		if (!this.invitations.revoke(invitation, this.access.person())) {
			throw notFound();
		}
		return Message.of("invite.revoked");
	}

	/** Ends a post that the caller has found to be one of the page's. */
	Message end(StaffPost post) {
		return this.posts.end(post.id(), this.access.person()).isPresent()
				? Message.of("people.post.ended", post.name()) : Message.of("people.post.last");
	}

	static ResponseStatusException notFound() {
		return new ResponseStatusException(HttpStatus.NOT_FOUND);
	}

}
