package org.fallow.contact;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** What coaches noted of words with somebody, and the messages. */
@Component
class ContactData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("contact_mark", "athlete_id", Nature.OWN),
				PersonalTable.of("contact_message", "athlete_id", Nature.OWN));
	}

}
