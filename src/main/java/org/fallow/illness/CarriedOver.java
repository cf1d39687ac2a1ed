package org.fallow.illness;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.entry.Columns;
import org.fallow.entry.Fact;
import org.fallow.entry.Recorded;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.State;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * What was carried over when entries were made one, as facts for the fold: a hold or a
 * ceiling acts as if a coach had set it that moment, an episode stands at least as it
 * stood. A clinician's ceiling ends with that clinician's last day, or when a clinician's
 * next word takes effect.
 */
final class CarriedOver {

	private final List<Row> rows = new ArrayList<>();

	private @Nullable Instant merged;

	/** Takes in a row of {@link CarriedRows#FACTS}; answers whether it is one. */
	boolean add(ResultSet row) throws SQLException {
		int kind = row.getInt("kind");
		if (kind == CarriedRows.MERGED) {
			Instant at = Columns.recorded(row).at();
			this.merged = (this.merged == null || at.isAfter(this.merged)) ? at : this.merged;
		}
		else if (kind == CarriedRows.KIND) {
			this.rows.add(new Row(row.getString("code"), Columns.day(row, "day"), Columns.dayOrNull(row, "until_day"),
					Columns.recorded(row), Columns.nullable(row, "detail", Clearance.class), row.getString("words")));
		}
		return kind == CarriedRows.MERGED || kind == CarriedRows.KIND;
	}

	/** When the last of the entries was made part of the athlete; absent if none was. */
	@Nullable Instant merged() {
		return this.merged;
	}

	/** The facts and what was carried over. */
	List<Fact> with(List<Fact> facts) {
		if (this.rows.isEmpty()) {
			return facts;
		}
		List<Fact> all = new ArrayList<>(facts);
		for (Row row : this.rows) {
			Fact carried = row.fact(facts);
			if (carried != null) {
				all.add(carried);
			}
		}
		return all;
	}

	private record Row(String kind, LocalDate day, @Nullable LocalDate until, Recorded recorded,
			@Nullable Clearance ceiling, @Nullable String words) {

		@Nullable Fact fact(List<Fact> facts) {
			return switch (this.kind) {
				case "HOLD" -> new IllnessEvent.Hold(this.day, this.recorded, some(this.words));
				case "EPISODE" -> episode();
				case "SLIP" -> new IllnessEvent.CarriedSlip(this.day, this.recorded);
				case "REPORT" -> new IllnessEvent.CarriedReport(this.day, this.recorded);
				case "DAY_CEILING" -> ceiling(some(this.until));
				case "CLINICIAN_CEILING" -> ceiling(beforeNextWord(some(this.until), facts));
				default -> throw new IllegalStateException("carried over: " + this.kind);
			};
		}

		/** What a later version cannot read holds back until a clinician's word. */
		private Fact episode() {
			State state = StateJson.read(some(this.words));
			Episode episode = (state == null) ? null : state.episode();
			return (episode == null) ? new IllnessEvent.Hold(this.day, this.recorded, "EPISODE")
					: new IllnessEvent.Carried(this.day, this.recorded, episode);
		}

		private @Nullable Fact ceiling(LocalDate last) {
			return last.isBefore(this.day) ? null
					: new IllnessEvent.Stricter(this.day, last, this.recorded, some(this.ceiling), this.kind);
		}

		private LocalDate beforeNextWord(LocalDate last, List<Fact> facts) {
			LocalDate end = last;
			for (Fact fact : facts) {
				boolean later = fact instanceof IllnessEvent.Cleared
						&& fact.recorded().at().isAfter(this.recorded.at());
				if (later && fact.day().minusDays(1).isBefore(end)) {
					end = fact.day().minusDays(1);
				}
			}
			return end;
		}

		private static <T> T some(@Nullable T value) {
			if (value == null) {
				throw new IllegalStateException("a carried row lacks a value");
			}
			return value;
		}

	}

}
