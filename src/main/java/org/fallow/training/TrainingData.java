package org.fallow.training;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/** What somebody said of their training, and who wrote programmes. */
@Component
class TrainingData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.of("training_statement", "athlete_id", Nature.OWN),
				PersonalTable.of("race_word", "athlete_id", Nature.OWN),
				PersonalTable.of("programme_week", "made_by", Nature.RECORD));
	}

}
