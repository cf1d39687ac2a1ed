package org.fallow.platform;

import jakarta.servlet.http.HttpServletRequest;

import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionExecution;
import org.springframework.transaction.TransactionExecutionListener;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/**
 * Remembers with a request that a transaction of it began to commit, so that nobody is
 * told that nothing was saved when it fails afterwards.
 */
@Component
public class CommitsOfRequest implements TransactionExecutionListener {

	private static final String BEGUN = CommitsOfRequest.class.getName();

	CommitsOfRequest() {
	}

	@Override
	public void beforeCommit(TransactionExecution transaction) {
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (request != null && !transaction.isReadOnly()) {
			request.setAttribute(BEGUN, true, RequestAttributes.SCOPE_REQUEST);
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

}
