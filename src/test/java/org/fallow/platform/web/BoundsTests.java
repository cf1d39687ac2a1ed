package org.fallow.platform.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What is sent has limits, over them a sentence says so, and what people really send lies
 * within.
 */
class BoundsTests extends OverHttp {

	private static final int MB = 1024 * 1024;

	private static final String BOUNDARY = "a-boundary-of-the-test";

	@Autowired
	private MessageSource messages;

	@Test
	void takesAFileBelowTheLimit() throws IOException {
		Caller coach = atUpload();
		HttpResponse<String> answer = upload(coach, "/import", 20 * MB);
		assertThat(answer.statusCode()).isEqualTo(302);
		assertThat(coach.location(answer)).endsWith("/mapping");
	}

	@Test
	void saysHowLargeAFileMayBe() throws IOException {
		HttpResponse<String> file = upload(atUpload(), "/import", 50 * MB + 1000);
		assertTooLarge(file);
		HttpResponse<String> request = upload(atUpload(), "/import", 70 * MB);
		assertTooLarge(request);
	}

	@Test
	void takesFilesNowhereElse() throws IOException {
		HttpResponse<String> signIn = upload(nobody(), "/sign-in", MB);
		assertThat(signIn.statusCode()).isEqualTo(415);
		assertThat(signIn.headers().firstValue("Content-Security-Policy")).isPresent();
		assertThat(upload(atUpload(), "/people", MB).statusCode()).isEqualTo(415);
	}

	@Test
	void refusesAFormOfManyParts() {
		String parts = IntStream.range(0, 40)
			.mapToObj((index) -> part("part" + index, "", "x"))
			.collect(Collectors.joining());
		HttpResponse<String> answer = atUpload().sendAs("POST", "/import",
				BodyPublishers.ofString(parts + "--" + BOUNDARY + "--\r\n"), "Accept", Caller.BROWSER, "Content-Type",
				"multipart/form-data; boundary=" + BOUNDARY);
		assertTooLarge(answer);
	}

	@Test
	void refusesAFormThatIsTooLarge() {
		Caller athlete = signedIn(open(this.stranger.id()));
		athlete.get("/morning");
		assertTooLarge(athlete.post("/morning", Map.of("note", "x".repeat(520 * 1024))));
	}

	/** 20 000 intervals, the most that are read, each on a line of its own. */
	@Test
	void takesTheLongestMorning() {
		Caller athlete = signedIn(open(this.stranger.id()));
		athlete.get("/morning");
		String intervals = "1000.123\r\n".repeat(20_000);
		assertThat(intervals.length() * 1.4).isLessThan(512 * 1024);
		HttpResponse<String> answer = athlete.post("/morning", Map.of("day", "2026-03-18", "rr", intervals));
		assertThat(answer.statusCode()).isEqualTo(200);
		assertThat(answer.body()).contains("1000.123");
	}

	@Test
	void takesADraftOfRulesWithAllItsNumbers() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> list = coach.get("/rules");
		String copy = firstMatch(list.body(), "action=\"(/rules/[^\"]+/draft)\"");
		String draft = coach.location(coach.post(copy, Map.of()));
		String page = coach.get(draft).body();
		List<String> names = allMatches(page, "<(?:input|select|textarea)[^>]*name=\"(/[^\"]+)\"");
		assertThat(names).hasSizeBetween(50, 900);
		String changes = firstMatch(page, "name=\"changes\" value=\"(\\d+)\"");
		String form = names.stream()
			.map((name) -> Caller.encoded(name) + "=" + "1".repeat(100))
			.collect(Collectors.joining("&", "changes=" + changes + "&", ""));
		assertThat(form.length()).isLessThan(200 * 1024);
		assertThat(coach.postRaw(draft, form).statusCode()).isEqualTo(200);
	}

	@Test
	void refusesMoreFieldsThanAnyFormHas() {
		Caller coach = signedIn(this.coachName);
		coach.get("/rules");
		String form = IntStream.range(0, 1200).mapToObj((index) -> "f" + index + "=").collect(Collectors.joining("&"));
		HttpResponse<String> answer = coach.postRaw("/people", form);
		assertThat(answer.statusCode()).isEqualTo(400);
		assertThat(answer.body()).contains(this.messages.getMessage("error.400.title", null, Locale.ENGLISH));
	}

	@Test
	void refusesLongHeadersAndAddressesWithoutATrace() {
		for (HttpResponse<String> answer : List.of(nobody().get("/sign-in", "X-Long", "x".repeat(9000)),
				nobody().get("/sign-in?" + "x".repeat(9000)))) {
			assertThat(answer.statusCode()).isBetween(400, 431);
			assertThat(answer.body()).doesNotContain("Tomcat").doesNotContain("org.apache").doesNotContain("xxxxx");
		}
	}

	private Caller atUpload() {
		Caller coach = signedIn(this.coachName);
		assertThat(coach.get("/import").statusCode()).isEqualTo(200);
		return coach;
	}

	private void assertTooLarge(HttpResponse<String> answer) {
		assertThat(answer.statusCode()).isEqualTo(413);
		assertThat(answer.body())
			.contains(this.messages.getMessage("error.413.text", new Object[] { 50, 512 }, Locale.ENGLISH));
	}

	private HttpResponse<String> upload(Caller caller, String path, long size) throws IOException {
		String head = part("_csrf", "", caller.token()) + part("teamId", "", this.team.id().toString())
				+ part("file", "; filename=\"mornings.csv\"", "person,date,rhr_bpm\n").stripTrailing() + "\n";
		String row = "Ann Ashe,2026-01-02,50\n";
		long rows = size / row.length();
		byte[] thousand = row.repeat(1000).getBytes(StandardCharsets.UTF_8);
		Stream<InputStream> middle = IntStream.range(0, (int) (rows / 1000) + 1)
			.mapToObj((index) -> new java.io.ByteArrayInputStream(thousand));
		long length = head.length() + ((rows / 1000) + 1) * thousand.length;
		String tail = "\r\n--" + BOUNDARY + "--\r\n";
		BodyPublisher body = BodyPublishers.fromPublisher(
				BodyPublishers.ofInputStream(() -> new SequenceInputStream(Collections.enumeration(List.of(bytes(head),
						new SequenceInputStream(Collections.enumeration(middle.toList())), bytes(tail))))),
				length + tail.length());
		return caller.sendAs("POST", path, body, "Accept", Caller.BROWSER, "Content-Type",
				"multipart/form-data; boundary=" + BOUNDARY);
	}

	private static InputStream bytes(String text) {
		return new java.io.ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
	}

	private static String part(String name, String more, String value) {
		return "--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"" + name + "\"" + more + "\r\n\r\n" + value
				+ "\r\n";
	}

	private static String firstMatch(String text, String pattern) {
		return allMatches(text, pattern).get(0);
	}

	private static List<String> allMatches(String text, String pattern) {
		return java.util.regex.Pattern.compile(pattern)
			.matcher(text)
			.results()
			.map((result) -> result.group(1))
			.toList();
	}

}
