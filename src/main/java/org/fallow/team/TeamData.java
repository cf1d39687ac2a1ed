package org.fallow.team;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/**
 * Who somebody is, where they train, what they are charged with, and to what they agreed.
 */
@Component
class TeamData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("invitation", "person_id", Nature.RECORD),
				PersonalTable.of("consent", "athlete_id", Nature.RECORD),
				PersonalTable.through("post_group", "post_id", "post", Nature.RECORD),
				PersonalTable.of("post", "person_id", Nature.RECORD),
				PersonalTable.of("membership", "person_id", Nature.OWN), PersonalTable.of("person", "id", Nature.OWN));
	}

}
