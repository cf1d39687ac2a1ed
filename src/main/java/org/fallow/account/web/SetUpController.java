package org.fallow.account.web;

import java.time.ZoneId;
import java.util.List;

import org.fallow.account.Accounts;
import org.fallow.account.SettingUp;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The page that makes the first club, team and coach. It is open until there is an
 * account, to whoever can read the log.
 */
@Controller
class SetUpController {

	private final Accounts accounts;

	private final SettingUp settingUp;

	SetUpController(Accounts accounts, SettingUp settingUp) {
		this.accounts = accounts;
		this.settingUp = settingUp;
	}

	@GetMapping("/set-up")
	String show(Model model) {
		if (!this.accounts.none()) {
			return "redirect:/sign-in";
		}
		model.addAttribute("form", SetUpForm.blank(ZoneId.systemDefault()));
		return "account/set-up";
	}

	@PostMapping("/set-up")
	String setUp(@ModelAttribute("form") SetUpForm form, BindingResult binding, RedirectAttributes redirect) {
		List<Problem> problems = this.settingUp.setUp(form.setUp());
		if (problems.isEmpty()) {
			redirect.addFlashAttribute("notice", Message.of("set-up.ready"));
			return "redirect:/sign-in";
		}
		for (Problem problem : problems) {
			binding.rejectValue(problem.field(), problem.message().code(), problem.message().arguments().toArray(),
					null);
		}
		return "account/set-up";
	}

}
