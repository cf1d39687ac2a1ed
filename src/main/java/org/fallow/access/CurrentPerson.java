package org.fallow.access;

import java.util.Optional;
import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;

import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Who the present work is done for: the person a job was started as, else the signed-in
 * person of the request, else nobody. Row-level security sees the same person.
 */
@Component
public class CurrentPerson {

	private static final ThreadLocal<@Nullable PersonId> RUNNING_AS = new ThreadLocal<>();

	/**
	 * Who it is.
	 * @return the person, or empty for an anonymous request or a job that named nobody
	 */
	public Optional<PersonId> id() {
		PersonId runningAs = RUNNING_AS.get();
		return (runningAs != null) ? Optional.of(runningAs) : signedIn();
	}

	/**
	 * Who had made the link by which the password of the present sign-in had been set.
	 * @return the maker's name; empty for a sign-in by what only the person has, and for
	 * a job
	 */
	Optional<String> linkBy() {
		Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
		if (RUNNING_AS.get() == null && authentication != null
				&& authentication.getPrincipal() instanceof SignedIn principal) {
			return principal.linkBy();
		}
		return Optional.empty();
	}

	private static Optional<PersonId> signedIn() {
		Authentication authentication = SecurityContextHolder.getContext().getAuthentication();
		if (authentication != null && authentication.getPrincipal() instanceof SignedIn principal) {
			return Optional.of(principal.personId());
		}
		return Optional.empty();
	}

	/**
	 * Works as a named person, in this thread and until the work returns. It goes before
	 * a signed-in person and may be nested.
	 * @param person the person the work is done for
	 * @param work what to do
	 * @throws IllegalStateException within a transaction, which was already begun for
	 * someone else
	 */
	public static void runAs(PersonId person, Runnable work) {
		requireNoTransaction();
		PersonId before = RUNNING_AS.get();
		RUNNING_AS.set(person);
		try {
			work.run();
		}
		finally {
			restore(before);
		}
	}

	/**
	 * Works as a named person and hands back what came of it.
	 * @param <T> what the work yields
	 * @param person the person the work is done for
	 * @param work what to do
	 * @return what the work yields
	 * @throws IllegalStateException within a transaction, which was already begun for
	 * someone else
	 */
	public static <T> T callAs(PersonId person, Supplier<T> work) {
		requireNoTransaction();
		PersonId before = RUNNING_AS.get();
		RUNNING_AS.set(person);
		try {
			return work.get();
		}
		finally {
			restore(before);
		}
	}

	private static void requireNoTransaction() {
		if (TransactionSynchronizationManager.isActualTransactionActive()) {
			throw new IllegalStateException("a transaction keeps the person it was begun for");
		}
	}

	private static void restore(@Nullable PersonId before) {
		if (before == null) {
			RUNNING_AS.remove();
		}
		else {
			RUNNING_AS.set(before);
		}
	}

}
