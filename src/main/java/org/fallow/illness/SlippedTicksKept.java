package org.fallow.illness;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

import org.fallow.entry.SlippedTicks;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.Tick;
import org.fallow.illness.core.TicksOfADay;
import org.fallow.illness.core.Timeline;
import org.fallow.team.Athlete;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Answers the forms from the slips that are kept. */
@Component
class SlippedTicksKept implements SlippedTicks {

	private final EventRows events;

	private final Replays replays;

	SlippedTicksKept(EventRows events, Replays replays) {
		this.events = events;
		this.replays = replays;
	}

	@Override
	@Transactional(readOnly = true)
	public Set<String> of(Athlete athlete, LocalDate day, @Nullable String session) {
		List<Tick> told = this.events.of(athlete.id())
			.stream()
			.filter((stored) -> stored.event() instanceof IllnessEvent.Slip && stored.event().day().equals(day))
			.map((stored) -> ((IllnessEvent.Slip) stored.event()).tick())
			.filter((tick) -> Objects.equals(tick.session(), session))
			.toList();
		if (told.isEmpty()) {
			return Set.of();
		}
		Timeline known = this.replays.lately(athlete, day);
		return told.stream()
			.filter((tick) -> TicksOfADay.slip(known, tick, day) != null)
			.map(Tick::code)
			.collect(Collectors.toSet());
	}

}
