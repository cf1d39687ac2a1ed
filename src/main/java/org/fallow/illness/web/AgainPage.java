package org.fallow.illness.web;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.illness.AskedAgain;
import org.fallow.illness.MeasuringAgain;
import org.fallow.illness.NewMeasurement;
import org.fallow.illness.RedFlagsToday;
import org.fallow.illness.core.FastAtRest;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BeanPropertyBindingResult;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * What a morning that is saved asks at once, one thing after the other: red flags and a
 * count by finger, to lie some minutes and measure again, whether anything aches or feels
 * off. Everything is stored when it is shown. Always the signed-in athlete's own.
 */
@Controller
class AgainPage {

	private final AthleteAccess access;

	private final MeasuringAgain again;

	private final RedFlagsToday redFlags;

	AgainPage(AthleteAccess access, MeasuringAgain again, RedFlagsToday redFlags) {
		this.access = access;
		this.again = again;
		this.redFlags = redFlags;
	}

	@GetMapping("/again")
	String show(Model model) {
		return show(this.access.self(), AgainForm.empty(), List.of(), model);
	}

	@PostMapping("/again")
	String save(@ModelAttribute AgainForm form, Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		AgainReader reader = new AgainReader(form);
		NewMeasurement measured = reader.measurement();
		if (measured == null) {
			return show(athlete, form, reader.problems(), model);
		}
		Saved saved = this.again.save(athlete.id(), measured, submission(athlete, form));
		if (saved instanceof Saved.Refused refused) {
			return show(athlete, form, refused.problems(), model);
		}
		redirect.addFlashAttribute("notice", Message.of("again.stored"));
		return this.again.asked(athlete.id()).anything() ? "redirect:/again" : "redirect:/today";
	}

	@PostMapping("/again/red-flags")
	String tell(@ModelAttribute AgainForm form, Model model) {
		Athlete athlete = this.access.self();
		Set<Symptom> ticked = EnumSet.noneOf(Symptom.class);
		form.ticked()
			.forEach((code) -> Problems.oneOf(Symptom.class, code).filter(Symptom::isRedFlag).ifPresent(ticked::add));
		if (ticked.isEmpty()) {
			return show(athlete, form, List.of(Problem.of("redFlags", "again.red-flags.none")), model);
		}
		Saved saved = this.redFlags.add(athlete.id(), ticked, submission(athlete, form));
		if (saved instanceof Saved.Refused refused) {
			return show(athlete, form, refused.problems(), model);
		}
		return "redirect:/slip";
	}

	private static Submission submission(Athlete athlete, AgainForm form) {
		UUID request = Problems.requestId(form.requestId(), Submission.newRequestId());
		return Submission.page(athlete.id(), Role.ATHLETE, request);
	}

	/** What was typed comes back, with every problem at its field. */
	private String show(Athlete athlete, AgainForm form, List<Problem> problems, Model model) {
		AskedAgain asked = this.again.asked(athlete.id());
		MorningEntry entry = asked.entry();
		BindingResult result = new BeanPropertyBindingResult(form, "form");
		Problems.show(result, problems);
		model.addAttribute("form", form);
		model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", result);
		model.addAttribute("asked", asked);
		model.addAttribute("day", asked.day());
		model.addAttribute("first", first(asked));
		model.addAttribute("method",
				(form.method() != null) ? form.method() : (entry == null) ? null : String.valueOf(entry.method()));
		model.addAttribute("posture",
				(form.posture() != null) ? form.posture() : (entry == null) ? null : String.valueOf(entry.posture()));
		model.addAttribute("lying", entry == null || entry.posture() == Posture.LYING);
		model.addAttribute("methods", Method.values());
		model.addAttribute("counts", Arrays.stream(Method.values()).filter((one) -> one.stepBpm() > 0).toList());
		model.addAttribute("postures", Posture.values());
		model.addAttribute("redFlagSymptoms", Arrays.stream(Symptom.values()).filter(Symptom::isRedFlag).toList());
		model.addAttribute("minutes", FastAtRest.LIE_MINUTES);
		model.addAttribute("hours", FastAtRest.WITHIN_MINUTES / 60);
		model.addAttribute("requestId", Submission.newRequestId().toString());
		return "illness/again";
	}

	private static @Nullable Double first(AskedAgain asked) {
		MorningEntry entry = asked.entry();
		Double counted = asked.countedBpm();
		return (counted != null) ? counted : (entry == null) ? null : entry.rhrBpm();
	}

}
