package org.fallow.account.web;

import java.util.List;

import jakarta.servlet.http.HttpSession;
import org.fallow.account.Accounts;
import org.fallow.account.DemoAccounts;
import org.fallow.team.Standing;
import org.fallow.account.SignedInPerson;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.context.request.WebRequest;

/**
 * The sign-in page, and where a person goes after it.
 */
@Controller
class SignInController {

	private final Accounts accounts;

	private final ObjectProvider<DemoAccounts> demoAccounts;

	private final Here here;

	SignInController(Accounts accounts, Here here, ObjectProvider<DemoAccounts> demoAccounts) {
		this.accounts = accounts;
		this.here = here;
		this.demoAccounts = demoAccounts;
	}

	@GetMapping("/sign-in")
	String signIn(WebRequest request, Model model) {
		if (this.accounts.none()) {
			return "redirect:/set-up";
		}
		model.addAttribute("failed", request.getParameterMap().containsKey("failed"));
		model.addAttribute("signedOut", request.getParameterMap().containsKey("signed-out"));
		model.addAttribute("expired", request.getParameterMap().containsKey("expired"));
		DemoAccounts demo = this.demoAccounts.getIfAvailable();
		model.addAttribute("demoAccounts", (demo == null) ? List.of() : demo.list());
		return "account/sign-in";
	}

	@GetMapping("/")
	String home(@AuthenticationPrincipal SignedInPerson person, HttpSession session) {
		if (session.getAttribute(JoinController.INVITATION) != null) {
			return "redirect:/join";
		}
		if (this.accounts.hasIssuedPassword(person.personId())) {
			return "redirect:/password";
		}
		Standing standing = this.here.standing();
		if (standing.coach()) {
			return "redirect:/board";
		}
		return standing.athlete() ? "redirect:/today" : standing.owner() ? "redirect:/club" : "redirect:/password";
	}

}
