package org.fallow.account;

import java.util.List;

import org.fallow.access.PersonalData;
import org.fallow.access.PersonalTable;
import org.fallow.access.PersonalTable.Nature;

import org.springframework.stereotype.Component;

/**
 * What somebody signs in with. Sessions are not here: they name the account only within
 * what the session library keeps, end by time, and are ended with the account.
 */
@Component
class AccountData implements PersonalData {

	@Override
	public List<PersonalTable> tables() {
		return List.of(
				PersonalTable.through("user_credentials", "user_entity_user_id", "user_entities", Nature.SIGN_IN),
				PersonalTable.of("user_entities", "person_id", Nature.SIGN_IN),
				PersonalTable.of("password_link", "person_id", Nature.SIGN_IN),
				PersonalTable.of("account", "person_id", Nature.SIGN_IN));
	}

}
