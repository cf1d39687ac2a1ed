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
 * any, so that joining them to each morning costs more than the mornings themselves.
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

	List<ReportedSymptom> of(LocalDate day, int revision) {
		return this.felt.isEmpty() ? List.of() : this.felt.getOrDefault(new Revision(day, revision), List.of());
	}

	private record Revision(LocalDate day, int revision) {
	}

}
