package org.fallow.account.web;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import org.fallow.account.Accounts;
import org.fallow.account.Passkeys;
import org.fallow.platform.Language;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Squad;
import org.fallow.wording.Message;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * Everybody's own account: the password, the passkeys, and where one is signed in.
 */
@Controller
class AccountController {

	/** What a form sends for no language of one's own. */
	private static final String AS_BROWSER = "browser";

	private static final List<String> LANGUAGES = Arrays.stream(Language.values()).map(Language::tag).toList();

	private final AthleteAccess access;

	private final Accounts accounts;

	private final Squad squad;

	private final Passkeys passkeys;

	private final SignIns signIns;

	AccountController(AthleteAccess access, Accounts accounts, Squad squad, Passkeys passkeys, SignIns signIns) {
		this.access = access;
		this.accounts = accounts;
		this.squad = squad;
		this.passkeys = passkeys;
		this.signIns = signIns;
	}

	@GetMapping("/account")
	String show(HttpSession session, Model model) {
		return page(session, this.accounts.language(this.access.person()).map(Language::tag).orElse(AS_BROWSER), model);
	}

	private String page(HttpSession session, String language, Model model) {
		ZoneId zone = this.squad.zoneOf(this.access.person()).orElse(ZoneOffset.UTC);
		model.addAttribute("passkeys",
				this.passkeys.of(this.access.person()).stream().map((key) -> PasskeyLine.of(key, zone)).toList());
		List<SignInLine> lines = this.signIns.of(this.access.person(), session.getId())
			.stream()
			.map((one) -> SignInLine.of(one, zone))
			.toList();
		model.addAttribute("signIns", lines);
		model.addAttribute("longestLabel", Passkeys.LONGEST_LABEL);
		model.addAttribute("languages", LANGUAGES);
		model.addAttribute("language", language);
		return "account/account";
	}

	@PostMapping("/account/language")
	String speak(@RequestParam(defaultValue = "") String language, HttpSession session, Model model,
			RedirectAttributes redirect) {
		Optional<Language> chosen = Language.tagged(language);
		if (chosen.isEmpty() && !language.equals(AS_BROWSER)) {
			model.addAttribute("problem", Message.of("entry.code.unknown"));
			return page(session, "", model);
		}
		this.accounts.speak(this.access.person(), chosen.orElse(null));
		redirect.addFlashAttribute("notice", Message.of("account.language.saved"));
		return "redirect:/account";
	}

	@PostMapping("/account/sessions/end")
	String end(@RequestParam(defaultValue = "") String session, RedirectAttributes redirect) {
		this.signIns.end(this.access.person(), session);
		redirect.addFlashAttribute("notice", Message.of("account.session.ended"));
		return "redirect:/account";
	}

	@PostMapping("/account/sessions/end-all")
	String endAll(HttpServletRequest request) {
		this.signIns.endAll(this.access.person(), request.getSession().getId());
		request.getSession().invalidate();
		return "redirect:/sign-in?signed-out-everywhere";
	}

	/**
	 * A session on the page.
	 *
	 * @param handle names it
	 * @param since when the person signed in
	 * @param used when a page was last asked for
	 * @param device in words
	 * @param present whether it is this one
	 */
	public record SignInLine(String handle, ZonedDateTime since, ZonedDateTime used, Device device, boolean present) {

		static SignInLine of(SignIns.SignIn one, ZoneId zone) {
			return new SignInLine(one.handle(), at(one.since(), zone), at(one.used(), zone), one.device(),
					one.present());
		}

	}

	/**
	 * A passkey on the page.
	 *
	 * @param id names it
	 * @param label what the person calls it
	 * @param since when it was made
	 * @param used when it last signed the person in
	 */
	public record PasskeyLine(String id, String label, ZonedDateTime since, ZonedDateTime used) {

		static PasskeyLine of(Passkeys.Passkey key, ZoneId zone) {
			return new PasskeyLine(key.id(), key.label(), at(key.since(), zone), at(key.used(), zone));
		}

	}

	private static ZonedDateTime at(Instant instant, ZoneId zone) {
		return instant.atZone(zone);
	}

}
