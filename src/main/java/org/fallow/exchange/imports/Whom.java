package org.fallow.exchange.imports;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

import org.fallow.access.PersonId;
import org.fallow.team.NameMatch;
import org.fallow.team.NamesInFile;
import org.fallow.team.Roster;
import org.fallow.wording.Message;

/**
 * Whom the names of a file mean, by the team's members and by what the coach decided.
 */
final class Whom {

	/** Said of whoever may not be taken in, whatever the reason. */
	static final Message CLOSED = Message.of("importRow.closed");

	private static final int CHOICES = 10;

	private final Roster roster;

	private final Map<String, Decision> decisions;

	private final Choice choice;

	private final NamesInFile undecided;

	Whom(Roster roster, Map<String, Decision> decisions, Choice choice, List<String> names) {
		this.roster = roster;
		this.decisions = decisions;
		this.choice = choice;
		this.undecided = new NamesInFile(names.stream()
			.filter((name) -> !decisions.containsKey(name) && roster.match(name) instanceof NameMatch.Nobody)
			.toList());
	}

	int size() {
		return this.roster.size();
	}

	/** Makes somebody known who was added. */
	void added(Roster.Entry member) {
		this.roster.add(member);
	}

	Outcome of(String name) {
		NameMatch match = this.roster.match(name);
		if (match instanceof NameMatch.One one) {
			return new Outcome.Known(one.member().id());
		}
		if (match instanceof NameMatch.Several several) {
			return new Outcome.Refused(Message.of("importRow.ambiguous", told(several.members())));
		}
		return (match instanceof NameMatch.Closed) ? new Outcome.Refused(CLOSED) : ofNobodyKnown(name);
	}

	private Outcome ofNobodyKnown(String name) {
		Decision decision = this.decisions.get(name);
		if (decision != null) {
			PersonId same = decision.sameAs();
			return (same != null) ? new Outcome.Known(same) : (decision.kind() == Decision.Kind.LEAVE)
					? new Outcome.Refused(Message.of("importRow.left-out")) : new Outcome.Added();
		}
		List<Roster.Entry> near = this.roster.near(name);
		if (!near.isEmpty()) {
			return new Outcome.Refused(Message.of("importRow.near", told(near)));
		}
		List<String> alike = this.undecided.near(name);
		if (this.choice.createPeople() && !alike.isEmpty()) {
			return new Outcome.Refused(Message.of("importRow.near-in-file", String.join("; ", bounded(alike))));
		}
		return this.choice.createPeople() ? new Outcome.Added()
				: new Outcome.Refused(Message.of("importRow.unknown-person"));
	}

	private static String told(List<Roster.Entry> members) {
		return bounded(members).stream().map(Roster.Entry::told).collect(Collectors.joining("; "));
	}

	private static <T> List<T> bounded(List<T> all) {
		return all.subList(0, Math.min(CHOICES, all.size()));
	}

	/** What becomes of a name's lines. */
	sealed interface Outcome {

		/**
		 * They are an athlete's of the team.
		 *
		 * @param athlete who
		 */
		record Known(PersonId athlete) implements Outcome {
		}

		/** They are a new athlete's. */
		record Added() implements Outcome {
		}

		/**
		 * They are not taken in.
		 *
		 * @param why what to say
		 */
		record Refused(Message why) implements Outcome {
		}

	}

}
