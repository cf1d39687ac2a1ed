package org.fallow.access;

import java.util.Optional;
import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;

import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * What work is done for that no person's leave covers. Each transaction tells the
 * database, whose walls open for it where they must.
 */
public enum Purpose {

	/** Finding out who somebody is: passwords, passkeys, links that set a password. */
	SIGN_IN,

	/** Setting Fallow up, loading the demo, preparing tests. */
	OPERATION;

	private static final ThreadLocal<@Nullable Purpose> PRESENT = new ThreadLocal<>();

	/**
	 * Works for this purpose, in this thread and until the work returns, and hands back
	 * what came of it. It goes before an outer purpose and leaves the present person as
	 * it is.
	 * @param <T> what the work yields
	 * @param work what to do
	 * @return what the work yields
	 * @throws IllegalStateException within a transaction, which was already begun without
	 * this purpose
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
			restore(before);
		}
	}

	/**
	 * Works for this purpose, in this thread and until the work returns.
	 * @param work what to do
	 * @throws IllegalStateException within a transaction
	 */
	public void run(Runnable work) {
		call(() -> {
			work.run();
			return this;
		});
	}

	/**
	 * What the present work is for.
	 * @return the purpose, empty for a person's own work
	 */
	static Optional<Purpose> present() {
		return Optional.ofNullable(PRESENT.get());
	}

	private static void restore(@Nullable Purpose before) {
		if (before == null) {
			PRESENT.remove();
		}
		else {
			PRESENT.set(before);
		}
	}

}
