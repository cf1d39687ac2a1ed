package org.fallow.exchange.calendar;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** The address of somebody's calendar, and what was last sent to it. */
@Component
class CalendarData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("calendar_event", "athlete_id", Nature.COMPUTED),
				PersonalTable.of("calendar_feed", "person_id", Nature.SIGN_IN));
	}

}
