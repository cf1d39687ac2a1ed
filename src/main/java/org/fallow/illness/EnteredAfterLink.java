package org.fallow.illness;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.jspecify.annotations.Nullable;

/**
 * Facts about one athlete that were entered after somebody else's link.
 *
 * @param facts newest first; mostly none
 */
public record EnteredAfterLink(List<Fact> facts) {

	public EnteredAfterLink {
		facts = List.copyOf(facts);
	}

	/**
	 * Who had made the link before a fact.
	 * @param what which kind of fact
	 * @param recorded when it was recorded
	 * @return the maker as named then; null if it was entered as always
	 */
	public @Nullable String by(TraceSubject what, Instant recorded) {
		return this.facts.stream()
			.filter((fact) -> fact.what() == what && fact.at().equals(recorded))
			.map(Fact::linkBy)
			.findFirst()
			.orElse(null);
	}

	/**
	 * The facts counted, for a page.
	 * @param zone the athlete's
	 * @param names of people
	 * @return one line for each kind of fact, account and maker of a link
	 */
	public List<Line> lines(ZoneId zone, Function<PersonId, String> names) {
		Map<List<Object>, List<Fact>> alike = new LinkedHashMap<>();
		this.facts.forEach((fact) -> alike
			.computeIfAbsent(List.of(fact.what(), fact.actor(), fact.linkBy()), (key) -> new ArrayList<>())
			.add(fact));
		return alike.values()
			.stream()
			.map((some) -> new Line(some.get(0).what().name(), some.size(),
					LocalDateTime.ofInstant(some.get(0).at(), zone), names.apply(some.get(0).actor()),
					some.get(0).linkBy()))
			.toList();
	}

	/**
	 * One fact.
	 *
	 * @param what which kind
	 * @param at when it was recorded
	 * @param linkBy who had made the link, as named at the time
	 * @param actor in whose account
	 */
	public record Fact(TraceSubject what, Instant at, String linkBy, PersonId actor) {
	}

	/**
	 * Facts of one kind.
	 *
	 * @param what which kind, as the trace names it
	 * @param many how many
	 * @param latest when the latest was recorded, in the athlete's zone
	 * @param account in whose account
	 * @param linkBy who had made the link
	 */
	public record Line(String what, int many, LocalDateTime latest, String account, String linkBy) {
	}

}
