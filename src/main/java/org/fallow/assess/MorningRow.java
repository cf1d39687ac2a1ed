package org.fallow.assess;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

import org.fallow.entry.MorningEntry;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Recorded;

/**
 * Facts from rows. Within a day mornings count as recorded at 6 and events at noon, each
 * in the order of its file.
 */
final class MorningRow {

	private static final int MORNING = 6;

	private MorningRow() {
	}

	static Recorded recorded(LocalDate on, int hour, int order) {
		Instant at = on.atTime(hour, 0).plusNanos(order * 1000L).toInstant(ZoneOffset.UTC);
		return new Recorded(at, on);
	}

	/**
	 * A morning as a fact.
	 * @param morning what the row says
	 * @param asksEating whether the file has a column for eating normally; one that does
	 * not have it cannot say no, and a morning with stomach symptoms shuts the gate by
	 * itself
	 * @param order how many facts of the person stand before it
	 * @return the fact, known on the day the row says or else on its own
	 */
	static MorningEntry fact(NewMorning morning, boolean asksEating, int order) {
		LocalDate on = recordedOn(morning);
		return new MorningEntry(morning.day(), recorded(on, MORNING, order), morning.method(), morning.posture(),
				morning.rhrBpm(), morning.rmssdMs(), morning.unsure(), morning.temperatureC(), morning.symptoms(),
				morning.feverLast24h(), morning.feverMedicine(), asksEating ? morning.eatingNormally() : Boolean.TRUE,
				morning.feels(), morning.soreness(), morning.tags(), morning.note(), morning.meanwhile());
	}

	static LocalDate recordedOn(NewMorning morning) {
		return (morning.recordedOn() == null) ? morning.day() : morning.recordedOn();
	}

}
