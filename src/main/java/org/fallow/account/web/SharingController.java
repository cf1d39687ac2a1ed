package org.fallow.account.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Trace;
import org.fallow.access.TraceLine;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Basis;
import org.fallow.team.Consent;
import org.fallow.team.Consents;
import org.fallow.team.Guardian;
import org.fallow.team.Posts;
import org.fallow.team.Today;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * An athlete's own page about who sees the data: who may, who did, and the way to end it.
 */
@Controller
class SharingController {

	private static final int LINES = 50;

	private static final String PAGE = "redirect:/sharing";

	private final AthleteAccess access;

	private final Consents consents;

	private final Posts posts;

	private final Trace trace;

	private final Today today;

	SharingController(AthleteAccess access, Consents consents, Posts posts, Trace trace, Today today) {
		this.access = access;
		this.consents = consents;
		this.posts = posts;
		this.trace = trace;
		this.today = today;
	}

	@GetMapping("/sharing")
	String show(@RequestParam(required = false) @Nullable UUID before, Model model) {
		Athlete self = this.access.self();
		List<TraceLine> lines = this.trace.of(self.id(), before, LINES + 1);
		List<TraceLine> shown = lines.subList(0, Math.min(LINES, lines.size()));
		model.addAttribute("shares", this.consents.shares(self.id()));
		model.addAttribute("inTeam", this.consents.team(self.id()).isPresent());
		model.addAttribute("minor", isMinor(self));
		model.addAttribute("agreed", agreed(self));
		model.addAttribute("coaches", this.posts.covering(self.id()));
		model.addAttribute("zone", self.zone());
		model.addAttribute("consents",
				this.consents.of(self.id()).stream().map((one) -> Said.of(one, self.zone())).toList());
		model.addAttribute("trace", shown.stream().map((line) -> Noted.of(line, self.zone())).toList());
		model.addAttribute("older", (lines.size() > LINES) ? shown.get(LINES - 1).id() : null);
		return "account/sharing";
	}

	@PostMapping("/sharing/withdraw")
	String withdraw(RedirectAttributes redirect) {
		this.consents.withdraw(this.access.self().id());
		redirect.addFlashAttribute("notice", Message.of("sharing.withdrawn"));
		return PAGE;
	}

	@PostMapping("/sharing/leave")
	String leave(RedirectAttributes redirect) {
		this.consents.leave(this.access.self().id());
		redirect.addFlashAttribute("notice", Message.of("sharing.left"));
		return PAGE;
	}

	@PostMapping("/sharing/give")
	String give(@RequestParam(defaultValue = "") String guardian, @RequestParam(defaultValue = "") String guardianRole,
			RedirectAttributes redirect) {
		Athlete self = this.access.self();
		boolean shared = this.consents.shares(self.id());
		try {
			this.consents.give(self.id(), isMinor(self) ? new Guardian(guardian, guardianRole) : null);
			redirect.addFlashAttribute("notice", Message.of(shared ? "sharing.agreed" : "sharing.given"));
		}
		catch (IllegalArgumentException ex) {
			redirect.addFlashAttribute("problem", Message.of("sharing.guardian.missing"));
		}
		return PAGE;
	}

	/** Being kept on file is no consent: only what the athlete said last counts. */
	private boolean agreed(Athlete athlete) {
		return this.consents.of(athlete.id())
			.stream()
			.findFirst()
			.filter((said) -> said.kind() == Consent.Kind.GIVEN)
			.isPresent();
	}

	private boolean isMinor(Athlete athlete) {
		return athlete.isUnder18(this.today.of(athlete));
	}

	/**
	 * A consent as the page shows it.
	 *
	 * @param kind what was said
	 * @param at when, in the athlete's zone
	 * @param by name of who said so; absent where it is not to be seen
	 * @param basis on whose word data are kept; absent for other kinds
	 * @param guardian who agreed for the athlete; absent for an adult
	 * @param guardianRole what the guardian is to the athlete
	 */
	public record Said(Consent.Kind kind, LocalDateTime at, @Nullable String by, @Nullable Basis basis,
			@Nullable String guardian, @Nullable String guardianRole) {

		static Said of(Consent consent, ZoneId zone) {
			return new Said(consent.kind(), LocalDateTime.ofInstant(consent.at(), zone), consent.by(), consent.basis(),
					consent.guardian(), consent.guardianRole());
		}

	}

}
