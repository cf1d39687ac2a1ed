package org.fallow.entry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The symptoms of an athlete's mornings, read with the other facts: few mornings have
 * any, so that joining them to each morning costs more than the mornings themselves. They
 * are read after the mornings, so that no morning is without a symptom it has.
 */
public final class FeltSymptoms {

	private final Map<Revision, List<ReportedSymptom>> felt = new HashMap<>();

	/**
	 * Takes in a symptom if the row is one.
	 * @param row a row of {@link FactRows#SELECT}; those of one morning come in their
	 * order
	 * @return whether it was one
	 * @throws SQLException from the driver
	 */
	public boolean add(ResultSet row) throws SQLException {
		if (row.getInt("kind") != FactRows.SYMPTOM) {
			return false;
		}
		this.felt
			.computeIfAbsent(new Revision(Columns.day(row, "day"), row.getInt("revision")), (key) -> new ArrayList<>())
			.add(new ReportedSymptom(Symptom.valueOf(row.getString("code")), Severity.valueOf(row.getString("detail")),
					row.getString("words")));
		return true;
	}

	/**
	 * Puts them to the mornings they belong to.
	 * @param mornings mornings as {@link Facts#mornings} reads them, read before
	 * @return the mornings with their symptoms, in the same order
	 */
	public List<MorningEntry> feltOn(List<RevisedMorning> mornings) {
		List<MorningEntry> entries = new ArrayList<>(mornings.size());
		for (RevisedMorning morning : mornings) {
			MorningEntry entry = morning.entry();
			List<ReportedSymptom> symptoms = this.felt.isEmpty() ? null
					: this.felt.get(new Revision(entry.day(), morning.revision()));
			entries.add((symptoms == null) ? entry : entry.with(symptoms));
		}
		return entries;
	}

	private record Revision(LocalDate day, int revision) {
	}

}
