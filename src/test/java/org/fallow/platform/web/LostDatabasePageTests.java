package org.fallow.platform.web;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;

import org.fallow.platform.DatabaseState;
import org.fallow.platform.DiskRoom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * What people read when the database could not do what they asked for: that nothing was
 * saved, and a form that still holds what they typed.
 */
class LostDatabasePageTests extends OverHttp {

	@Autowired
	private DatabaseState database;

	@Autowired
	private MessageSource messages;

	@AfterEach
	void forgetTheFullDisk() {
		this.clock.advance(Duration.ofMinutes(2));
	}

	@Test
	void keepsWhatWasTypedWhenTheDatabaseIsAway() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> answer = coach.post("/board/faulty/08006/database", Map.of("note", "a \"<b>\" & ö\r\nc"));
		assertThat(answer.statusCode()).isEqualTo(503);
		assertThat(answer.headers().firstValue("Retry-After")).isPresent();
		assertThat(answer.body()).contains(say("error.503.text"))
			.contains("<form method=\"post\" action=\"/board/faulty/08006/database\">")
			.contains("name=\"note\" value=\"a &quot;&lt;b&gt;&quot; &amp; ö")
			.contains("name=\"_csrf\" value=\"")
			.contains(say("error.send-again"))
			.doesNotContain("Ann");
	}

	@Test
	void saysThatNobodyKnowsOnceSomethingWasCommitted() {
		HttpResponse<String> answer = signedIn(this.coachName).post("/board/faulty/57P01/stored", Map.of("note", "x"));
		assertThat(answer.statusCode()).isEqualTo(503);
		assertThat(answer.body()).contains(say("error.unsure.text"))
			.doesNotContain(say("error.503.text"))
			.contains("name=\"note\" value=\"x\"");
	}

	@Test
	void letsAnAnswerStandThatIsWhole() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> answer = coach.post("/board/faulty/57P01/answered", Map.of("note", "x"));
		assertThat(answer.statusCode()).isEqualTo(302);
		assertThat(coach.location(answer)).isEqualTo("/board");
	}

	@Test
	void aKeptFormIsTakenWhenItIsSentAgain() {
		Caller coach = signedIn(this.coachName);
		String kept = coach.post("/board/faulty/57P01/database", Map.of("note", "x")).body();
		String token = kept.replaceAll("(?s).*name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
		HttpResponse<String> again = coach.sendAs("POST", "/board/faulty/57P01/database",
				BodyPublishers.ofString("note=x&_csrf=" + token), "Accept", Caller.BROWSER, "Content-Type",
				"application/x-www-form-urlencoded");
		assertThat(again.statusCode()).as("the token holds, and the page fails as before").isEqualTo(503);
	}

	@Test
	void makesNoTokenForAFormOfAnotherSite() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> forged = coach.sendAs("POST", "/board/faulty/08006/database",
				BodyPublishers.ofString("note=x"), "Accept", Caller.BROWSER, "Content-Type",
				"application/x-www-form-urlencoded");
		assertThat(forged.statusCode()).isEqualTo(403);
		assertThat(forged.body()).doesNotContain("name=\"note\"");
	}

	@Test
	void saysThatTheDiskIsFullAndTellsTheHealthPage() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> answer = coach.post("/board/faulty/53100/database", Map.of("note", "x"));
		assertThat(answer.statusCode()).isEqualTo(507);
		assertThat(answer.body()).contains(say("error.507.text")).contains("name=\"note\" value=\"x\"");
		assertThat(this.database.disk()).isEqualTo(DiskRoom.Level.FULL);
		HttpResponse<String> health = nobody().get("/actuator/health", "Accept", "application/json");
		assertThat(health.statusCode()).isEqualTo(503);
		assertThat(health.body()).contains("disk is full");
		assertThat(nobody().get("/actuator/health/readiness", "Accept", "application/json").statusCode())
			.as("pages can still be read")
			.isEqualTo(200);
	}

	@Test
	void putsNoPasswordBackIntoAPage() {
		Caller coach = signedIn(this.coachName);
		HttpResponse<String> answer = coach.post("/board/faulty/08006/database",
				Map.of("present", "my old one", "wanted", "my new one"));
		assertThat(answer.statusCode()).isEqualTo(503);
		assertThat(answer.body()).doesNotContain("my old one").doesNotContain("my new one").doesNotContain("<form");
	}

	@Test
	void otherFailuresOfTheDatabaseStayFaults() {
		HttpResponse<String> answer = signedIn(this.coachName).post("/board/faulty/23505/database",
				Map.of("note", "x"));
		assertThat(answer.statusCode()).isEqualTo(500);
		assertThat(answer.body()).doesNotContain("name=\"note\"");
	}

	@Test
	void filesAndHealthNeedNoSession() {
		HttpResponse<String> file = nobody().get("/css/fallow.css", "Cookie", "SESSION=bm9uZQ==");
		assertThat(file.statusCode()).isEqualTo(200);
		HttpResponse<String> page = nobody().get("/board", "Cookie", "SESSION=bm9uZQ==");
		assertThat(page.statusCode()).as("a page does").isEqualTo(302);
	}

	private String say(String code) {
		return this.messages.getMessage(code, new Object[] { 50, 512 }, Locale.ENGLISH);
	}

}
