package org.fallow.exchange.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.exchange.csv.ProgrammeFile;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Group;
import org.fallow.team.NoSuchAthlete;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.fallow.training.Programmes;
import org.fallow.training.core.ProgrammeWeek;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** A group's programme from a file and to a file. */
@Controller
class ProgrammeFilePage {

	private static final int WEEKS_BACK = 26;

	private static final int WEEKS_AHEAD = 52;

	private static final long MOST_BYTES = 1_000_000;

	private final AthleteAccess access;

	private final Squad squad;

	private final Programmes programmes;

	private final TransactionTemplate transaction;

	private final Today today;

	ProgrammeFilePage(AthleteAccess access, Squad squad, Programmes programmes, PlatformTransactionManager transactions,
			Today today) {
		this.access = access;
		this.squad = squad;
		this.programmes = programmes;
		this.transaction = new TransactionTemplate(transactions);
		this.today = today;
	}

	@GetMapping("/programme/{id}/file")
	String show(@PathVariable UUID id, Model model) {
		return page(own(id), List.of(), model);
	}

	/** Half a year back and a year ahead. */
	@GetMapping("/programme/{id}/file.csv")
	ResponseEntity<String> take(@PathVariable UUID id) {
		Group group = own(id);
		LocalDate today = this.today.ofTeam(group.teamId());
		String text = ProgrammeFile.write(
				this.programmes.weeks(group.id(), today.minusWeeks(WEEKS_BACK), today.plusWeeks(WEEKS_AHEAD)).values());
		return ResponseEntity.ok()
			.contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
			.header(HttpHeaders.CONTENT_DISPOSITION,
					ContentDisposition.attachment().filename("programme.csv").build().toString())
			.body(text);
	}

	@PostMapping("/programme/{id}/file")
	String receive(@PathVariable UUID id, @RequestParam(required = false) @Nullable MultipartFile file, Model model,
			RedirectAttributes redirect) {
		Group group = own(id);
		if (file == null || file.isEmpty() || file.getSize() > MOST_BYTES) {
			boolean large = file != null && !file.isEmpty();
			return page(group, List.of(Problem.of("file", large ? "programmeFile.large" : "programmeFile.none")),
					model);
		}
		ProgrammeFile.Result result = ProgrammeFile.read(text(file));
		List<Problem> problems = new ArrayList<>(result.problems());
		if (problems.isEmpty() && !store(group, result.weeks())) {
			problems.add(Problem.of("file", "programme.changed-elsewhere"));
		}
		if (!problems.isEmpty()) {
			return page(group, problems, model);
		}
		redirect.addFlashAttribute("notice", Message.of("programmeFile.done", result.weeks().size()));
		return "redirect:/programme/" + id + "?week=" + result.weeks().get(0).monday();
	}

	/** All weeks or none. */
	private boolean store(Group group, List<ProgrammeWeek> weeks) {
		PersonId by = this.access.person();
		return Boolean.TRUE.equals(this.transaction.execute((status) -> {
			for (ProgrammeWeek week : weeks) {
				int revision = this.programmes.week(group.id(), week.monday()).revision();
				if (!this.programmes.write(group.id(), week, revision, by)) {
					status.setRollbackOnly();
					return false;
				}
			}
			return true;
		}));
	}

	private static String text(MultipartFile file) {
		try {
			return new String(file.getBytes(), StandardCharsets.UTF_8);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static String page(Group group, List<Problem> problems, Model model) {
		model.addAttribute("group", group);
		model.addAttribute("fileProblems", problems);
		return "exchange/programme-file";
	}

	private Group own(UUID id) {
		if (!this.access.mayProgramme(id)) {
			throw new NoSuchAthlete(new PersonId(id));
		}
		return this.squad.group(id).orElseThrow(() -> new NoSuchAthlete(new PersonId(id)));
	}

}
