package org.fallow.account;

import java.util.Objects;
import java.util.function.Supplier;

import org.fallow.access.Purpose;

import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Reads and writes accounts, links and passkeys for somebody who is not known yet, or for
 * somebody else than the one who asks. Whoever calls has checked that this may be done.
 */
@Component
class SignInWork {

	private final TransactionTemplate transaction;

	SignInWork(PlatformTransactionManager transactions) {
		this.transaction = new TransactionTemplate(transactions);
	}

	/**
	 * Works in a transaction of the purpose SIGN_IN, or in the present transaction, whose
	 * own purpose then has to open the tables' walls.
	 */
	<T> T call(Supplier<T> work) {
		if (TransactionSynchronizationManager.isActualTransactionActive()) {
			return work.get();
		}
		return Purpose.SIGN_IN.call(() -> Objects.requireNonNull(this.transaction.execute((status) -> work.get())));
	}

	/** Works in a transaction that keeps the purpose the caller has chosen. */
	void together(Runnable work) {
		this.transaction.executeWithoutResult((status) -> work.run());
	}

	void run(Runnable work) {
		call(() -> {
			work.run();
			return true;
		});
	}

}
