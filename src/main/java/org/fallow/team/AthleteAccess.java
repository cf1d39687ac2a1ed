package org.fallow.team;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Trace;
import org.fallow.access.TraceAction;
import org.fallow.access.TraceActor;
import org.fallow.access.TraceSubject;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/**
 * Whom the present person may look at: athletes themselves, coaches the athletes whom
 * their posts cover and who share their data. For anybody else an athlete does not exist.
 */
@Component
public class AthleteAccess {

	private static final String KNOWN = AthleteAccess.class.getName() + ".";

	private final CurrentPerson current;

	private final Squad squad;

	private final Trace trace;

	private final Today today;

	AthleteAccess(CurrentPerson current, Squad squad, Trace trace, Today today) {
		this.current = current;
		this.squad = squad;
		this.trace = trace;
		this.today = today;
	}

	/**
	 * The signed-in person.
	 * @return the id
	 * @throws IllegalStateException if nobody is signed in
	 */
	public PersonId person() {
		return this.current.id().orElseThrow(() -> new IllegalStateException("nobody is signed in"));
	}

	/**
	 * The signed-in person as an athlete.
	 * @return the athlete
	 * @throws NoSuchAthlete if the person is none
	 */
	public Athlete self() {
		return this.squad.athlete(person());
	}

	/**
	 * The athletes of the signed-in coach, asked once a request.
	 * @return those whom the person's posts cover and who share, by name
	 */
	@SuppressWarnings("unchecked")
	public List<Athlete> athletes() {
		PersonId person = person();
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (request == null) {
			return this.squad.athletesOf(person);
		}
		String name = KNOWN + person + ".all";
		if (request.getAttribute(name, RequestAttributes.SCOPE_REQUEST) instanceof List<?> known) {
			return (List<Athlete>) known;
		}
		List<Athlete> found = this.squad.athletesOf(person);
		request.setAttribute(name, found, RequestAttributes.SCOPE_REQUEST);
		request.setAttribute(KNOWN + person, found.stream().map(Athlete::id).collect(Collectors.toSet()),
				RequestAttributes.SCOPE_REQUEST);
		return found;
	}

	/**
	 * An athlete of the signed-in coach, whose page is opened: that is noted.
	 * @param id whose page is asked for
	 * @param page which page
	 * @return the athlete
	 * @throws NoSuchAthlete if there is none of this id whom the person covers
	 */
	public Athlete coached(UUID id, TraceSubject page) {
		Athlete athlete = coached(id);
		note(athlete, TraceAction.LOOKED, page);
		return athlete;
	}

	/**
	 * An athlete of the signed-in coach, without showing anything of it.
	 * @param id who is asked for
	 * @return the athlete
	 * @throws NoSuchAthlete if there is none of this id whom the person covers
	 */
	public Athlete coached(UUID id) {
		PersonId athlete = new PersonId(id);
		if (postFor(athlete).isEmpty()) {
			throw new NoSuchAthlete(athlete);
		}
		return this.squad.athlete(athlete);
	}

	/**
	 * An athlete for whom the signed-in coach may record what loosens.
	 * @param id who is asked for
	 * @return the athlete
	 * @throws NoSuchAthlete if there is none of this id whom the person covers in more
	 * than a deputy's post
	 */
	public Athlete fullyCoached(UUID id) {
		Athlete athlete = coached(id);
		if (!mayLoosen(athlete.id())) {
			throw new NoSuchAthlete(athlete.id());
		}
		return athlete;
	}

	/**
	 * Notes that the present person added something to an athlete's data.
	 * @param athlete whose
	 * @param what which kind of fact
	 */
	public void changed(Athlete athlete, TraceSubject what) {
		note(athlete, TraceAction.CHANGED, what);
	}

	/**
	 * Notes that the present person saw the clearances of several athletes.
	 * @param athletes whose
	 * @param what the board, noted once a day, or a rule trial
	 */
	public void looked(Collection<Athlete> athletes, TraceSubject what) {
		if (what == TraceSubject.BOARD) {
			this.trace.noteBoard(shown(athletes), person());
			return;
		}
		athletes.forEach((athlete) -> note(athlete, TraceAction.LOOKED, what));
	}

	/** Each by the post that covers this athlete, all asked at once. */
	private List<Trace.Shown> shown(Collection<Athlete> athletes) {
		Map<PersonId, Post> posts = this.squad.postsFor(person(), athletes.stream().map(Athlete::id).toList());
		return athletes.stream().map((athlete) -> {
			Post post = posts.get(athlete.id());
			if (post == null) {
				throw new NoSuchAthlete(athlete.id());
			}
			return new Trace.Shown(athlete.id(), this.today.of(athlete), post.name());
		}).toList();
	}

	private void note(Athlete athlete, TraceAction action, TraceSubject what) {
		PersonId person = person();
		String post = person.equals(athlete.id()) ? TraceActor.SELF
				: postFor(athlete.id()).map(Post::name).orElseThrow(() -> new NoSuchAthlete(athlete.id()));
		this.trace.note(athlete.id(), athlete.zone(), person, post, action, what);
	}

	/**
	 * By which post the present person covers an athlete: asked once a request, so that a
	 * page does not ask the same ten times.
	 */
	private Optional<Post> postFor(PersonId athlete) {
		PersonId person = person();
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (request == null) {
			return this.squad.postFor(person, athlete);
		}
		String name = KNOWN + person + "." + athlete;
		if (request.getAttribute(name, RequestAttributes.SCOPE_REQUEST) instanceof Optional<?> known) {
			return known.map(Post.class::cast);
		}
		Optional<Post> found = this.squad.postFor(person, athlete);
		request.setAttribute(name, found, RequestAttributes.SCOPE_REQUEST);
		return found;
	}

	/**
	 * Whether the present person may see and enter an athlete's data.
	 * @param athlete whose
	 * @return true for the athlete and for the coaches who cover the athlete
	 */
	public boolean maySee(PersonId athlete) {
		return this.current.id().filter((person) -> person.equals(athlete) || postFor(athlete).isPresent()).isPresent();
	}

	/**
	 * Whether the present person may see the data of each of several athletes.
	 * @param athletes whose
	 * @return true if so
	 */
	public boolean maySeeAll(Collection<PersonId> athletes) {
		Set<PersonId> asked = Set.copyOf(athletes);
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (this.current.id().filter((person) -> isKnown(request, person, asked)).isPresent()) {
			return true;
		}
		boolean may = this.current.id()
			.filter((person) -> asked.stream().allMatch(person::equals) || this.squad.mayCoachAll(person, asked))
			.isPresent();
		if (may && request != null) {
			request.setAttribute(KNOWN + person(), asked, RequestAttributes.SCOPE_REQUEST);
		}
		return may;
	}

	private static boolean isKnown(@Nullable RequestAttributes request, PersonId person, Set<PersonId> asked) {
		return request != null
				&& request.getAttribute(KNOWN + person, RequestAttributes.SCOPE_REQUEST) instanceof Set<?> known
				&& known.containsAll(asked);
	}

	/**
	 * Whether the present person may record what can loosen an athlete's clearance: a
	 * clinician's word, a withdrawal, a working level. A deputy may not, nor the athlete.
	 * @param athlete whose
	 * @return true for a head coach or coach of groups who covers the athlete
	 */
	public boolean mayLoosen(PersonId athlete) {
		return this.current.id()
			.flatMap((person) -> postFor(athlete))
			.filter((post) -> post == Post.HEAD_COACH || post == Post.GROUP_COACH)
			.isPresent();
	}

	/**
	 * Whether the present person may look after an athlete: whatever is stricter.
	 * @param athlete whose
	 * @return true for a coach in any post who covers the athlete
	 */
	public boolean mayCoach(PersonId athlete) {
		return this.current.id().flatMap((person) -> postFor(athlete)).isPresent();
	}

	/**
	 * Whether the present person leads a team: its rules, its people, its imports.
	 * @param teamId the team
	 * @return true for its head coaches
	 */
	public boolean leads(UUID teamId) {
		return this.current.id().filter((person) -> this.squad.leads(person, teamId)).isPresent();
	}

	/**
	 * Whether the present person may see a group and its programme.
	 * @param groupId the group
	 * @return true for whoever trains in its team or holds a post there
	 */
	public boolean maySeeGroup(UUID groupId) {
		return this.current.id().filter((person) -> this.squad.belongsToTeamOf(person, groupId)).isPresent();
	}

	/**
	 * Whether the present person may change a group's programme.
	 * @param groupId the group
	 * @return true for head coaches of its team and coaches of groups who have it in
	 * their charge; false for deputies
	 */
	public boolean mayProgramme(UUID groupId) {
		return this.current.id()
			.filter((person) -> this.squad.groupsCoachedBy(person)
				.stream()
				.anyMatch((charge) -> charge.group().id().equals(groupId) && charge.post() != Post.DEPUTY))
			.isPresent();
	}

}
