package org.fallow.contact.web;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.TraceSubject;
import org.fallow.contact.Marks;
import org.fallow.contact.NeedLines;
import org.fallow.contact.Needs;
import org.fallow.contact.core.Mark;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
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
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What one athlete needs a word about, and what coaches noted of it. */
@Controller
class WordsPage {

	private final AthleteAccess access;

	private final Squad squad;

	private final Recording recording;

	private final Needs needs;

	private final Marks marks;

	WordsPage(AthleteAccess access, Squad squad, Recording recording, Needs needs, Marks marks) {
		this.access = access;
		this.squad = squad;
		this.recording = recording;
		this.needs = needs;
		this.marks = marks;
	}

	@GetMapping("/athletes/{id}/words")
	String show(@PathVariable UUID id, Model model) {
		return show(this.access.coached(id, TraceSubject.CONTACT), null, List.of(), model);
	}

	@PostMapping("/athletes/{id}/words")
	String mark(@PathVariable UUID id, @ModelAttribute WordForm form, Model model, RedirectAttributes redirect) {
		Athlete athlete = this.access.coached(id);
		List<Problem> problems = this.marks.mark(athlete.id(), form.about(), form.day(), form.marked(), form.words(),
				form.shares(), Submission.page(this.access.person(), Role.COACH, Typed.request(form.requestId())));
		if (!problems.isEmpty()) {
			return show(athlete, form, problems, model);
		}
		redirect.addFlashAttribute("notice",
				Message.of(form.shares() ? "words.saved.shared" : "words.saved", athlete.name()));
		return "redirect:/board";
	}

	private String show(Athlete athlete, @Nullable WordForm form, List<Problem> problems, Model model) {
		LocalDate today = this.recording.today(athlete);
		NeedLines lines = this.needs.lines(List.of(athlete.id()), today);
		ZoneId zone = this.squad.zoneOf(this.access.person()).orElse(ZoneOffset.UTC);
		boolean found = form != null
				&& Stream.concat(lines.open().stream(), lines.off().stream()).anyMatch(form::isAbout);
		model.addAttribute("athleteId", athlete.id().value());
		model.addAttribute("name", athlete.name());
		model.addAttribute("needs", lines);
		model.addAttribute("offDays", Needs.OFF_DAYS);
		model.addAttribute("typed", form);
		model.addAttribute("typedElsewhere", (form == null || found) ? null : form.words());
		model.addAttribute("problems", problems);
		model.addAttribute("marks",
				this.marks.of(athlete.id()).stream().map((mark) -> MarkLine.of(mark, zone)).toList());
		model.addAttribute("under18", athlete.isUnder18(today));
		return "contact/words";
	}

	/**
	 * A mark as the page lists it.
	 *
	 * @param mark as noted
	 * @param at when, in the reader's zone
	 */
	public record MarkLine(Mark mark, LocalDateTime at) {

		static MarkLine of(Mark mark, ZoneId zone) {
			return new MarkLine(mark, LocalDateTime.ofInstant(mark.at(), zone));
		}

	}

}
