package org.fallow.entry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

import org.jspecify.annotations.Nullable;

/**
 * Mornings, and what is read after them: their symptoms and every other fact, of one
 * entry of an athlete or of several.
 */
public final class GatheredFacts {

	private final List<RevisedMorning> mornings;

	private final FeltSymptoms felt = new FeltSymptoms();

	private final List<Fact> others = new ArrayList<>();

	private final List<Integer> entries = new ArrayList<>();

	/**
	 * Begins with the mornings.
	 * @param mornings as {@link Facts#mornings} reads them
	 */
	public GatheredFacts(List<RevisedMorning> mornings) {
		this.mornings = mornings;
	}

	/**
	 * Takes in a symptom if the row is one.
	 * @param row a row of {@link FactRows#SELECT}
	 * @return whether it was one
	 * @throws SQLException from the driver
	 */
	public boolean isSymptom(ResultSet row) throws SQLException {
		return this.felt.add(row);
	}

	/**
	 * Takes in another fact.
	 * @param fact the fact
	 * @param revision as {@link SeveralEntries#REVISION} reads it
	 */
	public void add(Fact fact, int revision) {
		this.others.add(fact);
		this.entries.add(SeveralEntries.entry(revision));
	}

	/**
	 * All of them.
	 * @param merged when the last of several entries was made part of the athlete; absent
	 * where there is one
	 * @return mornings first
	 */
	public List<Fact> facts(@Nullable Instant merged) {
		List<Integer> of = this.mornings.stream().map((one) -> SeveralEntries.entry(one.revision())).toList();
		List<Fact> all = new ArrayList<>(SeveralEntries.mornings(this.felt.feltOn(this.mornings), of));
		all.addAll(SeveralEntries.others(this.others, this.entries, merged));
		return all;
	}

}
