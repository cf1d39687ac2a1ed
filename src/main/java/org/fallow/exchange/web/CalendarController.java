package org.fallow.exchange.web;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.Optional;

import jakarta.servlet.http.HttpServletResponse;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.account.PublicUrl;
import org.fallow.exchange.calendar.AthleteCalendar;
import org.fallow.exchange.calendar.CalendarAddresses;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.wording.Message;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * An athlete's own page about the calendar, and the calendar itself, which programs fetch
 * without a sign-in.
 */
@Controller
class CalendarController {

	private static final String PAGE = "exchange/calendar";

	private final AthleteAccess access;

	private final CalendarAddresses addresses;

	private final AthleteCalendar calendar;

	private final PublicUrl address;

	CalendarController(AthleteAccess access, CalendarAddresses addresses, AthleteCalendar calendar, PublicUrl address) {
		this.access = access;
		this.addresses = addresses;
		this.calendar = calendar;
		this.address = address;
	}

	@GetMapping("/calendar")
	String show(Model model) {
		Athlete self = this.access.self();
		model.addAttribute("made",
				this.addresses.madeAt(self.id()).map((at) -> LocalDateTime.ofInstant(at, self.zone())).orElse(null));
		return PAGE;
	}

	/** Shows the address in the answer itself: in a session it would be kept. */
	@PostMapping("/calendar/new")
	String make(Model model) {
		PersonId self = this.access.self().id();
		model.addAttribute("link", this.address.link("/calendar/" + this.addresses.make(self).text() + ".ics"));
		return show(model);
	}

	@PostMapping("/calendar/revoke")
	String revoke(RedirectAttributes redirect) {
		this.addresses.revoke(this.access.self().id());
		redirect.addFlashAttribute("notice", Message.of("calendar.page.revoked"));
		return "redirect:/calendar";
	}

	@GetMapping("/calendar/{secret}.ics")
	void feed(@PathVariable String secret, HttpServletResponse response) throws IOException {
		Optional<PersonId> holder = this.addresses.holder(secret);
		if (holder.isEmpty()) {
			response.sendError(HttpStatus.NOT_FOUND.value());
			return;
		}
		PersonId athlete = holder.get();
		String text = CurrentPerson.callAs(athlete, () -> this.calendar.of(athlete));
		byte[] octets = text.getBytes(StandardCharsets.UTF_8);
		response.setContentType("text/calendar;charset=UTF-8");
		response.setContentLength(octets.length);
		response.getOutputStream().write(octets);
	}

}
