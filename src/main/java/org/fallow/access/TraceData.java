package org.fallow.access;

import java.util.List;

import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** Who looked at or changed whose data. */
@Component
class TraceData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("access_trace", "athlete_id", Nature.RECORD));
	}

}
