package org.fallow.account.web;

import jakarta.servlet.http.HttpSession;
import org.fallow.account.Accounts;
import org.fallow.account.OwnPassword;
import org.fallow.team.AthleteAccess;
import org.fallow.wording.Message;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * Anybody's own password. A change ends the person's other sessions.
 */
@Controller
class PasswordController {

	private final AthleteAccess access;

	private final OwnPassword password;

	private final SignIns signIns;

	PasswordController(AthleteAccess access, OwnPassword password, SignIns signIns) {
		this.access = access;
		this.password = password;
		this.signIns = signIns;
	}

	@GetMapping("/password")
	String show(Model model) {
		model.addAttribute("form", PasswordForm.blank());
		return page(model);
	}

	@PostMapping("/password")
	String change(@ModelAttribute("form") PasswordForm form, BindingResult result, Model model, HttpSession session,
			RedirectAttributes redirect) {
		String present = PasswordForm.typed(form.present());
		String wanted = PasswordForm.typed(form.wanted());
		if (!wanted.equals(PasswordForm.typed(form.again()))) {
			result.rejectValue("again", "password.again.differs");
		}
		else if (wanted.equals(present)) {
			result.rejectValue("wanted", "password.same");
		}
		else {
			this.password.change(this.access.person(), present, wanted).ifPresent((problem) -> reject(result, problem));
		}
		if (result.hasErrors()) {
			return page(model);
		}
		this.signIns.endAll(this.access.person(), session.getId());
		redirect.addFlashAttribute("notice", Message.of("password.changed"));
		return "redirect:/password";
	}

	private static void reject(BindingResult result, Message problem) {
		String field = problem.code().startsWith("password.present") ? "present" : "wanted";
		result.rejectValue(field, problem.code(), problem.arguments().toArray(), null);
	}

	private String page(Model model) {
		model.addAttribute("shortest", Accounts.SHORTEST_PASSWORD);
		return "account/password";
	}

}
