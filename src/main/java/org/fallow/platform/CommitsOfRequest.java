package org.fallow.platform;

import jakarta.servlet.http.HttpServletRequest;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/**
 * Remembers with a request that a transaction of it began to commit and that one did, so
 * that nobody is told that nothing was saved when it fails afterwards.
 */
@Component
public class CommitsOfRequest implements TransactionExecutionListener {

	private static final String BEGUN = CommitsOfRequest.class.getName();

	private static final String DONE = BEGUN + ".done";

	CommitsOfRequest() {
	}

	@Override
	public void beforeCommit(TransactionExecution transaction) {
		remember(transaction, BEGUN);
	}

	@Override
	public void afterCommit(TransactionExecution transaction, @Nullable Throwable failure) {
		if (failure == null) {
			remember(transaction, DONE);
		}
	}

	private static void remember(TransactionExecution transaction, String what) {
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (request != null && !transaction.isReadOnly()) {
			request.setAttribute(what, true, RequestAttributes.SCOPE_REQUEST);
		}
	}

	/**
	 * Whether something of a request may have been stored.
	 * @param request as any filter has it
	 * @return whether a transaction that may write began to commit
	 */
	public static boolean begun(HttpServletRequest request) {
		return request.getAttribute(BEGUN) != null;
	}

	/**
	 * Whether something of a request is stored, which need not be what it was sent for.
	 * @param request as any filter has it
	 * @return whether a transaction that may write was committed
	 */
	public static boolean done(HttpServletRequest request) {
		return request.getAttribute(DONE) != null;
	}

}
