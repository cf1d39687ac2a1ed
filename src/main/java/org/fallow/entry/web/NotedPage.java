package org.fallow.entry.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.fallow.entry.DeviceChange;
import org.fallow.entry.Method;
import org.fallow.entry.NotedChanges;
import org.fallow.entry.Saved;
import org.fallow.entry.Submission;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * What is noted beside the morning entry: a vaccination, a change about the measuring.
 * Always the signed-in athlete's own. What is wrong comes back as a sentence above the
 * morning entry.
 */
@Controller
class NotedPage {

	private static final String BACK = "redirect:/morning";

	private final AthleteAccess access;

	private final NotedChanges changes;

	NotedPage(AthleteAccess access, NotedChanges changes) {
		this.access = access;
		this.changes = changes;
	}

	@PostMapping("/vaccination")
	String vaccinated(@RequestParam(required = false) @Nullable String on,
			@RequestParam(required = false) @Nullable String requestId, RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		List<Problem> problems = new ArrayList<>();
		Optional<LocalDate> day = Typed.day(on, "on", problems);
		if (day.isPresent()) {
			Saved saved = this.changes.vaccinated(athlete.id(), day.get(), submission(athlete, requestId));
			problems.addAll((saved instanceof Saved.Refused refused) ? refused.problems() : List.of());
		}
		return answer(problems, "noted.vaccination", redirect);
	}

	@PostMapping("/device")
	String measuredAnew(@RequestParam(required = false) @Nullable String on,
			@RequestParam(required = false) @Nullable String what,
			@RequestParam(required = false) @Nullable String method,
			@RequestParam(required = false) @Nullable String requestId, RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		List<Problem> problems = new ArrayList<>();
		Optional<LocalDate> day = Typed.day(on, "on", problems);
		Optional<DeviceChange.What> changed = Typed.oneOf(DeviceChange.What.class, what);
		Optional<Method> used = Typed.oneOf(Method.class, method);
		if (changed.isEmpty() || (used.isEmpty() && !Typed.words(method).isEmpty())) {
			problems.add(Problem.of("what", "entry.code.unknown"));
		}
		if (problems.isEmpty()) {
			Saved saved = this.changes.measuredAnew(athlete.id(), day.orElseThrow(), changed.orElseThrow(),
					used.orElse(null), submission(athlete, requestId));
			problems.addAll((saved instanceof Saved.Refused refused) ? refused.problems() : List.of());
		}
		return answer(problems, "noted.device", redirect);
	}

	private static Submission submission(Athlete athlete, @Nullable String requestId) {
		return Submission.page(athlete.id(), Role.ATHLETE, Typed.requestId(requestId));
	}

	private static String answer(List<Problem> problems, String noted, RedirectAttributes redirect) {
		redirect.addFlashAttribute("notice", problems.isEmpty() ? Message.of(noted) : problems.get(0).message());
		return BACK;
	}

}
