package org.fallow.exchange.web;

import java.beans.PropertyEditorSupport;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.exchange.csv.UnreadableFile;
import org.fallow.exchange.imports.Imports;
import org.fallow.account.SignedInPerson;
import org.fallow.team.Squad;
import org.fallow.team.Team;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.util.unit.DataSize;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.WebDataBinder;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.InitBinder;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.multipart.MultipartFile;

/**
 * The page that takes a file.
 */
@Controller
class UploadController {

	private static final int JOBS_SHOWN = 20;

	private final Imports imports;

	private final Squad squad;

	private final DataSize most;

	UploadController(Imports imports, Squad squad,
			@Value("${spring.servlet.multipart.max-file-size:50MB}") DataSize most) {
		this.imports = imports;
		this.squad = squad;
		this.most = most;
	}

	@GetMapping("/import")
	String show(@AuthenticationPrincipal SignedInPerson person, Model model) {
		model.addAttribute("form", new ImportForm(null, null));
		return page(person.personId(), model);
	}

	/** A file that comes as text is none, and so is a team that is no id. */
	@InitBinder
	void readNothingElse(WebDataBinder binder) {
		binder.registerCustomEditor(MultipartFile.class, new PropertyEditorSupport() {
			@Override
			public void setAsText(String text) {
				setValue(null);
			}
		});
		binder.registerCustomEditor(UUID.class, new PropertyEditorSupport() {
			@Override
			public void setAsText(String text) {
				setValue(id(text).orElse(null));
			}
		});
	}

	private static Optional<UUID> id(String text) {
		try {
			return Optional.of(UUID.fromString(text));
		}
		catch (IllegalArgumentException ex) {
			return Optional.empty();
		}
	}

	@PostMapping("/import")
	String receive(@AuthenticationPrincipal SignedInPerson person, @ModelAttribute("form") ImportForm form,
			BindingResult binding, Model model) {
		UUID teamId = form.teamId();
		MultipartFile file = form.file();
		if (teamId == null || !this.squad.leads(person.personId(), teamId)) {
			binding.rejectValue("teamId", "importFile.no-team");
		}
		if (file == null || Objects.requireNonNullElse(file.getOriginalFilename(), "").isBlank()) {
			binding.rejectValue("file", "importFile.missing");
		}
		if (teamId == null || file == null || binding.hasErrors()) {
			return page(person.personId(), model);
		}
		try {
			return "redirect:/import/" + receive(teamId, person.personId(), file) + "/mapping";
		}
		catch (UnreadableFile ex) {
			Message problem = ex.problem();
			binding.rejectValue("file", problem.code(), problem.arguments().toArray(), null);
			return page(person.personId(), model);
		}
	}

	private UUID receive(UUID teamId, PersonId coach, MultipartFile file) {
		try {
			Path copy = Files.createTempFile("fallow-import", ".csv");
			try {
				file.transferTo(copy);
				return this.imports.receive(teamId, coach, name(file.getOriginalFilename()), copy);
			}
			finally {
				Files.deleteIfExists(copy);
			}
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	/** Browsers may send a path, and file names may hold what no page should show. */
	private static String name(@Nullable String sent) {
		String name = Objects.requireNonNullElse(sent, "").replaceAll("\\p{Cntrl}", "");
		return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
	}

	private String page(PersonId coach, Model model) {
		List<Team> teams = this.squad.teamsLedBy(coach);
		model.addAttribute("teams", teams);
		model.addAttribute("maxMegabytes", this.most.toMegabytes());
		model.addAttribute("jobs", teams.stream()
			.flatMap((team) -> this.imports.latest(team.id(), JOBS_SHOWN).stream().map((job) -> JobView.of(job, team)))
			.sorted(Comparator.comparing(JobView::started).reversed())
			.limit(JOBS_SHOWN)
			.toList());
		return "exchange/import";
	}

}
