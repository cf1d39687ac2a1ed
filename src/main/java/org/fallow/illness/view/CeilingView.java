package org.fallow.illness.view;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Function;

import org.fallow.access.PersonId;
import org.fallow.illness.StoredEvent;
import org.fallow.illness.core.IllnessEvent.Stricter;
import org.fallow.illness.core.Spoken;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * A coach's ceiling as pages show it.
 *
 * @param key names it
 * @param ceiling the most it allows
 * @param from first day
 * @param until last day, inclusive
 * @param reason why
 * @param by who set it
 * @param word the clinician's or guardian's word it names; absent where it is the coach's
 * own
 */
public record CeilingView(String key, Clearance ceiling, LocalDate from, LocalDate until, String reason, String by,
		@Nullable Spoken word) {

	/**
	 * Ceilings as pages show them.
	 * @param stored the ceilings
	 * @param names the name of whoever set one
	 * @return in the same order
	 */
	public static List<CeilingView> all(List<StoredEvent> stored, Function<PersonId, String> names) {
		return stored.stream()
			.filter((one) -> one.event() instanceof Stricter)
			.map((one) -> of((Stricter) one.event(), names.apply(one.actor())))
			.toList();
	}

	private static CeilingView of(Stricter one, String by) {
		return new CeilingView(one.key(), one.ceiling(), one.day(), one.until(), one.reason(), by, one.word());
	}

}
