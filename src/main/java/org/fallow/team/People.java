package org.fallow.team;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;

import jakarta.persistence.EntityManager;
import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Adds clubs, teams, groups, coaches and athletes. Whether the person who asks may do so
 * is checked by the caller.
 */
@Service
@Transactional
public class People {

	private final EntityManager entities;

	private final Squad squad;

	private final Posts posts;

	private final Consents consents;

	private final Rosters rosters;

	private final ApplicationEventPublisher events;

	private final Clock clock;

	People(EntityManager entities, Squad squad, Posts posts, Consents consents, Rosters rosters,
			ApplicationEventPublisher events, Clock clock) {
		this.entities = entities;
		this.squad = squad;
		this.posts = posts;
		this.consents = consents;
		this.rosters = rosters;
		this.events = events;
		this.clock = clock;
	}

	/**
	 * Founds a club, without any team.
	 * @param name the club's name
	 * @return the club
	 */
	public Club foundClub(String name) {
		return added(new Club(Ids.next(), name.strip(), now()));
	}

	/**
	 * Adds a team to a club, with the default rule set.
	 * @param clubId the club
	 * @param name the team's name, unique in the club
	 * @param zone the zone its new athletes get
	 * @return the team
	 */
	public Team addTeam(UUID clubId, String name, ZoneId zone) {
		Team team = added(new Team(Ids.next(), clubId, name.strip(), zone));
		this.events.publishEvent(new TeamAdded(team.id(), now()));
		return team;
	}

	/**
	 * The group of a name, made if the team has none.
	 * @param teamId the team
	 * @param name the group's name; upper and lower case are the same
	 * @return the group
	 */
	public Group findOrAddGroup(UUID teamId, String name) {
		String wanted = name.strip();
		return this.squad.groupsOf(teamId)
			.stream()
			.filter((group) -> group.name().equalsIgnoreCase(wanted))
			.findFirst()
			.orElseGet(() -> added(new Group(Ids.next(), teamId, wanted)));
	}

	/**
	 * Adds a person who is to be head coach of a team.
	 * @param teamId the team
	 * @param name the coach's name
	 * @return the new person
	 */
	public PersonId addCoach(UUID teamId, String name) {
		Team team = team(teamId);
		PersonId person = addPerson(name, team.zone());
		this.posts.give(person, NewPost.headCoach(team));
		return person;
	}

	/**
	 * Adds a person who is nothing here yet.
	 * @param name the person's name
	 * @param zone where the person's civil days are counted
	 * @return the new person
	 */
	public PersonId addPerson(String name, ZoneId zone) {
		return addPerson(PersonId.next(), name, zone, null);
	}

	/**
	 * Adds a person under an id drawn before.
	 * @param id the id
	 * @param name the person's name
	 * @param zone where the person's civil days are counted
	 * @param birthDate absent where not told
	 * @return the id
	 */
	public PersonId addPerson(PersonId id, String name, ZoneId zone, @Nullable LocalDate birthDate) {
		return added(new Person(id.value(), NameKey.cleaned(name), zone, birthDate, now())).id();
	}

	/**
	 * Makes a person an athlete of a team, which becomes the home team. The consent is
	 * for the caller to keep in the same transaction.
	 * @param person who, in no team at present
	 * @param teamId the team
	 * @param groupId the group of that team; absent if none
	 */
	public void joins(PersonId person, UUID teamId, @Nullable UUID groupId) {
		Membership.Key key = new Membership.Key(person.value(), teamId);
		Membership before = this.entities.find(Membership.class, key);
		if (before != null) {
			before.rejoin(groupId, now());
			this.entities.flush();
		}
		else {
			added(new Membership(key, groupId, null, now()));
		}
	}

	/**
	 * The birth date of a person.
	 * @param person who
	 * @return the date; absent where not told
	 */
	@Transactional(readOnly = true)
	public @Nullable LocalDate birthDateOf(PersonId person) {
		Person found = this.entities.find(Person.class, person.value());
		return (found == null) ? null : found.birthDate();
	}

	/**
	 * The zone of a team.
	 * @param teamId the team
	 * @return the zone its new people get
	 */
	@Transactional(readOnly = true)
	public ZoneId zoneOf(UUID teamId) {
		return team(teamId).zone();
	}

	/**
	 * Notes the birth date of a person who had none on file.
	 * @param person who
	 * @param birthDate the date
	 */
	public void wasBorn(PersonId person, LocalDate birthDate) {
		Person found = this.entities.find(Person.class, person.value());
		if (found != null) {
			found.wasBorn(birthDate);
			this.entities.flush();
		}
	}

	/**
	 * Makes a person who is here already a head coach of one more team.
	 * @param teamId the team
	 * @param person the person
	 */
	public void alsoCoaches(UUID teamId, PersonId person) {
		this.posts.give(person, NewPost.headCoach(team(teamId)));
	}

	/**
	 * Makes a person an owner of a club.
	 * @param clubId the club
	 * @param person the person
	 */
	public void owns(UUID clubId, PersonId person) {
		this.posts.give(person, NewPost.owner(clubId));
	}

	/**
	 * Adds an athlete to a team, which becomes the athlete's home team, on the club's
	 * record.
	 * @param teamId the team
	 * @param athlete who
	 * @return the athlete, here since today
	 */
	public Athlete addAthlete(UUID teamId, NewAthlete athlete) {
		return addAthlete(teamId, athlete, Kept.ON_RECORD);
	}

	/**
	 * Adds an athlete to a team, which becomes the athlete's home team. The athlete has
	 * not agreed by that.
	 * @param teamId the team
	 * @param athlete who
	 * @param kept on whose word the data are kept
	 * @return the athlete, here since today
	 */
	public Athlete addAthlete(UUID teamId, NewAthlete athlete, Kept kept) {
		ZoneId zone = (athlete.zone() != null) ? athlete.zone() : team(teamId).zone();
		Person person = added(new Person(Ids.next(), athlete.name(), zone, athlete.birthDate(), now()));
		added(new Membership(new Membership.Key(person.id().value(), teamId), groupId(teamId, athlete.group()),
				athlete.externalCode(), now()));
		this.consents.kept(person.id(), teamId, kept);
		return this.squad.athlete(person.id());
	}

	/**
	 * The athlete of a team whom a code or name means.
	 * @param teamId the team
	 * @param codeOrName what a file calls the athlete
	 * @return the athlete; empty if none who shares fits, or if several people may be
	 * meant
	 */
	@Transactional(readOnly = true)
	public Optional<Athlete> find(UUID teamId, String codeOrName) {
		return (this.rosters.of(teamId).match(codeOrName) instanceof NameMatch.One one)
				? this.squad.find(one.member().id()) : Optional.empty();
	}

	private @Nullable UUID groupId(UUID teamId, @Nullable String group) {
		return (group == null || group.isBlank()) ? null : findOrAddGroup(teamId, group).id();
	}

	private Team team(UUID teamId) {
		Team team = this.entities.find(Team.class, teamId);
		if (team == null) {
			throw new IllegalArgumentException("no team " + teamId);
		}
		return team;
	}

	private <T> T added(T entity) {
		this.entities.persist(entity);
		this.entities.flush();
		return entity;
	}

	private Instant now() {
		return this.clock.instant();
	}

}
