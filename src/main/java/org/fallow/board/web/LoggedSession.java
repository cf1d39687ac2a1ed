package org.fallow.board.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

import org.fallow.entry.Activity;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.illness.StoredEvent;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.Tick;
import org.fallow.illness.view.Said;
import org.fallow.rules.Intensity;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A logged session with all that was told of it.
 *
 * @param key names the session
 * @param day the day
 * @param activity run or other
 * @param minutes duration; absent when not stated
 * @param effort session RPE, 0 to 10, as a decimal; absent when not stated
 * @param intensity highest done; absent when not stated
 * @param after what was noticed, ready to be said; what was told to be a slip says so
 * @param redFlag whether a red flag is among it
 * @param note the athlete's words; absent when none
 * @param recorded when it was logged, in the athlete's zone
 * @param waits whether it came in after the morning's entry, so that a gate counts it
 * from the next morning on
 * @param linkBy who had made a link to the account before it was logged there; absent for
 * most
 */
public record LoggedSession(String key, LocalDate day, Activity activity, @Nullable Integer minutes,
		@Nullable String effort, @Nullable Intensity intensity, List<Message> after, boolean redFlag,
		@Nullable String note, LocalDateTime recorded, boolean waits, @Nullable String linkBy) {

	/**
	 * The view of a session.
	 * @param log the session
	 * @param events what people said, slips among it
	 * @param entry when the morning's entry of the present day became known; absent
	 * without one
	 * @param zone the athlete's
	 */
	static LoggedSession of(SessionLog log, List<StoredEvent> events, @Nullable Recorded entry, ZoneId zone) {
		Set<String> slips = slips(log, events);
		List<Message> after = log.after()
			.stream()
			.map((noticed) -> Said.of(slips.contains(noticed.name())
					? Message.of("athlete.sessions.slip", noticed.name()) : Message.of("after." + noticed.name())))
			.toList();
		boolean redFlag = log.after().stream().anyMatch((one) -> one.isRedFlag() && !slips.contains(one.name()));
		boolean waits = entry != null && log.day().equals(entry.on()) && log.recorded().compareTo(entry) > 0;
		return new LoggedSession(log.key(), log.day(), log.activity(), log.minutes(), effort(log), log.intensity(),
				after, redFlag, log.note(), LocalDateTime.ofInstant(log.recorded().at(), zone), waits, null);
	}

	LoggedSession after(@Nullable String link) {
		return new LoggedSession(this.key, this.day, this.activity, this.minutes, this.effort, this.intensity,
				this.after, this.redFlag, this.note, this.recorded, this.waits, link);
	}

	private static @Nullable String effort(SessionLog log) {
		Double rpe = log.rpe();
		return (rpe == null) ? null : new BigDecimal(rpe.toString()).stripTrailingZeros().toPlainString();
	}

	/** Ticks of this very revision that were slips. */
	private static Set<String> slips(SessionLog log, List<StoredEvent> events) {
		return events.stream()
			.filter((stored) -> stored.event() instanceof IllnessEvent.Slip)
			.map((stored) -> (IllnessEvent.Slip) stored.event())
			.filter((slip) -> Objects.equals(slip.tick().session(), log.key())
					&& slip.recorded().compareTo(log.recorded()) > 0)
			.map(IllnessEvent.Slip::tick)
			.map(Tick::code)
			.collect(Collectors.toSet());
	}

}
