package org.fallow.team.web;

import java.util.List;

import org.fallow.team.Accounts;
import org.fallow.team.DemoAccounts;
import org.fallow.team.Role;
import org.fallow.team.SignedInPerson;

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

	SignInController(Accounts accounts, ObjectProvider<DemoAccounts> demoAccounts) {
		this.accounts = accounts;
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
		return "team/sign-in";
	}

	@GetMapping("/")
	String home(@AuthenticationPrincipal SignedInPerson person) {
		if (this.accounts.hasIssuedPassword(person.personId())) {
			return "redirect:/password";
		}
		return person.is(Role.COACH) ? "redirect:/board" : "redirect:/today";
	}

}
