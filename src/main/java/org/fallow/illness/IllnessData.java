package org.fallow.illness;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** What was reported and decided, and what is computed from it. */
@Component
class IllnessData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("person_merge_read", "person_id", Nature.OWN),
				PersonalTable.of("person_merge_undone", "actor_id", Nature.OWN),
				PersonalTable.of("carried_state", "athlete_id", Nature.COMPUTED),
				PersonalTable.of("replaced_day", "athlete_id", Nature.COMPUTED),
				PersonalTable.of("person_merge", "kept_id", Nature.OWN),
				PersonalTable.of("athlete_status", "athlete_id", Nature.COMPUTED),
				PersonalTable.of("stage_decision", "athlete_id", Nature.COMPUTED),
				PersonalTable.of("assessment", "athlete_id", Nature.COMPUTED),
				PersonalTable.of("illness_event", "athlete_id", Nature.OWN));
	}

}
