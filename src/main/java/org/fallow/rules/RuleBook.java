package org.fallow.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.jspecify.annotations.Nullable;

/**
 * The rule sets of an athlete's home team and the days they take effect.
 *
 * @param entries in the order they take effect, at least one
 */
public record RuleBook(List<Entry> entries) {

	/**
	 * Copies the entries and checks their order.
	 * @throws IllegalArgumentException if there is none or they are out of order
	 */
	public RuleBook {
		entries = List.copyOf(entries);
		if (entries.isEmpty()) {
			throw new IllegalArgumentException("a rule book needs a rule set");
		}
		for (int i = 1; i < entries.size(); i++) {
			if (entries.get(i).from().isBefore(entries.get(i - 1).from())) {
				throw new IllegalArgumentException("rule sets must be in the order they take effect");
			}
		}
	}

	/**
	 * A book of one rule set, in effect from ever.
	 * @param rules the rule set
	 * @return the book
	 */
	public static RuleBook of(RuleSet rules) {
		return new RuleBook(List.of(new Entry(LocalDate.EPOCH, RuleHash.of(rules), rules)));
	}

	/**
	 * The rule set in effect on a day; before the first one's day, the first.
	 * @param day the day
	 * @return its entry
	 */
	public Entry on(LocalDate day) {
		Entry found = this.entries.get(0);
		for (Entry entry : this.entries) {
			if (!entry.from().isAfter(day)) {
				found = entry;
			}
		}
		return found;
	}

	/**
	 * The rule set of a hash, if the book has it.
	 * @param hash content hash
	 * @return its entry
	 */
	public Optional<Entry> find(String hash) {
		for (Entry entry : this.entries) {
			if (entry.hash().equals(hash)) {
				return Optional.of(entry);
			}
		}
		return Optional.empty();
	}

	/**
	 * The rule set of a hash.
	 * @param hash content hash
	 * @return its entry
	 * @throws IllegalArgumentException if the book has none of this hash
	 */
	public Entry ofHash(String hash) {
		return find(hash).orElseThrow(() -> new IllegalArgumentException("no rule set of hash " + hash));
	}

	/**
	 * The rule set an episode goes on under that opened under one: its own, or from its
	 * day on what its own became, where that was of the first rule text.
	 * @param hash content hash of its own
	 * @param day the day
	 * @return its entry
	 * @throws IllegalArgumentException if the book has none of this hash
	 */
	public Entry goesOn(String hash, LocalDate day) {
		Entry own = ofHash(hash);
		for (Entry entry : this.entries) {
			if (hash.equals(entry.insteadOf()) && !entry.from().isAfter(day)) {
				return entry;
			}
		}
		return own;
	}

	/**
	 * A rule set with the day it takes effect.
	 *
	 * @param from first day
	 * @param hash content hash
	 * @param rules the rule set
	 * @param insteadOf hash of the one of the first rule text that goes on as this one;
	 * absent for all others
	 */
	public record Entry(LocalDate from, String hash, RuleSet rules, @Nullable String insteadOf) {

		/**
		 * One that is adopted.
		 * @param from first day
		 * @param hash content hash
		 * @param rules the rule set
		 */
		public Entry(LocalDate from, String hash, RuleSet rules) {
			this(from, hash, rules, null);
		}

	}

}
