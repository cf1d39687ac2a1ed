package org.fallow.platform.web;

import java.net.http.HttpResponse;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.fallow.team.Athlete;
import org.fallow.team.NewAthlete;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.MessageSource;

import static org.assertj.core.api.Assertions.assertThat;

/** The one character that no database keeps in a text, in fields of all kinds. */
class UnreadableFieldTests extends OverHttp {

	@Autowired
	private MessageSource messages;

	@ParameterizedTest
	@CsvSource(delimiter = '|',
			value = { "/people|name=Eve%00&teamId=TEAM&agreed=true",
					"/people|name=Eve&teamId=TEAM&groupId=%00&agreed=true",
					"/people/invitations|whom=Eve%00&kind=ATHLETE&intoTeam=TEAM", "/account/language|language=d%00e",
					"/account/sessions/end|session=%00", "/account/passkeys/remove|id=%00", "/password|present=%00",
					"/forgotten|username=%00", "/set-up|code=%00&name=%00", "/sign-in|username=a%00b&password=x",
					"/sign-in|username=ann&password=%00", "/join|name=%00", "/people|na%00me=Eve&teamId=TEAM" })
	void isRefusedInOneSentence(String path, String form) {
		Caller coach = signedIn(this.coachName);
		assertRefused(coach.postRaw(path, form.replace("TEAM", this.team.id().toString())));
	}

	@Test
	void isRefusedInAnAthletesForms() {
		Athlete ann = this.people.addAthlete(this.team.id(), NewAthlete.named("Ann Ashe"));
		Caller athlete = signedIn(open(ann.id()));
		for (String path : List.of("/morning", "/session", "/report", "/thread", "/sharing/give", "/sessions/usual")) {
			for (String field : List.of("note", "text", "guardian", "symptom", "rr", "weekMinutes", "day", "request")) {
				HttpResponse<String> answer = athlete.postRaw(path, field + "=a%00b");
				assertThat(answer.statusCode()).as(path + " " + field).isLessThan(500);
			}
		}
		assertRefused(athlete.get("/sharing?before=%00"));
	}

	@Test
	void isRefusedInAProgramme() {
		String group = this.people.findOrAddGroup(this.team.id(), "Group").id().toString();
		Caller coach = signedIn(this.coachName);
		String week = "week=2026-03-16&revision=0&kind=LOADING&day0=2&kind0=EASY_RUN&terrain0=FLAT&parts0=40+min+easy";
		assertRefused(coach.postRaw("/programme/" + group, week + "&name0=a%00b"));
		for (String wrong : List.of("&name0=two%0Alines", "&place0=two%0D%0Alines", "&name0=bell%07")) {
			assertThat(coach.postRaw("/programme/" + group, week + wrong).body()).contains("stands in one line");
		}
		for (String day : List.of("0", "8", "", "Monday", "-1")) {
			HttpResponse<String> answer = coach.postRaw("/programme/" + group, week.replace("day0=2", "day0=" + day));
			assertThat(answer.body()).as(day).contains("On which day of the week");
		}
		for (String other : List.of("kind=BUSY&kind", "kind0=JOG&kind", "terrain0=SAND&kind")) {
			String name = other.substring(0, other.indexOf('=') + 1);
			String form = week.replaceFirst("(^|&)" + name + "[A-Z_]+", "$1" + other.substring(0, other.indexOf('&')));
			assertThat(coach.postRaw("/programme/" + group, form).body()).as(other).contains("Fallow does not know");
		}
		for (String unreadable : List.of("week=", "week=soon", "week=2026-02-30")) {
			assertRefused(coach.postRaw("/programme/" + group, week.replace("week=2026-03-16", unreadable)));
		}
		assertThat(coach.get("/programme/" + group + "?week=2026-03-16").body()).doesNotContain("40 min easy");
		HttpResponse<String> right = coach.postRaw("/programme/" + group, week + "&name0=Round+the+lake");
		assertThat(coach.get(coach.location(right)).body()).contains("Round the lake", "40 min easy");
	}

	@Test
	void signsInAsEver() {
		Caller caller = nobody();
		caller.get("/sign-in");
		assertThat(caller.location(caller.post("/sign-in", Map.of("username", this.coachName, "password", PASSWORD))))
			.isEqualTo("/");
	}

	private void assertRefused(HttpResponse<String> answer) {
		assertThat(answer.statusCode()).as(answer.body()).isEqualTo(400);
		assertThat(answer.body()).contains(this.messages.getMessage("error.400.title", null, Locale.ENGLISH));
		assertThat(answer.headers().allValues("X-Frame-Options")).containsExactly("DENY");
	}

}
