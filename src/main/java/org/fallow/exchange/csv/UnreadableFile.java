package org.fallow.exchange.csv;

import org.fallow.wording.Message;

/**
 * A file that is no CSV file of mornings, with what to say about it.
 */
public final class UnreadableFile extends RuntimeException {

	private final transient Message problem;

	UnreadableFile(Message problem) {
		super(problem.code());
		this.problem = problem;
	}

	/**
	 * What is wrong with it.
	 * @return the sentence for the person who sent it
	 */
	public Message problem() {
		return this.problem;
	}

}
