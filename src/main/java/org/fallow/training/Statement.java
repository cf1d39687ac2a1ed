package org.fallow.training;

import java.time.LocalDate;

import org.fallow.team.Role;
import org.jspecify.annotations.Nullable;

/**
 * What was said of an athlete's usual training, the latest of each.
 *
 * @param weekMinutes minutes usually run in a week; absent when never said
 * @param longMinutes minutes of the usual long run; absent likewise
 * @param volumeOn civil day the two were said on; absent likewise
 * @param volumeBy in which role; absent likewise
 * @param maximumBpm heart rate reached in a test or race, bpm; absent when never said
 */
public record Statement(@Nullable Integer weekMinutes, @Nullable Integer longMinutes, @Nullable LocalDate volumeOn,
		@Nullable Role volumeBy, @Nullable Integer maximumBpm) {

	/** Where nothing was ever said. */
	static final Statement NONE = new Statement(null, null, null, null, null);

}
