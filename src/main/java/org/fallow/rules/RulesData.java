package org.fallow.rules;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** Who wrote a team's rules. */
@Component
class RulesData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("rule_draft", "started_by", Nature.RECORD),
				PersonalTable.of("rule_set", "written_by", Nature.RECORD));
	}

}
