package org.fallow.account.web;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;

import jakarta.servlet.http.HttpSession;
import org.fallow.account.OtherHands;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/**
 * Tells what others did about the ways into one's account: first of all after a sign-in,
 * and whenever it is asked for.
 */
@Controller
class ToldController {

	private final AthleteAccess access;

	private final OtherHands hands;

	private final Squad squad;

	private final Clock clock;

	ToldController(AthleteAccess access, OtherHands hands, Squad squad, Clock clock) {
		this.access = access;
		this.hands = hands;
		this.squad = squad;
		this.clock = clock;
	}

	@GetMapping(TellFirst.PAGE)
	String tell(HttpSession session, Model model) {
		Instant since = (session.getAttribute(TellFirst.SINCE) instanceof Instant noted) ? noted
				: this.clock.instant().minus(OtherHands.TOLD_FOR);
		ZoneId zone = this.squad.zoneOf(this.access.person()).orElse(ZoneOffset.UTC);
		List<Noted> lines = this.hands.since(this.access.person(), since)
			.stream()
			.map((line) -> Noted.of(line, zone))
			.toList();
		model.addAttribute("lines", lines);
		model.addAttribute("next", (session.getAttribute(TellFirst.WANTED) instanceof String wanted) ? wanted : "/");
		session.removeAttribute(TellFirst.SINCE);
		session.removeAttribute(TellFirst.WANTED);
		return "account/told";
	}

}
