package org.fallow.contact.web;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.contact.ThreadMessage;
import org.fallow.contact.Threads;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.illness.Assessments;
import org.fallow.illness.AthleteStatus;
import org.fallow.illness.StageChange;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** The messages between an athlete and coaches, for both. */
@Controller
class ThreadPage {

	/** How many days back the decisions go that a message may be about by choice. */
	private static final int CHOICE_DAYS = 60;

	private final AthleteAccess access;

	private final Squad squad;

	private final Recording recording;

	private final Assessments assessments;

	private final Threads threads;

	ThreadPage(AthleteAccess access, Squad squad, Recording recording, Assessments assessments, Threads threads) {
		this.access = access;
		this.squad = squad;
		this.recording = recording;
		this.assessments = assessments;
		this.threads = threads;
	}

	@GetMapping("/thread")
	String own(@RequestParam(required = false) @Nullable String day, Model model) {
		return show(this.access.self(), ThreadForm.about(day), List.of(), model);
	}

	@GetMapping("/athletes/{id}/thread")
	String of(@PathVariable UUID id, @RequestParam(required = false) @Nullable String day, Model model) {
		return show(this.access.coached(id, TraceSubject.THREAD), ThreadForm.about(day), List.of(), model);
	}

	@PostMapping("/thread")
	String write(@ModelAttribute ThreadForm form, Model model, RedirectAttributes redirect) {
		return write(this.access.self(), form, Role.ATHLETE, "redirect:/thread", model, redirect);
	}

	@PostMapping("/athletes/{id}/thread")
	String writeTo(@PathVariable UUID id, @ModelAttribute ThreadForm form, Model model, RedirectAttributes redirect) {
		return write(this.access.coached(id), form, Role.COACH, "redirect:/athletes/" + id + "/thread", model,
				redirect);
	}

	private String write(Athlete athlete, ThreadForm form, Role role, String next, Model model,
			RedirectAttributes redirect) {
		List<Problem> problems = this.threads.write(athlete.id(), Typed.day(form.about()), form.text(),
				Submission.page(this.access.person(), role, Typed.request(form.requestId())));
		if (!problems.isEmpty()) {
			return show(athlete, form, problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("thread.sent"));
		return next;
	}

	private String show(Athlete athlete, ThreadForm form, List<Problem> problems, Model model) {
		PersonId reader = this.access.person();
		boolean own = athlete.id().equals(reader);
		LocalDate today = this.recording.today(athlete);
		ZoneId zone = this.squad.zoneOf(reader).orElse(ZoneOffset.UTC);
		List<ThreadMessage> messages = this.threads.of(athlete.id());
		Map<LocalDate, Message> decided = decided(athlete);
		LocalDate about = chosen(form, messages, today);
		model.addAttribute("athleteId", athlete.id().value());
		model.addAttribute("name", own ? null : athlete.name());
		model.addAttribute("lines",
				messages.stream()
					.map((message) -> ThreadLine.of(message, decided.get(message.about()), reader, zone))
					.toList());
		model.addAttribute("about", about);
		model.addAttribute("matters", matters(decided, about, today));
		model.addAttribute("body", form.text());
		model.addAttribute("longest", Threads.LONGEST);
		model.addAttribute("problems", problems);
		model.addAttribute("requestId", Submission.newRequestId());
		model.addAttribute("held", isHeld(athlete));
		model.addAttribute("under18", athlete.isUnder18(today));
		return "contact/thread";
	}

	/** The day asked for, or else that of the last message, or else today. */
	private static LocalDate chosen(ThreadForm form, List<ThreadMessage> messages, LocalDate today) {
		LocalDate asked = Typed.day(form.about());
		if (asked != null && !asked.isAfter(today) && !asked.isBefore(today.minusDays(Threads.ABOUT_DAYS))) {
			return asked;
		}
		LocalDate last = messages.isEmpty() ? today : messages.get(messages.size() - 1).about();
		return last.isBefore(today.minusDays(CHOICE_DAYS)) ? today : last;
	}

	/** What changed last on each day of the return. */
	private Map<LocalDate, Message> decided(Athlete athlete) {
		Map<LocalDate, Message> decided = new TreeMap<>();
		LocalDate from = this.recording.today(athlete).minusDays(Threads.ABOUT_DAYS);
		for (StageChange change : this.assessments.changes(List.of(athlete.id()), from)) {
			decided.put(change.day(), Message.of("decided." + change.decision().kind(), change.decision().fromStage(),
					change.decision().toStage()));
		}
		return decided;
	}

	private static List<About> matters(Map<LocalDate, Message> decided, LocalDate about, LocalDate today) {
		TreeSet<LocalDate> days = new TreeSet<>(Collections.reverseOrder());
		decided.keySet().stream().filter((day) -> day.isAfter(today.minusDays(CHOICE_DAYS))).forEach(days::add);
		days.add(today);
		days.add(about);
		return days.stream().map((day) -> new About(day, decided.get(day))).toList();
	}

	private boolean isHeld(Athlete athlete) {
		AthleteStatus status = this.assessments.status(List.of(athlete.id())).get(athlete.id());
		return status != null && status.latest() != null && Objects.requireNonNull(status.latest()).holding();
	}

	/**
	 * Something that a message can be about.
	 *
	 * @param day of the decision
	 * @param decided what changed on it; absent for a day like any other
	 */
	public record About(LocalDate day, @Nullable Message decided) {
	}

}
