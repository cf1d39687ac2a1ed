package org.fallow.exchange.imports;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/**
 * Who sent a file. Its rows and problems name people only as the file does; rows go when
 * the import ends, problems with it.
 */
@Component
class ImportData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(PersonalTable.through("import_row", "job_id", "import_job", Nature.RECORD),
				PersonalTable.through("import_person", "job_id", "import_job", Nature.RECORD),
				PersonalTable.through("import_problem", "job_id", "import_job", Nature.RECORD),
				PersonalTable.of("import_job", "actor_id", Nature.RECORD));
	}

}
