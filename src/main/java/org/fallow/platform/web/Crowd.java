package org.fallow.platform.web;

import java.io.IOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;

import jakarta.servlet.ServletException;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ValveBase;
import org.apache.coyote.ActionCode;
import org.fallow.access.NetworkAddress;

import org.springframework.http.HttpStatus;

/**
 * Keeps room for pages: one network has no more than {@value #MOST_OF_A_NETWORK} requests
 * under way at once, and all together no more than {@value #MOST_BODIES} that bring a
 * body, since each of them holds a thread for as long as its sender likes to take. Over
 * that a request is refused at once, its body unread. Both are far above what a club
 * does, and below the {@code server.tomcat.threads.max} of 200.
 */
class Crowd extends ValveBase {

	static final int MOST_OF_A_NETWORK = 100;

	static final int MOST_BODIES = 150;

	private static final String SECONDS_TO_WAIT = "5";

	private final Map<String, Integer> present = new ConcurrentHashMap<>();

	private final Semaphore bodies = new Semaphore(MOST_BODIES);

	private final ShortAnswer answer;

	Crowd(ShortAnswer answer) {
		super(true);
		this.answer = answer;
	}

	@Override
	public void invoke(Request request, Response response) throws IOException, ServletException {
		String network = NetworkAddress.of(request.getRemoteAddr()).map(NetworkAddress::network).orElse("");
		if (this.present.merge(network, 1, Integer::sum) > MOST_OF_A_NETWORK) {
			leave(network);
			refuse(request, response);
			return;
		}
		try {
			withRoom(request, response);
		}
		finally {
			leave(network);
		}
	}

	private void withRoom(Request request, Response response) throws IOException, ServletException {
		if (!hasBody(request)) {
			getNext().invoke(request, response);
		}
		else if (this.bodies.tryAcquire()) {
			try {
				getNext().invoke(request, response);
			}
			finally {
				this.bodies.release();
			}
		}
		else {
			refuse(request, response);
		}
	}

	private void leave(String network) {
		this.present.computeIfPresent(network, (key, count) -> (count > 1) ? count - 1 : null);
	}

	private static boolean hasBody(Request request) {
		String length = request.getHeader("Content-Length");
		return (length != null && !length.equals("0")) || request.getHeader("Transfer-Encoding") != null;
	}

	private void refuse(Request request, Response response) throws IOException {
		Failure failure = Failure.of(HttpStatus.TOO_MANY_REQUESTS.value(), request.getMethod(), null, null);
		failure.log();
		request.getCoyoteRequest().action(ActionCode.DISABLE_SWALLOW_INPUT, null);
		response.setHeader("Retry-After", SECONDS_TO_WAIT);
		this.answer.write(failure, request, response.getResponse());
	}

}
