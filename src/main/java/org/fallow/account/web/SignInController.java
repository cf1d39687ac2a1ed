package org.fallow.account.web;

import java.time.Duration;
import java.util.List;

import jakarta.servlet.http.HttpSession;
import org.fallow.access.NetworkAddress;
import org.fallow.account.Accounts;
import org.fallow.account.DemoAccounts;
import org.fallow.account.TooManyTries;
import org.fallow.team.Standing;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.context.request.WebRequest;

/**
 * The sign-in page, and where a person goes after it.
 */
@Controller
class SignInController {

	/** Reasons to be here that the address can name. */
	private static final List<String> WHY = List.of("signed-out", "signed-out-everywhere", "expired", "reset",
			"set-aside");

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
		model.addAttribute("clear", isInTheClear(request));
		model.addAttribute("failed", request.getParameterMap().containsKey("failed"));
		model.addAttribute("wait", wait(request.getParameter("wait")));
		WHY.stream()
			.filter(request.getParameterMap()::containsKey)
			.findFirst()
			.ifPresent((why) -> model.addAttribute("why", Message.of("sign-in." + why)));
		DemoAccounts demo = this.demoAccounts.getIfAvailable();
		model.addAttribute("demoAccounts", (demo == null) ? List.of() : demo.list());
		return "account/sign-in";
	}

	/** A password typed here would cross a network for everybody to read. */
	private static boolean isInTheClear(WebRequest request) {
		return request instanceof ServletWebRequest asked && !asked.isSecure()
				&& NetworkAddress.of(asked.getRequest().getRemoteAddr()).filter(NetworkAddress::isHere).isEmpty();
	}

	/** The address says how long; nobody has to wait longer than the longest wait. */
	private static @Nullable Message wait(@Nullable String seconds) {
		if (seconds == null || !seconds.matches("[0-9]{1,3}")) {
			return null;
		}
		return TooManyTries.message("sign-in.wait", Duration.ofSeconds(Long.parseLong(seconds)));
	}

	@GetMapping("/")
	String home(HttpSession session) {
		if (session.getAttribute(JoinController.INVITATION) != null) {
			return "redirect:/join";
		}
		Standing standing = this.here.standing();
		if (standing.coach()) {
			return "redirect:/board";
		}
		return standing.athlete() ? "redirect:/today" : standing.owner() ? "redirect:/club" : "redirect:/account";
	}

}
