package org.fallow.entry;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** What athletes enter. */
@Component
class EntryData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("morning_symptom", "athlete_id", Nature.OWN),
				PersonalTable.of("morning_entry", "athlete_id", Nature.OWN),
				PersonalTable.of("session_log", "athlete_id", Nature.OWN),
				PersonalTable.of("absence", "athlete_id", Nature.OWN),
				PersonalTable.of("medicine_change", "athlete_id", Nature.OWN),
				PersonalTable.of("known_symptom", "athlete_id", Nature.OWN),
				PersonalTable.of("health_condition", "athlete_id", Nature.OWN),
				PersonalTable.of("vaccination", "athlete_id", Nature.OWN),
				PersonalTable.of("device_change", "athlete_id", Nature.OWN),
				PersonalTable.of("measured_again", "athlete_id", Nature.OWN));
	}

}
