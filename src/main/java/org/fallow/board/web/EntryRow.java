package org.fallow.board.web;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

import org.fallow.access.TraceSubject;
import org.fallow.entry.ContextTag;
import org.fallow.entry.Feels;
import org.fallow.entry.MeasuredAgain;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Symptom;
import org.fallow.illness.EnteredAfterLink;
import org.fallow.illness.StoredEvent;
import org.fallow.illness.core.IllnessEvent;
import org.jspecify.annotations.Nullable;

/**
 * A morning entry as a coach reads it.
 *
 * @param day the morning
 * @param method how measured
 * @param posture how placed
 * @param rhr bpm
 * @param rmssd ms
 * @param symptoms ticked
 * @param otherSymptom free text
 * @param fever fever in the last 24 hours
 * @param feels how the athlete feels
 * @param tags context
 * @param note words
 * @param corrected whether it was corrected
 * @param linkBy who had made a link to the account before it was entered there; absent
 * for most
 * @param again what was measured again beside it, in the order recorded
 */
public record EntryRow(LocalDate day, @Nullable Method method, @Nullable Posture posture, @Nullable Double rhr,
		@Nullable Double rmssd, List<Felt> symptoms, @Nullable String otherSymptom, boolean fever,
		@Nullable Feels feels, List<ContextTag> tags, @Nullable String note, boolean corrected, @Nullable String linkBy,
		List<MeasuredAgain> again) {

	/**
	 * The view of an entry.
	 * @param stored the entry
	 * @param events what people said, slips among it
	 * @param after what was entered after somebody else's link
	 * @param again what was measured again
	 */
	static EntryRow of(StoredMorning stored, List<StoredEvent> events, EnteredAfterLink after,
			List<MeasuredAgain> again) {
		MorningEntry entry = stored.entry();
		String other = entry.symptoms()
			.stream()
			.map(ReportedSymptom::text)
			.filter(Objects::nonNull)
			.findFirst()
			.orElse(null);
		List<Felt> felt = entry.symptoms()
			.stream()
			.filter((s) -> !s.symptom().isInOwnWords() || s.text() == null)
			.map((s) -> new Felt(s.symptom(), s.symptom().isRedFlag() ? null : s.severity(), isSlip(entry, s, events)))
			.toList();
		return new EntryRow(entry.day(), entry.method(), entry.posture(), entry.rhrBpm(), entry.rmssdMs(), felt, other,
				entry.feverLast24h(), entry.feels(), entry.tags(), entry.note(), stored.revision() > 1,
				after.by(TraceSubject.MORNING, entry.recorded().at()),
				again.stream().filter((one) -> one.day().equals(entry.day())).toList());
	}

	/** Whether a tick of this very revision was told to be a slip. */
	private static boolean isSlip(MorningEntry entry, ReportedSymptom felt, List<StoredEvent> events) {
		return events.stream()
			.anyMatch((stored) -> stored.event() instanceof IllnessEvent.Slip slip && slip.day().equals(entry.day())
					&& slip.tick().symptom() == felt.symptom() && slip.recorded().compareTo(entry.recorded()) > 0);
	}

	/**
	 * A ticked symptom.
	 *
	 * @param code which
	 * @param severity how bad; absent for red flags
	 * @param slip whether it was told to be a slip
	 */
	public record Felt(Symptom code, @Nullable Severity severity, boolean slip) {
	}

}
