package org.fallow.access;

import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;

import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * What work without a person, or before one is known, is done for. Row-level security
 * opens to each purpose only what it needs; health data is open to none.
 */
public enum Purpose {

	/** Finding out who wants to come in: accounts, passkeys, links. */
	SIGN_IN,
	/** Finding out whose calendar an address shows: addresses of calendars, no more. */
	CALENDAR,
	/**
	 * Setting Fallow up, the demo's start, jobs over everybody: people, teams, posts. It
	 * counts only while nobody is signed in.
	 */
	OPERATION;

	private static final ThreadLocal<@Nullable Purpose> PRESENT = new ThreadLocal<>();

	/**
	 * Works for this purpose, in this thread and until the work returns.
	 * @param <T> what the work yields
	 * @param work what to do; it begins its own transactions
	 * @return what the work yields
	 * @throws IllegalStateException within a transaction, which was already begun for
	 * something else
	 */
	public <T> T call(Supplier<T> work) {
		if (TransactionSynchronizationManager.isActualTransactionActive()) {
			throw new IllegalStateException("a transaction keeps the purpose it was begun for");
		}
		Purpose before = PRESENT.get();
		PRESENT.set(this);
		try {
			return work.get();
		}
		finally {
			if (before == null) {
				PRESENT.remove();
			}
			else {
				PRESENT.set(before);
			}
		}
	}

	/**
	 * Works for this purpose, where nothing comes of it.
	 * @param work what to do
	 */
	public void run(Runnable work) {
		call(() -> {
			work.run();
			return true;
		});
	}

	/** What the database is told: a name, or '' for none. */
	static String told(boolean somebody) {
		Purpose present = PRESENT.get();
		return (present == null || (present == OPERATION && somebody)) ? "" : present.name();
	}

}
