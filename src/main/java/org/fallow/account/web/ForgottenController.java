package org.fallow.account.web;

import org.fallow.account.ResetMail;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.context.request.WebRequest;

/**
 * For those who forgot their password. It answers everybody alike.
 */
@Controller
class ForgottenController {

	private final ResetMail mail;

	ForgottenController(ResetMail mail) {
		this.mail = mail;
	}

	@GetMapping("/forgotten")
	String show(Model model, WebRequest request) {
		boolean sent = request.getParameterMap().containsKey("sent");
		model.addAttribute("mail", this.mail.isPossible());
		model.addAttribute("sent", sent && this.mail.isPossible());
		return "account/forgotten";
	}

	@PostMapping("/forgotten")
	String send(@RequestParam(defaultValue = "") String username) {
		if (this.mail.isPossible()) {
			this.mail.send(username);
		}
		return "redirect:/forgotten?sent";
	}

}
