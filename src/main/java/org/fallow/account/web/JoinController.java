package org.fallow.account.web;

import java.util.List;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Secret;
import org.fallow.account.Joining;
import org.fallow.account.Newcomer;
import org.fallow.team.Invitation;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * Accepting an invitation. The link's secret leaves the address at once: the session
 * keeps its hash. Opening the link uses nothing up, so that a preview does no harm.
 */
@Controller
class JoinController {

	static final String INVITATION = "fallow.invitation";

	private final Joining joining;

	private final CurrentPerson current;

	JoinController(Joining joining, CurrentPerson current) {
		this.joining = joining;
		this.current = current;
	}

	@GetMapping("/join/{secret}")
	String open(@PathVariable String secret, HttpServletRequest request) {
		if (request.getSession(false) != null) {
			request.changeSessionId();
		}
		request.getSession().setAttribute(INVITATION, new Secret(secret).hash());
		return "redirect:/join";
	}

	@GetMapping("/join")
	String show(HttpSession session, Model model) {
		Invitation invitation = invitation(session);
		model.addAttribute("form", JoinForm.of((invitation == null) ? "" : invitation.offer().name()));
		return page(invitation, model);
	}

	@PostMapping("/join")
	String join(@ModelAttribute("form") JoinForm form, BindingResult result, HttpSession session, Model model,
			RedirectAttributes redirect) {
		Newcomer newcomer = form.newcomer(result);
		Invitation invitation = invitation(session);
		if (invitation == null || result.hasErrors()) {
			return page(invitation, model);
		}
		String hash = (String) session.getAttribute(INVITATION);
		PersonId person = this.current.id().orElse(null);
		List<Problem> problems = (person == null) ? this.joining.join(hash, newcomer)
				: this.joining.join(hash, person, newcomer);
		if (!problems.isEmpty()) {
			problems.forEach((problem) -> reject(result, problem));
			return page(invitation(session), model);
		}
		session.removeAttribute(INVITATION);
		redirect.addFlashAttribute("notice", Message.of((person == null) ? "join.done.new" : "join.done"));
		return (person == null) ? "redirect:/sign-in" : "redirect:/";
	}

	private static void reject(BindingResult result, Problem problem) {
		Object[] arguments = problem.message().arguments().toArray();
		if (problem.field().isEmpty()) {
			result.reject(problem.message().code(), arguments, null);
		}
		else {
			result.rejectValue(problem.field(), problem.message().code(), arguments, null);
		}
	}

	private @Nullable Invitation invitation(HttpSession session) {
		return (session.getAttribute(INVITATION) instanceof String hash) ? this.joining.find(hash).orElse(null) : null;
	}

	private String page(@Nullable Invitation invitation, Model model) {
		if (invitation == null) {
			return "redirect:/join/gone";
		}
		model.addAttribute("invitation", invitation);
		model.addAttribute("onFile", this.joining.onFile(invitation));
		model.addAttribute("signedIn", this.current.id().isPresent());
		model.addAttribute("asksBirth", invitation.forAthlete() && this.joining.bornOnFile(invitation) == null);
		model.addAttribute("minor",
				invitation.onFile() && this.joining.asksGuardian(invitation, this.joining.bornOnFile(invitation)));
		return "account/join";
	}

	/** The same for whatever does not work, so that a guess learns nothing. */
	@GetMapping("/join/gone")
	@ResponseStatus(HttpStatus.GONE)
	String gone() {
		return "account/join-gone";
	}

}
