package org.fallow.platform.web;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.fallow.platform.web.LogOfTest.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.awaitility.Awaitility.await;

/**
 * Whoever is not answered as asked gets a sentence and an id, and the log has the same id
 * beside what happened and nothing about anybody.
 */
class FailureTests extends OverHttp {

	private static final Pattern ID = Pattern
		.compile("[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}");

	@Autowired
	private MessageSource messages;

	static Stream<String> addressesOfNothing() {
		return Stream.of("/nowhere", "/athletes/" + UUID.randomUUID(), "/athletes/Ann", "/rules/drafts/1",
				"/rules/" + UUID.randomUUID() + "/1", "/rules/" + UUID.randomUUID() + "/first", "/import/x/progress",
				"/import/" + UUID.randomUUID(), "/athletes/1/clearance", "/error");
	}

	@ParameterizedTest
	@MethodSource("addressesOfNothing")
	void tellsNothingOfWhatIsNotThere(String path) {
		Caller coach = signedIn(this.coachName);
		String strangers = withoutId(coach.get("/athletes/" + this.stranger.id().value()), 404);
		assertThat(withoutId(coach.get(path), 404)).isEqualTo(strangers);
	}

	@Test
	void showsPeopleAPageWithAnIdThatTheLogHasToo() {
		Caller coach = signedIn(this.coachName);
		try (LogOfTest log = LogOfTest.listen()) {
			HttpResponse<String> answer = coach.get("/board/faulty/Ann-Ashe?day=2026-03-18");
			assertThat(answer.statusCode()).isEqualTo(500);
			assertThat(answer.headers().firstValue("Content-Type"))
				.hasValueSatisfying((type) -> assertThat(type).startsWith("text/html"));
			assertThat(answer.body()).contains(say("error.500.title"))
				.contains(say("error.500.text"))
				.doesNotContain("Ann")
				.doesNotContain("IllegalState")
				.doesNotContain("@club.example");
			Line line = log.only(idIn(answer.body()));
			assertThat(line.level()).isEqualTo("ERROR");
			assertThat(line.text()).contains("500 to GET /board/faulty/{name}", "java.lang.IllegalStateException",
					"caused by java.sql.SQLException (SQLSTATE 23505)", "FaultyPage.fail(FaultyPage.java");
			assertThat(log.all()).noneMatch((other) -> other.text().contains("Ashe"));
		}
	}

	@Test
	void showsNothingOfAPageThatFailedHalfway() {
		HttpResponse<String> answer = signedIn(this.coachName).get("/board/faulty/Ann/begun");
		assertThat(answer.statusCode()).isEqualTo(500);
		assertThat(answer.body()).contains(say("error.500.title")).doesNotContain("a beginning");
		assertThat(answer.headers().allValues("Content-Security-Policy")).hasSize(1);
	}

	@Test
	void cutsAnAnswerShortThatFailedOnItsWay() {
		Caller coach = signedIn(this.coachName);
		try (LogOfTest log = LogOfTest.listen()) {
			assertThatExceptionOfType(AssertionError.class).isThrownBy(() -> coach.get("/board/faulty/Ann/sent"));
			Line line = log.only("500 to GET /board/faulty/{name}/sent");
			await().untilAsserted(
					() -> assertThat(log.all()).filteredOn((other) -> other.logger().startsWith("org.fallow"))
						.anyMatch((other) -> other.text().contains("see " + line.text().substring(0, 36))));
			assertThat(log.all()).noneMatch((other) -> other.text().contains("good of Ann"));
		}
	}

	@Test
	void givesMachinesProblemDetailsOfAFault() {
		HttpResponse<String> answer = signedIn(this.coachName).get("/board/faulty/Ann", "Accept", "application/json");
		JsonNode problem = JsonMapper.shared().readTree(answer.body());
		assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
		assertThat(problem.path("title").asString()).isEqualTo("Internal Server Error");
		assertThat(problem.path("detail").asString()).isEqualTo(say("error.500.text"));
		assertThat(problem.path("instance").asString()).matches("urn:uuid:" + ID);
	}

	@ParameterizedTest
	@ValueSource(strings = { "taken-back", "refused" })
	void saysThatNothingWasSavedWhereThatIsKnown(String how) {
		HttpResponse<String> answer = signedIn(this.coachName).post("/board/faulty/Ann/" + how, Map.of("note", "x"));
		assertThat(answer.statusCode()).isEqualTo(500);
		assertThat(answer.body()).contains(say("error.500.text")).doesNotContain(say("error.stored.text"));
	}

	@ParameterizedTest
	@ValueSource(strings = { "23505/stored", "Ann/told" })
	void doesNotSayThatNothingWasSavedAfterACommit(String how) {
		HttpResponse<String> answer = signedIn(this.coachName).post("/board/faulty/" + how, Map.of("note", "x"));
		assertThat(answer.statusCode()).isEqualTo(500);
		assertThat(answer.body()).contains(say("error.stored.text")).doesNotContain(say("error.500.text"));
	}

	@Test
	void saysSoToMachinesAndInGerman() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> answer = coach.sendAs("POST", "/board/faulty/23505/stored",
				BodyPublishers.ofString("_csrf=" + Caller.encoded(coach.token())), "Accept", "application/json",
				"Accept-Language", "de", "Content-Type", "application/x-www-form-urlencoded");
		assertThat(JsonMapper.shared().readTree(answer.body()).path("detail").asString())
			.isEqualTo(this.messages.getMessage("error.stored.text", null, Locale.GERMAN));
	}

	@Test
	void givesMachinesProblemDetails() {
		Caller coach = signedIn(this.coachName);
		try (LogOfTest log = LogOfTest.listen()) {
			HttpResponse<String> answer = coach.get("/athletes/" + this.stranger.id().value(), "Accept",
					"application/json");
			assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
			JsonNode problem = JsonMapper.shared().readTree(answer.body());
			assertThat(problem.propertyNames()).isSubsetOf("type", "title", "status", "detail", "instance");
			assertThat(problem.path("type").asString("about:blank")).isEqualTo("about:blank");
			assertThat(problem.path("title").asString()).isEqualTo("Not Found");
			assertThat(problem.path("status").asInt()).isEqualTo(404);
			assertThat(problem.path("detail").asString()).isEqualTo(say("error.404.text"));
			assertThat(problem.path("instance").asString()).matches("urn:uuid:" + ID);
			assertThat(log.only(idIn(answer.body())).text()).contains("404 to GET /athletes/{id}",
					"org.fallow.team.NoSuchAthlete");
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "*/*", "application/problem+json", "text/csv", "nonsense",
			"application/json, text/html;q=0.5" })
	void takesWhoeverDoesNotAskForHtmlForAMachine(String accept) {
		HttpResponse<String> answer = signedIn(this.coachName).get("/nowhere", "Accept", accept);
		assertThat(answer.statusCode()).isEqualTo(404);
		assertThat(answer.headers().firstValue("Content-Type")).hasValue("application/problem+json");
	}

	@Test
	void givesAPartOfAPageTheMiddleOfThePage() {
		HttpResponse<String> answer = signedIn(this.coachName).get("/nowhere", "Accept", "*/*", "HX-Request", "true");
		assertThat(answer.statusCode()).isEqualTo(404);
		assertThat(answer.body().strip()).startsWith("<main").endsWith("</main>").contains(say("error.404.title"));
	}

	@Test
	void saysWhatIsWrongWithARequest() {
		Caller coach = signedIn(this.coachName);
		told(coach.get("/import/" + UUID.randomUUID() + "?page=x"), 400);
		told(coach.get("/board//x"), 400);
		told(coach.post("/board", Map.of()), 405);
		told(coach.sendAs("POST", "/sign-out", BodyPublishers.noBody(), "Accept", Caller.BROWSER), 403);
		told(coach.get("/club"), 403);
		told(coach.sendAs("POST", "/morning", BodyPublishers.ofString("x"), "Accept", Caller.BROWSER, "Content-Type",
				"multipart/form-data; boundary=x"), 415);
	}

	@Test
	void keepsAMethodOfSomebodysOwnOutOfTheLog() {
		try (LogOfTest log = LogOfTest.listen()) {
			HttpResponse<String> answer = signedIn(this.coachName).sendAs("ANNASHE", "/board", BodyPublishers.noBody(),
					"Accept", Caller.BROWSER);
			assertThat(log.only(idIn(answer.body())).text()).contains(" to OTHER ");
			assertThat(log.all()).noneMatch((line) -> line.text().contains("ANNASHE"));
		}
	}

	@Test
	void logsEveryRefusalUnderItsOwnId() {
		Caller coach = signedIn(this.coachName);
		List<String> ids = Stream.of("/nowhere", "/nowhere", "/club")
			.map((path) -> idIn(coach.get(path).body()))
			.toList();
		assertThat(ids).doesNotHaveDuplicates();
	}

	private void told(HttpResponse<String> answer, int status) {
		assertThat(answer.statusCode()).isEqualTo(status);
		assertThat(answer.body()).contains(say("error." + status + ".title")).contains(say("error.quote"));
		assertThat(idIn(answer.body())).isNotEmpty();
	}

	private static String withoutId(HttpResponse<String> answer, int status) {
		assertThat(answer.statusCode()).isEqualTo(status);
		return answer.body().replace(idIn(answer.body()), "ID").replaceAll("name=\"_csrf\" value=\"[^\"]+\"", "TOKEN");
	}

	private static String idIn(String body) {
		Matcher id = ID.matcher(body);
		assertThat(id.find()).as(body).isTrue();
		return id.group();
	}

	private String say(String code) {
		return this.messages.getMessage(code, new Object[] { 50, 512 }, java.util.Locale.ENGLISH);
	}

}
