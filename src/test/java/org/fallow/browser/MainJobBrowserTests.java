package org.fallow.browser;

import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.rules.Intensity;
import org.fallow.team.People;
import org.fallow.training.Programmes;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import org.fallow.training.core.ProgrammeWeek;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

import org.springframework.beans.factory.annotation.Autowired;

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

	@Autowired
	private People people;

	@Autowired
	private Programmes programmes;

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
		athlete.sees("again.title");
		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.REST"), "62", "+12");
		athlete.go("/today");
		athlete.sees("clearance.REST");
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

	/** Whoever reads the sentence and puts the phone away has everything stored. */
	@Test
	void refersThoughThePhoneIsPutAway() {
		UUID track = this.people.findOrAddGroup(this.team.id(), "Track").id();
		Visitor coach = atBoard();
		programme(track);
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		athlete.sees("emergency.call");
		assertThat(athlete.find("a[href='tel:112']").isDisplayed()).isTrue();
		athlete.sees("emergency.or");
		athlete.sees("slip.yes");

		coach.go("/board");
		assertThat(coach.row("Ann Ashe")).contains(coach.say("clearance.REFER"));
		coach.go("/roll");
		assertThat(coach.text()).contains("Ann Ashe", coach.say("version.CLINICIAN_FIRST"));
		Visitor later = signedIn(PHONE, this.annName);
		later.go("/today");
		later.sees("clearance.REFER");
		assertThat(later.find("a[href='tel:112']").isDisplayed()).isTrue();
	}

	@Test
	void asksAfterwardsWhetherItWasMeant() {
		Visitor athlete = signedIn(PHONE, this.annName);
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		this.clock.set(Runners.TODAY, LocalTime.of(8, 1), ZoneOffset.UTC);
		athlete.go("/slip");
		athlete.sees("slip.title");
		athlete.press(".emergency form button");
		athlete.sees("slip.stored");
		athlete.sees("clearance.EASY_ONLY");
		Visitor coach = atBoard();
		coach.sees("matter.SLIP");
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
		athlete.sees("redFlags.kept");
		athlete.go("/today");
		athlete.sees("clearance.REFER");
	}

	private void programme(UUID group) {
		PlannedSession session = new PlannedSession("t", Runners.TODAY, PlannedSession.Kind.KEY_SESSION,
				PlannedSession.Terrain.TRACK, LocalTime.of(18, 30), "", "",
				List.of(Part.of(Part.Role.BLOCK, 1800, Intensity.THRESHOLD)));
		ProgrammeWeek week = new ProgrammeWeek(Runners.TODAY.minusDays(2), ProgrammeWeek.Kind.LOADING,
				List.of(session));
		PersonId coach = new PersonId(UUID.fromString(this.coachName.substring(0, this.coachName.indexOf('@'))));
		CurrentPerson.runAs(coach, () -> assertThat(this.programmes.write(group, week, 0, coach)).isTrue());
	}

	private void reportChestPain(Visitor athlete) {
		athlete.go("/morning");
		athlete.tick("symptom.CHEST_PAIN", "SEVERE");
		athlete.press("#unwell button.primary");
		athlete.sees("slip.named");
		athlete.press(".emergency .actions a[href$='/today']");
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
