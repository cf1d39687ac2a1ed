package org.fallow.exchange.imports;

import java.util.List;
import java.util.UUID;

import org.fallow.exchange.csv.ImportField;
import org.fallow.exchange.csv.RowProblem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.stereotype.Repository;

/**
 * The problems of imports. Every call needs a transaction.
 */
@Repository
class ImportProblems {

	private final JdbcTemplate jdbc;

	ImportProblems(JdbcTemplate jdbc) {
		this.jdbc = jdbc;
	}

	/** Adds problems; a job's are added by one thread at a time. */
	void add(ImportJob job, List<RowProblem> problems) {
		if (problems.isEmpty()) {
			return;
		}
		int[] number = { count(job.id()) };
		this.jdbc.batchUpdate("""
				insert into import_problem (job_id, number, line, column_name, value, reason, notice)
				values (?, ?, ?, ?, ?, ?, ?)""", problems, problems.size(), (statement, problem) -> {
			String value = problem.value();
			statement.setObject(1, job.id());
			statement.setInt(2, ++number[0]);
			statement.setLong(3, problem.line());
			statement.setString(4, column(job, problem.field()));
			statement.setString(5, (value == null) ? "" : value);
			statement.setString(6, MessageJson.write(problem.reason()));
			statement.setBoolean(7, problem.notice());
		});
	}

	private static @Nullable String column(ImportJob job, @Nullable ImportField field) {
		Choice choice = job.choice();
		if (field == null || choice == null) {
			return null;
		}
		Integer index = choice.mapping().columns().get(field);
		return (index == null) ? null : job.headers().get(index);
	}

	int count(UUID job) {
		Integer count = this.jdbc.queryForObject("select coalesce(max(number), 0) from import_problem where job_id = ?",
				Integer.class, job);
		return (count == null) ? 0 : count;
	}

	/** One page, by line. */
	List<ListedProblem> page(UUID job, int offset, int most) {
		return this.jdbc.query("""
				select line, column_name, value, reason, notice from import_problem
				where job_id = ? order by line, number limit ? offset ?""",
				(row, number) -> new ListedProblem(row.getLong(1), row.getString(2), row.getString(3),
						MessageJson.read(row.getString(4)), row.getBoolean(5)),
				job, most, offset);
	}

}
