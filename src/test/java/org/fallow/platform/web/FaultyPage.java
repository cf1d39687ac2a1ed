package org.fallow.platform.web;

import java.io.IOException;

import jakarta.servlet.http.HttpServletResponse;

import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.UncategorizedSQLException;
import org.springframework.stereotype.Controller;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;

/**
 * A page of the tests with a fault that quotes what it was asked.
 */
@TestComponent
@Controller
class FaultyPage {

	private final PlatformTransactionManager transactions;

	FaultyPage(PlatformTransactionManager transactions) {
		this.transactions = transactions;
	}

	/** For coaches, and under the sessions for everybody: other pages are closed. */
	@GetMapping({ "/board/faulty/{name}", "/session/faulty-{name}" })
	String fail(@PathVariable String name) {
		throw new IllegalStateException("nothing good of " + name, new java.sql.SQLException("row " + name, "23505"));
	}

	/** Fails as the database does with a state. */
	@PostMapping("/board/faulty/{state}/database")
	void failAsTheDatabase(@PathVariable String state) {
		throw new UncategorizedSQLException("nothing good", null, new java.sql.SQLException("row Ann", state));
	}

	/** Fails once something may have been stored. */
	@PostMapping("/board/faulty/{state}/stored")
	void failAfterACommit(@PathVariable String state) {
		new TransactionTemplate(this.transactions).executeWithoutResult((status) -> {
		});
		failAsTheDatabase(state);
	}

	/** Fails while it stores, so that what it wrote is taken back. */
	@PostMapping("/board/faulty/{name}/taken-back")
	void failInATransaction(@PathVariable String name) {
		new TransactionTemplate(this.transactions).executeWithoutResult((status) -> fail(name));
	}

	/** Fails when the database refuses what was to be committed. */
	@PostMapping("/board/faulty/{name}/refused")
	void failAtTheCommit(@PathVariable String name) {
		new TransactionTemplate(this.transactions).executeWithoutResult(
				(status) -> TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {

					@Override
					public void beforeCommit(boolean readOnly) {
						fail(name);
					}

				}));
	}

	/** Has the server told of a fault once something was stored. */
	@PostMapping("/board/faulty/{name}/told")
	void tellAfterACommit(@PathVariable String name, HttpServletResponse response) throws IOException {
		new TransactionTemplate(this.transactions).executeWithoutResult((status) -> {
		});
		response.sendError(HttpServletResponse.SC_INTERNAL_SERVER_ERROR, name);
	}

	/** Fails when all is done and answered, as a session does that cannot be kept. */
	@PostMapping("/board/faulty/{state}/answered")
	void failAfterTheAnswer(@PathVariable String state, HttpServletResponse response) throws IOException {
		response.sendRedirect("/board");
		failAsTheDatabase(state);
	}

	/** Fails after it has begun to write, as a template does. */
	@GetMapping("/board/faulty/{name}/begun")
	void failLate(@PathVariable String name, HttpServletResponse response) throws IOException {
		response.getWriter().write("a beginning");
		throw new IllegalStateException("nothing good of " + name);
	}

	/** Fails after some of it has been sent. */
	@GetMapping("/board/faulty/{name}/sent")
	void failTooLate(@PathVariable String name, HttpServletResponse response) throws IOException {
		response.getWriter().write("a beginning");
		response.flushBuffer();
		throw new IllegalStateException("nothing good of " + name);
	}

}
