package org.fallow.account;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.team.Athlete;
import org.fallow.team.BirthDates;
import org.fallow.team.Consent;
import org.fallow.team.Consents;
import org.fallow.team.Guardian;
import org.fallow.team.Invitation;
import org.fallow.team.Invitations;
import org.fallow.team.NameKey;
import org.fallow.team.NewAthlete;
import org.fallow.team.NewInvitation;
import org.fallow.team.NewPost;
import org.fallow.team.People;
import org.fallow.team.Post;
import org.fallow.team.Posts;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Accepting an invitation: person, account, membership or post and consent come about in
 * one transaction that uses the invitation up, or nothing does.
 */
@Service
public class Joining {

	private static final Problem GONE = Problem.of("", "join.gone");

	private final Invitations invitations;

	private final People people;

	private final Posts posts;

	private final Consents consents;

	private final Squad squad;

	private final Accounts accounts;

	private final TransactionTemplate transaction;

	private final Today today;

	Joining(Invitations invitations, People people, Posts posts, Consents consents, Squad squad, Accounts accounts,
			PlatformTransactionManager transactions, Today today) {
		this.invitations = invitations;
		this.people = people;
		this.posts = posts;
		this.consents = consents;
		this.squad = squad;
		this.accounts = accounts;
		this.transaction = new TransactionTemplate(transactions);
		this.today = today;
	}

	/**
	 * The invitation of a link.
	 * @param hash of the link's secret
	 * @return the invitation; empty if it does not work, whatever the reason
	 */
	public Optional<Invitation> find(String hash) {
		return Purpose.SIGN_IN.call(() -> this.invitations.find(hash));
	}

	/**
	 * Whether accepting asks for a guardian.
	 * @param invitation which
	 * @param born the birth date known or typed; absent counts as under 18
	 * @return true for an athlete under 18
	 */
	public boolean asksGuardian(Invitation invitation, @Nullable LocalDate born) {
		return asksGuardian(invitation, born, today(invitation));
	}

	private static boolean asksGuardian(Invitation invitation, @Nullable LocalDate born, LocalDate today) {
		return invitation.forAthlete() && Athlete.isUnder18(born, today);
	}

	/** The athlete's day; of somebody new the day of the zone they will have. */
	private LocalDate today(Invitation invitation) {
		PersonId person = invitation.offer().person();
		return this.today.in((person == null) ? zone(invitation.offer()) : zone(person));
	}

	private ZoneId zone(PersonId person) {
		return CurrentPerson.callAs(person, () -> this.squad.zoneOf(person)).orElse(ZoneOffset.UTC);
	}

	/**
	 * The birth date on file of the athlete an invitation is for.
	 * @param invitation which
	 * @return the date; absent if there is none, or no athlete on file
	 */
	public @Nullable LocalDate bornOnFile(Invitation invitation) {
		PersonId person = invitation.offer().person();
		return (person == null) ? null : CurrentPerson.callAs(person, () -> this.squad.athlete(person).birthDate());
	}

	/**
	 * On whose word data of the athlete on file are kept whom an invitation is for.
	 * @param invitation which
	 * @return what was noted; absent if nothing was, or no athlete is on file
	 */
	public @Nullable OnFile onFile(Invitation invitation) {
		PersonId person = invitation.offer().person();
		return (person == null) ? null : CurrentPerson.callAs(person, () -> {
			ZoneId zone = this.squad.athlete(person).zone();
			return this.consents.of(person)
				.stream()
				.findFirst()
				.filter((said) -> said.kind() == Consent.Kind.KEPT || said.kind() == Consent.Kind.STATED)
				.map((said) -> new OnFile(said, LocalDate.ofInstant(said.at(), zone)))
				.orElse(null);
		});
	}

	/**
	 * Accepts as somebody who has no account yet.
	 * @param hash of the link's secret
	 * @param newcomer what they filled in
	 * @return what is wrong; empty when it is done
	 */
	public List<Problem> join(String hash, Newcomer newcomer) {
		Invitation invitation = find(hash).orElse(null);
		if (invitation == null) {
			return List.of(GONE);
		}
		LocalDate onFile = bornOnFile(invitation);
		LocalDate born = (onFile != null) ? onFile : newcomer.birthDate();
		String name = invitation.onFile() ? invitation.offer().name() : newcomer.name();
		List<Problem> problems = new ArrayList<>();
		if (NameKey.hasControl(NameKey.cleaned(name))) {
			problems.add(Problem.of("name", "name.control"));
		}
		else if (isNoName(name)) {
			problems.add(Problem.of("name", "name.length", NewAthlete.LONGEST_NAME));
		}
		problems
			.addAll(Purpose.SIGN_IN.call(() -> this.accounts.check(newcomer.username(), newcomer.password(), name)));
		LocalDate today = today(invitation);
		problems.addAll(consent(invitation, newcomer, born, today));
		if (!problems.isEmpty()) {
			return problems;
		}
		PersonId known = invitation.offer().person();
		PersonId person = (known != null) ? known : PersonId.next();
		return settled(hash, person, () -> {
			if (known == null) {
				this.people.addPerson(person, name, zone(invitation.offer()), born);
			}
			else if (onFile == null && born != null) {
				this.people.wasBorn(person, born);
			}
			this.accounts.open(person, newcomer.username(), newcomer.password());
		}, () -> give(invitation, person, newcomer, born, today));
	}

	/**
	 * Accepts as somebody who is signed in.
	 * @param hash of the link's secret
	 * @param person who is signed in
	 * @param newcomer consent and, where under 18, a guardian
	 * @return what is wrong; empty when it is done
	 */
	public List<Problem> join(String hash, PersonId person, Newcomer newcomer) {
		Invitation invitation = find(hash).orElse(null);
		if (invitation == null) {
			return List.of(GONE);
		}
		if (invitation.onFile()) {
			return List.of(Problem.of("", "join.on-file"));
		}
		LocalDate onFile = CurrentPerson.callAs(person, () -> this.people.birthDateOf(person));
		LocalDate born = (onFile != null) ? onFile : newcomer.birthDate();
		LocalDate today = this.today.in(zone(person));
		List<Problem> problems = consent(invitation, newcomer, born, today);
		if (!problems.isEmpty()) {
			return problems;
		}
		return settled(hash, person, () -> {
			if (onFile == null && born != null) {
				this.people.wasBorn(person, born);
			}
		}, () -> give(invitation, person, newcomer, born, today));
	}

	private List<Problem> consent(Invitation invitation, Newcomer newcomer, @Nullable LocalDate born, LocalDate today) {
		List<Problem> problems = new ArrayList<>();
		Optional.ofNullable(newcomer.birthDate())
			.flatMap((typed) -> BirthDates.problem(typed, today))
			.ifPresent((problem) -> problems.add(new Problem("birthDate", problem)));
		if (!invitation.forAthlete()) {
			return problems;
		}
		if (!newcomer.agreed()) {
			problems.add(Problem.of("agreed", "join.agree"));
		}
		if (asksGuardian(invitation, born, today)) {
			if (isNoName(newcomer.guardian())) {
				problems.add(Problem.of("guardian", "join.guardian"));
			}
			if (isNoName(newcomer.guardianRole())) {
				problems.add(Problem.of("guardianRole", "join.guardian.role"));
			}
		}
		return problems;
	}

	private static boolean isNoName(String text) {
		String name = NameKey.cleaned(text);
		return name.isEmpty() || name.length() > NewAthlete.LONGEST_NAME || NameKey.hasControl(name);
	}

	/**
	 * Makes the person, uses the invitation up and gives what it offers: all or nothing.
	 */
	private List<Problem> settled(String hash, PersonId person, Runnable make, Supplier<List<Problem>> give) {
		try {
			return Purpose.SIGN_IN.call(() -> CurrentPerson.callAs(person,
					() -> Objects.requireNonNull(this.transaction.execute((status) -> {
						make.run();
						List<Problem> problems = this.invitations.use(hash, person) ? give.get() : List.of(GONE);
						if (!problems.isEmpty()) {
							status.setRollbackOnly();
						}
						return problems;
					}))));
		}
		catch (DataIntegrityViolationException ex) {
			return List.of(find(hash).isPresent() ? Problem.of("username", "account.username.taken") : GONE);
		}
	}

	private List<Problem> give(Invitation invitation, PersonId person, Newcomer newcomer, @Nullable LocalDate born,
			LocalDate today) {
		NewInvitation offer = invitation.offer();
		Post post = offer.post();
		if (post != null) {
			boolean has = this.posts.of(person)
				.stream()
				.anyMatch((held) -> held.kind() == post && held.clubId().equals(offer.clubId())
						&& Objects.equals(held.teamId(), offer.teamId()));
			if (has) {
				return List.of(Problem.of("", "join.has-post"));
			}
			this.posts.give(person, new NewPost(post, offer.clubId(), offer.teamId(), offer.wholeTeam(), offer.groups(),
					offer.until()));
			return List.of();
		}
		if (!invitation.onFile()) {
			if (this.consents.team(person).isPresent()) {
				return List.of(Problem.of("", "join.in-a-team"));
			}
			this.people.joins(person, Objects.requireNonNull(offer.teamId()),
					offer.groups().isEmpty() ? null : offer.groups().get(0));
		}
		this.consents.give(person, asksGuardian(invitation, born, today)
				? new Guardian(newcomer.guardian(), newcomer.guardianRole()) : null);
		return List.of();
	}

	private ZoneId zone(NewInvitation offer) {
		UUID team = offer.teamId();
		return (team == null) ? ZoneOffset.UTC : this.people.zoneOf(team);
	}

}
