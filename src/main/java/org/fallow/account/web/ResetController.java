package org.fallow.account.web;

import java.util.Optional;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import org.fallow.access.PersonId;
import org.fallow.access.Secret;
import org.fallow.account.Accounts;
import org.fallow.account.OwnPassword;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.SessionAttribute;

/**
 * Setting a password by a link. The link's secret leaves the address bar at once, and
 * only its hash is kept; links that do not work all lead to the same page, whatever the
 * reason.
 */
@Controller
class ResetController {

	private static final String LINK = "fallow.reset";

	private final OwnPassword password;

	private final SignIns signIns;

	ResetController(OwnPassword password, SignIns signIns) {
		this.password = password;
		this.signIns = signIns;
	}

	/**
	 * Whoever knew the session's id before does not know the one that holds the link's
	 * hash.
	 */
	@GetMapping("/reset/{token}")
	String follow(@PathVariable String token, HttpServletRequest request, HttpServletResponse response) {
		String link = new Secret(token).hash();
		if (this.password.usernameOf(link).isEmpty()) {
			return gone(response);
		}
		if (request.getSession(false) != null) {
			request.changeSessionId();
		}
		request.getSession().setAttribute(LINK, link);
		return "redirect:/reset";
	}

	@GetMapping("/reset")
	String show(@SessionAttribute(name = LINK, required = false) @Nullable String link, Model model,
			HttpServletResponse response) {
		model.addAttribute("form", PasswordForm.blank());
		return page(link, model, response);
	}

	@PostMapping("/reset")
	String reset(@SessionAttribute(name = LINK, required = false) @Nullable String link,
			@ModelAttribute("form") PasswordForm form, BindingResult result, Model model, HttpSession session,
			HttpServletResponse response) {
		if (link == null || this.password.usernameOf(link).isEmpty()) {
			return gone(response);
		}
		String wanted = PasswordForm.typed(form.wanted());
		if (!wanted.equals(PasswordForm.typed(form.again()))) {
			result.rejectValue("again", "password.again.differs");
		}
		else {
			this.password.problem(link, wanted)
				.ifPresent(
						(problem) -> result.rejectValue("wanted", problem.code(), problem.arguments().toArray(), null));
		}
		return result.hasErrors() ? page(link, model, response) : use(link, wanted, session, response);
	}

	private String use(String link, String wanted, HttpSession session, HttpServletResponse response) {
		Optional<PersonId> person = this.password.reset(link, wanted);
		if (person.isEmpty()) {
			return gone(response);
		}
		session.invalidate();
		this.signIns.endAll(person.get(), null);
		return "redirect:/sign-in?reset";
	}

	private String page(@Nullable String link, Model model, HttpServletResponse response) {
		Optional<String> username = (link == null) ? Optional.empty() : this.password.usernameOf(link);
		if (username.isEmpty()) {
			return gone(response);
		}
		model.addAttribute("username", username.get());
		model.addAttribute("shortest", Accounts.SHORTEST_PASSWORD);
		return "account/reset";
	}

	private static String gone(HttpServletResponse response) {
		response.setStatus(HttpStatus.NOT_FOUND.value());
		return "account/reset-gone";
	}

}
