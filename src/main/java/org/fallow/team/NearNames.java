package org.fallow.team;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Finds names that are nearly the same: equal but for accents or punctuation, one letter
 * more, less, other or swapped with its neighbour, the same words in another order, or
 * all words of one among those of the other. A name with a digit is a code and only near
 * to itself. Ours; no source.
 *
 * @param <T> what a name stands for
 */
final class NearNames<T> {

	/** Letters of the longer of two names below which one letter makes another name. */
	private static final int SHORTEST = 4;

	private final Map<String, List<Named<T>>> index = new HashMap<>();

	/**
	 * Adds a name.
	 * @param name the name
	 * @param whom whose
	 */
	void add(String name, T whom) {
		Named<T> named = new Named<>(Words.of(name), whom);
		named.words().marks().forEach((mark) -> this.index.computeIfAbsent(mark, (m) -> new ArrayList<>()).add(named));
	}

	/**
	 * Finds who is named nearly so.
	 * @param name the name
	 * @return in the order they were added, the equal ones among them
	 */
	List<T> near(String name) {
		Words words = Words.of(name);
		Set<Named<T>> found = new LinkedHashSet<>();
		words.marks()
			.forEach((mark) -> this.index.getOrDefault(mark, List.of())
				.stream()
				.filter((one) -> words.isNear(one.words()))
				.forEach(found::add));
		return found.stream().map(Named::whom).distinct().toList();
	}

	private record Named<T>(Words words, T whom) {
	}

	/**
	 * The words of a name, bare, and all of them joined.
	 *
	 * @param all in their order
	 * @param joined without anything between them
	 */
	private record Words(List<String> all, String joined) {

		static Words of(String name) {
			List<String> words = Arrays
				.stream(NameKey.of(name).bare().replace("'", "").split("[^\\p{L}\\p{M}\\p{Nd}]+"))
				.filter((word) -> !word.isEmpty())
				.toList();
			return new Words(words, String.join("", words));
		}

		/** Two names that are near share one of these, at least. */
		Set<String> marks() {
			Set<String> marks = new LinkedHashSet<>();
			if (this.joined.isEmpty()) {
				return marks;
			}
			marks.add("all " + sorted());
			if (isCode()) {
				return marks;
			}
			marks.add(this.joined);
			for (int i = 0; i < this.joined.length(); i++) {
				marks.add(this.joined.substring(0, i) + this.joined.substring(i + 1));
			}
			for (int i = 0; i < this.all.size(); i++) {
				for (int j = i + 1; j < this.all.size(); j++) {
					marks.add("two " + new TreeSet<>(List.of(this.all.get(i), this.all.get(j))));
				}
			}
			return marks;
		}

		boolean isNear(Words other) {
			if (sorted().equals(other.sorted())) {
				return true;
			}
			return !isCode() && !other.isCode()
					&& (isOneLetterFrom(other.joined()) || holds(other) || other.holds(this));
		}

		private boolean holds(Words other) {
			return other.all().size() > 1 && this.all.containsAll(other.all());
		}

		private boolean isCode() {
			return this.joined.codePoints().anyMatch(Character::isDigit);
		}

		private List<String> sorted() {
			return this.all.stream().sorted().toList();
		}

		private boolean isOneLetterFrom(String other) {
			String longer = (this.joined.length() >= other.length()) ? this.joined : other;
			String shorter = (longer == this.joined) ? other : this.joined;
			if (longer.length() < SHORTEST || longer.length() - shorter.length() > 1) {
				return false;
			}
			int same = 0;
			while (same < shorter.length() && longer.charAt(same) == shorter.charAt(same)) {
				same++;
			}
			if (longer.length() > shorter.length()) {
				return longer.substring(same + 1).equals(shorter.substring(same));
			}
			return same == longer.length() || longer.substring(same + 1).equals(shorter.substring(same + 1))
					|| (same + 1 < longer.length() && longer.charAt(same) == shorter.charAt(same + 1)
							&& longer.charAt(same + 1) == shorter.charAt(same)
							&& longer.substring(same + 2).equals(shorter.substring(same + 2)));
		}

	}

}
