package org.fallow.account;

import java.util.Locale;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.MessageSource;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Prints the set-up code to the log at a start without any account.
 */
@Component
class SetUpCodeLog {

	private static final Logger log = LoggerFactory.getLogger(SetUpCodeLog.class);

	private final Accounts accounts;

	private final SetUpCode code;

	private final MessageSource messages;

	SetUpCodeLog(Accounts accounts, SetUpCode code, MessageSource messages) {
		this.accounts = accounts;
		this.code = code;
		this.messages = messages;
	}

	@EventListener(ApplicationReadyEvent.class)
	void print() {
		if (this.accounts.none()) {
			log.warn(this.messages.getMessage("set-up.log", new Object[] { this.code.code() }, Locale.ENGLISH));
		}
	}

}
