package org.fallow.team;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.fallow.access.PersonId;
import org.jspecify.annotations.Nullable;

/**
 * All members of a team, to find out whom a file or a coach means: those who share and
 * those who do not, and of those who left the codes.
 */
public final class Roster {

	private static final int CODE_DIGITS = 8;

	private final Set<PersonId> ids = new LinkedHashSet<>();

	private final Map<String, Set<Entry>> byCode = new HashMap<>();

	private final Map<String, Set<Entry>> byName = new HashMap<>();

	private final Map<String, Set<Entry>> byBareName = new HashMap<>();

	private final NearNames<Entry> near = new NearNames<>();

	/**
	 * Makes it of its members.
	 * @param members the members, each once
	 */
	public Roster(Collection<Entry> members) {
		members.forEach(this::add);
	}

	/**
	 * Adds a member.
	 * @param member who
	 */
	public void add(Entry member) {
		this.ids.add(member.id());
		put(this.byCode, NameKey.of(member.code()).text(), member);
		put(this.byCode, lastDigits(member.id()), member);
		NameKey key = NameKey.of(member.name());
		if (!key.isEmpty()) {
			put(this.byName, key.text(), member);
			put(this.byBareName, key.bare(), member);
			this.near.add(member.name(), member);
		}
	}

	/**
	 * Makes another entry of a member's known, that was made one with the member's own:
	 * its name and codes mean the member.
	 * @param member who
	 * @param other the other entry, which is no member by itself
	 * @param inTeam whether it was a member of the team
	 */
	public void also(Entry member, Entry other, boolean inTeam) {
		if (inTeam) {
			this.ids.add(other.id());
		}
		put(this.byCode, NameKey.of(other.code()).text(), member);
		put(this.byCode, lastDigits(other.id()), member);
		NameKey key = NameKey.of(other.name());
		if (!key.isEmpty()) {
			put(this.byName, key.text(), member);
			put(this.byBareName, key.bare(), member);
			this.near.add(other.name(), member);
		}
	}

	private static void put(Map<String, Set<Entry>> map, String key, Entry member) {
		map.computeIfAbsent(key, (k) -> new LinkedHashSet<>()).add(member);
	}

	/**
	 * How many members it has.
	 * @return the number, of those who left too
	 */
	public int size() {
		return this.ids.size();
	}

	/**
	 * Whom a code or name means. A name is told apart by its accents only where the team
	 * has it with these; whatever more than one person may be called means nobody of
	 * them.
	 * @param codeOrName as a file or a coach has it
	 * @return who
	 */
	public NameMatch match(String codeOrName) {
		NameKey key = NameKey.of(codeOrName);
		if (key.isEmpty()) {
			return new NameMatch.Nobody();
		}
		Set<Entry> meant = new LinkedHashSet<>(this.byCode.getOrDefault(key.text(), Set.of()));
		meant.addAll(this.byName.getOrDefault(key.text(), this.byBareName.getOrDefault(key.bare(), Set.of())));
		List<Entry> open = meant.stream().filter(Entry::open).toList();
		if (open.isEmpty()) {
			return meant.isEmpty() ? new NameMatch.Nobody() : new NameMatch.Closed();
		}
		return (meant.size() == 1) ? new NameMatch.One(open.get(0)) : new NameMatch.Several(open);
	}

	/**
	 * Who of the members in the team is named nearly so.
	 * @param name a name
	 * @return members, who share or not; empty if none is
	 */
	public List<Entry> near(String name) {
		return new ArrayList<>(this.near.near(name));
	}

	/** The code that always names a member of a team, made of the id. */
	static String lastDigits(PersonId id) {
		String digits = id.value().toString();
		return "#" + digits.substring(digits.length() - CODE_DIGITS);
	}

	/**
	 * A member of a team.
	 *
	 * @param id who
	 * @param name the name; empty for one who left
	 * @param code what files call the member: the code given, or one made of the id
	 * @param group the name of the group; absent without one
	 * @param open whether the member is in the team and shares
	 */
	public record Entry(PersonId id, String name, String code, @Nullable String group, boolean open) {

		/**
		 * A member with a code, whether one was given or not.
		 * @param id who
		 * @param name the name; empty for one who left
		 * @param given the code given; absent if none
		 * @param group the name of the group; absent without one
		 * @param open whether the member is in the team and shares
		 * @return the member
		 */
		public static Entry of(PersonId id, String name, @Nullable String given, @Nullable String group, boolean open) {
			boolean isCode = given != null && !NameKey.of(given).equals(NameKey.of(name));
			return new Entry(id, name, (given != null && isCode) ? given : lastDigits(id), group, open);
		}

		/**
		 * Who it is, for somebody who has to choose.
		 * @return code, name and group
		 */
		public String told() {
			return this.code + " (" + this.name + ((this.group == null) ? "" : ", " + this.group) + ")";
		}

	}

}
