package org.fallow.platform.web;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.test.context.TestPropertySource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Forms whose senders take their time: pages go on being answered. Each sender goes on
 * with a byte now and then, so that no time-out helps; what is counted is answers.
 */
@TestPropertySource(properties = "fallow.proxies=127.0.0.1,::1")
class CrowdTests extends OverHttp {

	private final List<Socket> stalled = new ArrayList<>();

	private final ScheduledExecutorService bytes = Executors.newSingleThreadScheduledExecutor();

	@AfterEach
	void letGo() throws IOException {
		this.bytes.shutdownNow();
		for (Socket socket : this.stalled) {
			socket.close();
		}
	}

	@Test
	void answersOthersWhileOneNetworkStalls() throws Exception {
		stall(230, "203.0.113.7");
		assertThat(answers(20, "198.51.100.1", "198.51.100.2")).containsOnly(200).hasSize(20);
	}

	@Test
	void answersPagesWhileManyNetworksStall() throws Exception {
		for (int network = 0; network < 23; network++) {
			stall(10, "203.0.113." + network);
		}
		assertThat(answers(20, "198.51.100.1")).containsOnly(200).hasSize(20);
	}

	/** So that somebody in the crowded network is not left waiting. */
	@Test
	void refusesTheCrowdedNetworkAtOnceInWords() throws Exception {
		stall(230, "2001:db8:0:1::7");
		HttpResponse<String> answer = page("2001:db8:0:1::8");
		assertThat(answer.statusCode()).isEqualTo(429);
		assertThat(answer.headers().firstValue("Retry-After")).hasValue("5");
		assertThat(answer.headers().firstValue("Content-Security-Policy")).isPresent();
		assertThat(answer.body()).contains("too often");
		assertThat(page("2001:db8:0:2::8").statusCode()).isEqualTo(200);
	}

	@Test
	void letsTheNetworkInAgainOnceItHasLetGo() throws Exception {
		stall(230, "203.0.113.9");
		letGo();
		for (int tries = 0; tries < 600 && page("203.0.113.9").statusCode() != 200; tries++) {
			Thread.sleep(100);
		}
		assertThat(page("203.0.113.9").statusCode()).isEqualTo(200);
	}

	private void stall(int many, String address) throws IOException {
		for (int i = 0; i < many; i++) {
			Socket socket = new Socket("127.0.0.1", this.port);
			socket.getOutputStream()
				.write(("POST /sign-in HTTP/1.1\r\nHost: localhost\r\nX-Forwarded-For: " + address
						+ "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 5000\r\n\r\nusername=a")
					.getBytes(StandardCharsets.ISO_8859_1));
			this.stalled.add(socket);
		}
		List<Socket> own = List.copyOf(this.stalled);
		this.bytes.scheduleWithFixedDelay(() -> own.forEach(CrowdTests::drip), 1, 1, TimeUnit.SECONDS);
	}

	private static void drip(Socket socket) {
		try {
			socket.getOutputStream().write('a');
		}
		catch (IOException ex) {
			// refused, which is one way to make room
		}
	}

	private List<Integer> answers(int many, String... addresses) throws Exception {
		List<Integer> answers = new ArrayList<>();
		for (int i = 0; i < many; i++) {
			answers.add(page(addresses[i % addresses.length]).statusCode());
		}
		return answers;
	}

	private HttpResponse<String> page(String address) throws Exception {
		HttpRequest request = HttpRequest.newBuilder(URI.create("http://localhost:" + this.port + "/sign-in"))
			.header("Accept", Caller.BROWSER)
			.header("X-Forwarded-For", address)
			.timeout(Duration.ofMinutes(1))
			.build();
		return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
	}

}
