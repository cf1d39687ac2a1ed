package org.fallow.browser;

import java.time.LocalTime;
import java.time.ZoneOffset;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * A morning at a telephone decides what the coach's board says, and only a clinician
 * leads out of Refer.
 */
class MainJobBrowserTests extends OnRealPages {

	@RegisterExtension
	static final Browser PHONE = Browser.phone();

	@RegisterExtension
	static final Browser DESK = Browser.desk();

	@Test
	void clearsAQuietMorning() {
		Visitor coach = atBoard();
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.NOT_ASSESSED"));
		Visitor athlete = signedIn(PHONE, this.annName);
		assertThat(athlete.path()).isEqualTo("/today");
		athlete.sees("today.no-entry");
		enterWell(athlete, "50", "70");
		assertThat(athlete.path()).isEqualTo("/today");
		athlete.sees("clearance.FULL_TRAINING");
		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.FULL_TRAINING"));
	}

	@Test
	void restsOnTwelveBeatsAboveTheBaselineByTheNextLoadOfTheBoard() {
		Visitor athlete = signedIn(PHONE, this.annName);
		enterWell(athlete, "50", "70");
		Visitor coach = atBoard();
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.FULL_TRAINING"));
		athlete.go("/morning");
		athlete.sees("morning.corrects");
		enterWell(athlete, "62", "70");
		athlete.sees("clearance.REST");
		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.REST"), "62", "+12");
	}

	@Test
	void refersOnChestPainUntilAClinicianHasCleared() {
		Visitor athlete = signedIn(PHONE, this.annName);
		Visitor coach = atBoard();
		reportChestPain(athlete);
		athlete.sees("clearance.REFER");
		athlete.sees("emergency.call");
		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.REFER"));

		athlete.go("/morning");
		athlete.untick("symptom.CHEST_PAIN", "SEVERE");
		enterWell(athlete, "50", "70");
		athlete.sees("clearance.REFER");
		athlete.sees("emergency.call");
		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.REFER"));

		this.clock.set(Runners.TODAY, LocalTime.of(15, 0), ZoneOffset.UTC);
		coach.press("table.board tbody th a");
		coach.sees("emergency.call");
		coach.press("a[href$='/clearance']");
		coach.type("who", "Dr Wren");
		coach.type("role", "Cardiologist");
		coach.tick("by", "PHYSICIAN");
		coach.tick("scope", "FULL");
		coach.press("form.sheet button.primary");
		coach.sees("clearance.stored");
		coach.sees("stage.ILL");
		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).doesNotContain(coach.say("clearance.REFER"))
			.doesNotContain(coach.say("clearance.FULL_TRAINING"))
			.contains(coach.say("stage.ILL.short"));
	}

	@Test
	void asksOnceMoreBeforeItStoresARedFlag() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		athlete.sees("redFlags.confirm.head");
		athlete.sees("emergency.call");
		athlete.go("/today");
		athlete.sees("today.no-entry");
	}

	@Test
	void saysWhatToDoAboutARedFlagInAFormWithAMistake() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.type("rhr", "fifty");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		athlete.sees("problems.head");
		athlete.sees("emergency.call");
		athlete.press("button[name='redFlagConfirmed']");
		athlete.sees("emergency.call");
		athlete.type("rhr", "");
		athlete.press("button[name='redFlagConfirmed']");
		athlete.sees("clearance.REFER");
	}

	private void reportChestPain(Visitor athlete) {
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		athlete.sees("redFlags.confirm.named");
		athlete.press("button[name='redFlagConfirmed']");
		assertThat(athlete.path()).isEqualTo("/today");
	}

	private Visitor atBoard() {
		Visitor coach = signedIn(DESK, this.coachName);
		assertThat(coach.path()).isEqualTo("/board");
		return coach;
	}

	static void enterWell(Visitor athlete, String rhr, String rmssd) {
		if (!athlete.path().startsWith("/morning")) {
			athlete.go("/morning");
		}
		athlete.type("rhr", rhr);
		athlete.type("rmssd", rmssd);
		athlete.choose("method", "STRAP");
		athlete.choose("posture", "LYING");
		athlete.press("button[name='allWell']");
	}

}
