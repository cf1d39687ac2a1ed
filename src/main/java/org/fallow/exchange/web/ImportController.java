package org.fallow.exchange.web;

import java.util.EnumMap;
import java.util.Map;
import java.util.UUID;

import jakarta.servlet.http.HttpServletResponse;
import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.ImportField;
import org.fallow.exchange.imports.Choice;
import org.fallow.exchange.imports.FilePeople;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.ImportPeople;
import org.fallow.exchange.imports.ImportWorker;
import org.fallow.exchange.imports.Imports;
import org.fallow.platform.DatabaseState;
import org.fallow.platform.DiskRoom;
import org.fallow.account.SignedInPerson;

import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;

/**
 * The pages of one import: its columns, its progress, its summary.
 */
@Controller
class ImportController {

	private static final int PROBLEMS_ON_A_PAGE = 50;

	private final Imports imports;

	private final ImportPeople people;

	private final ImportWorker worker;

	private final OwnJobs jobs;

	private final DatabaseState database;

	ImportController(Imports imports, ImportPeople people, ImportWorker worker, OwnJobs jobs, DatabaseState database) {
		this.database = database;
		this.imports = imports;
		this.people = people;
		this.worker = worker;
		this.jobs = jobs;
	}

	@GetMapping("/import/{id}/mapping")
	String mapping(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id, Model model) {
		OwnJobs.Found found = this.jobs.find(id, person.personId());
		if (found.job().state() != ImportJob.State.MAPPING) {
			return "redirect:/import/" + id;
		}
		model.addAttribute("form", new MappingForm(Method.STRAP.name(), Posture.LYING.name()));
		return mappingPage(found, ColumnMapping.guess(found.job().headers()), model);
	}

	@PostMapping("/import/{id}/mapping")
	String start(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id,
			@ModelAttribute("form") MappingForm form, BindingResult binding, @RequestParam Map<String, String> sent,
			Model model) {
		OwnJobs.Found found = this.jobs.find(id, person.personId());
		ColumnMapping mapping = mapping(sent).withDefaults(form.takenBy().orElse(null), form.takenIn().orElse(null));
		if (form.isUnknown()) {
			binding.reject("entry.code.unknown");
		}
		mapping.problems(found.job().headers().size())
			.forEach((problem) -> binding.reject(problem.message().code(), problem.message().code()));
		if (binding.hasErrors()) {
			return mappingPage(found, mapping, model);
		}
		if (found.job().state() != ImportJob.State.MAPPING) {
			return "redirect:/import/" + id;
		}
		FilePeople named = this.people.of(found.job(), mapping).orElse(null);
		if (named == null) {
			binding.reject("mapping.too-many-people", new Object[] { ImportPeople.MOST }, null);
			return mappingPage(found, mapping, model);
		}
		return next(found.job(), Choice.ofPeopleHere(mapping), named);
	}

	/** What is not plain is asked before anything is taken in. */
	private String next(ImportJob job, Choice choice, FilePeople named) {
		if (named.asks()) {
			this.imports.choose(job.id(), choice);
			return "redirect:/import/" + job.id() + "/people";
		}
		if (this.imports.start(job.id(), choice)) {
			this.worker.submit(job.id(), job.actor());
		}
		return "redirect:/import/" + job.id();
	}

	private static ColumnMapping mapping(Map<String, String> sent) {
		EnumMap<ImportField, Integer> columns = new EnumMap<>(ImportField.class);
		for (ImportField field : ImportField.values()) {
			String index = sent.getOrDefault("column." + field, "");
			if (!index.isEmpty()) {
				columns.put(field, index.matches("\\d{1,4}") ? Integer.parseInt(index) : -1);
			}
		}
		return new ColumnMapping(columns, null, null);
	}

	private String mappingPage(OwnJobs.Found found, ColumnMapping mapping, Model model) {
		model.addAttribute("job", found.view());
		model.addAttribute("headers", found.job().headers());
		model.addAttribute("fields", FieldView.all(mapping));
		model.addAttribute("samples", this.imports.samples(found.job().id()));
		model.addAttribute("methods", Method.values());
		model.addAttribute("postures", Posture.values());
		return "exchange/mapping";
	}

	@GetMapping("/import/{id}")
	String show(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id,
			@RequestParam(defaultValue = "1") int page, Model model) {
		OwnJobs.Found found = this.jobs.find(id, person.personId());
		model.addAttribute("job", found.view());
		return switch (found.job().state()) {
			case MAPPING -> "redirect:/import/" + id + ((found.job().choice() == null) ? "/mapping" : "/people");
			case RUNNING -> running(model);
			case DONE, FAILED -> summary(id, page, model);
		};
	}

	private String running(Model model) {
		model.addAttribute("diskFull", this.database.disk() == DiskRoom.Level.FULL);
		return "exchange/progress";
	}

	private String summary(UUID id, int page, Model model) {
		int count = this.imports.problemCount(id);
		int pages = Math.max(1, (count + PROBLEMS_ON_A_PAGE - 1) / PROBLEMS_ON_A_PAGE);
		int shown = Math.max(1, Math.min(page, pages));
		model.addAttribute("badRows", this.imports.problems(id, (shown - 1) * PROBLEMS_ON_A_PAGE, PROBLEMS_ON_A_PAGE));
		model.addAttribute("badRowsLeftOff", 0);
		model.addAttribute("page", shown);
		model.addAttribute("pages", pages);
		return "exchange/summary";
	}

	@GetMapping("/import/{id}/progress")
	String progress(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id, Model model,
			HttpServletResponse response) {
		OwnJobs.Found found = this.jobs.find(id, person.personId());
		if (found.job().state() != ImportJob.State.RUNNING) {
			response.setHeader("HX-Redirect", "/import/" + id);
		}
		model.addAttribute("job", found.view());
		return running(model) + " :: progress";
	}

}
