package org.fallow.board.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

import org.fallow.entry.ContextTag;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.illness.AssessedDay;
import org.fallow.illness.view.StageView;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The chart's numbers of one day, as a table row.
 *
 * @param day the day
 * @param rhr bpm
 * @param rhrLower bpm
 * @param rhrUpper bpm
 * @param rhrMedian3 bpm
 * @param rmssd ms
 * @param rmssdLower ms
 * @param rmssdUpper ms
 * @param rmssdMedian3 ms
 * @param stage ill or the stage; absent without an episode
 * @param method how it was taken; absent without a measurement
 * @param tags circumstances; may be empty
 */
public record ChartRow(LocalDate day, @Nullable Double rhr, @Nullable Double rhrLower, @Nullable Double rhrUpper,
		@Nullable Double rhrMedian3, @Nullable Double rmssd, @Nullable Double rmssdLower, @Nullable Double rmssdUpper,
		@Nullable Double rmssdMedian3, @Nullable Message stage, @Nullable Method method, List<ContextTag> tags) {

	static List<ChartRow> of(List<AssessedDay> assessed, Map<LocalDate, MorningEntry> entries, ChartData chart) {
		List<ChartRow> rows = new ArrayList<>();
		ChartData.Lines rhr = chart.rhr();
		ChartData.Lines rmssd = chart.rmssd();
		for (int i = 0; i < assessed.size(); i++) {
			MorningEntry entry = entries.get(assessed.get(i).day());
			rows.add(new ChartRow(assessed.get(i).day(), rhr.values().get(i), rhr.lower().get(i), rhr.upper().get(i),
					rhr.median3().get(i), (rmssd == null) ? null : rmssd.values().get(i),
					(rmssd == null) ? null : rmssd.lower().get(i), (rmssd == null) ? null : rmssd.upper().get(i),
					(rmssd == null) ? null : rmssd.median3().get(i), StageView.shortName(assessed.get(i)),
					(entry == null) ? null : entry.method(), (entry == null) ? List.of() : entry.tags()));
		}
		Collections.reverse(rows);
		return rows;
	}

}
