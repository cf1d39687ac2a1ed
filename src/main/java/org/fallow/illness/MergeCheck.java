package org.fallow.illness;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.access.PersonId;
import org.fallow.entry.Words;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Posts;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/**
 * What stands against making two entries one, or parting them.
 */
@Component
class MergeCheck {

	private final MergeRows rows;

	private final AthleteAccess access;

	private final Squad squad;

	private final Posts posts;

	MergeCheck(MergeRows rows, AthleteAccess access, Squad squad, Posts posts) {
		this.rows = rows;
		this.access = access;
		this.squad = squad;
		this.posts = posts;
	}

	/** What stands against a merge. */
	List<Problem> before(PersonId kept, PersonId other, String reason) {
		List<Problem> problems = new ArrayList<>();
		Words.require(problems, "reason", reason);
		if (kept.equals(other)) {
			problems.add(Problem.of("other", "merge.same"));
			return problems;
		}
		if (this.rows.partOf(other).isPresent()) {
			problems.add(Problem.of("other", "merge.part-already"));
			return problems;
		}
		Athlete second = this.access.fullyCoached(other.value());
		if (this.access.person().equals(kept) || this.access.person().equals(other)) {
			problems.add(Problem.of("other", "merge.own"));
		}
		if (!this.posts.of(other).isEmpty()) {
			problems.add(Problem.of("other", "merge.post", second.name()));
		}
		if (isYounger(second.birthDate(), this.squad.athlete(kept).birthDate())) {
			problems.add(Problem.of("other", "merge.younger"));
		}
		return problems;
	}

	/** The younger of two birth dates asks for more; it must not be lost. */
	private static boolean isYounger(@Nullable LocalDate one, @Nullable LocalDate other) {
		return one != null && other != null && one.isAfter(other);
	}

	/** What stands against parting; a merge that is not there, or undone, counts, too. */
	List<Problem> undo(@Nullable PersonMerge merge, Instant now) {
		if (merge == null || !merge.stands()) {
			return List.of(Problem.of("merge", "merge.gone"));
		}
		if (!now.isBefore(merge.undoableUntil())) {
			return List.of(Problem.of("merge", "merge.undo.late"));
		}
		if (this.rows.partOf(merge.kept()).isPresent()
				|| this.rows.latestInto(merge.kept()).filter((last) -> !last.id().equals(merge.id())).isPresent()) {
			return List.of(Problem.of("merge", "merge.undo.order"));
		}
		return this.rows.mayReturn(merge) ? List.of() : List.of(Problem.of("merge", "merge.undo.cover"));
	}

}
