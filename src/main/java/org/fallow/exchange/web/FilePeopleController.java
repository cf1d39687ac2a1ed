package org.fallow.exchange.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

import org.fallow.account.SignedInPerson;
import org.fallow.exchange.imports.Choice;
import org.fallow.exchange.imports.Decision;
import org.fallow.exchange.imports.FilePeople;
import org.fallow.exchange.imports.ImportJob;
import org.fallow.exchange.imports.ImportPeople;
import org.fallow.exchange.imports.ImportWorker;
import org.fallow.exchange.imports.Imports;
import org.fallow.team.Basis;
import org.jspecify.annotations.Nullable;

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
 * The page that asks, before an import runs, what becomes of people the team does not
 * have and of names that are nearly somebody's.
 */
@Controller
class FilePeopleController {

	private static final String DECIDE = "decide.";

	private static final String NEW = "NEW";

	private static final String LEAVE = "LEAVE";

	private final Imports imports;

	private final ImportPeople people;

	private final ImportWorker worker;

	private final OwnJobs jobs;

	FilePeopleController(Imports imports, ImportPeople people, ImportWorker worker, OwnJobs jobs) {
		this.imports = imports;
		this.people = people;
		this.worker = worker;
		this.jobs = jobs;
	}

	@GetMapping("/import/{id}/people")
	String show(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id, Model model) {
		OwnJobs.Found found = this.jobs.find(id, person.personId());
		FilePeople named = named(found.job());
		if (named == null) {
			return "redirect:/import/" + id;
		}
		model.addAttribute("form", new FilePeopleForm(named.emptyTeam(), null));
		return page(found, named, Map.of(), model);
	}

	@PostMapping("/import/{id}/people")
	String start(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id,
			@ModelAttribute("form") FilePeopleForm form, BindingResult binding, @RequestParam Map<String, String> sent,
			Model model) {
		OwnJobs.Found found = this.jobs.find(id, person.personId());
		FilePeople named = named(found.job());
		Choice chosen = found.job().choice();
		if (named == null || chosen == null) {
			return "redirect:/import/" + id;
		}
		Map<String, Decision> decisions = decisions(named, sent);
		boolean create = Boolean.TRUE.equals(form.createPeople());
		boolean adds = create || decisions.containsValue(Decision.NEW);
		if (decisions.size() < named.near().size()) {
			binding.reject("file-people.undecided");
		}
		if (adds && form.word() == null) {
			binding.rejectValue("basis", "basis.missing");
		}
		if (binding.hasErrors()) {
			return page(found, named, sent, model);
		}
		Basis basis = adds ? form.word() : null;
		if (this.imports.start(id, new Choice(chosen.mapping(), create, basis), decisions)) {
			this.worker.submit(id, found.job().actor());
		}
		return "redirect:/import/" + id;
	}

	/**
	 * Whom the file of a job names that waits for an answer; absent for any other job.
	 */
	private @Nullable FilePeople named(ImportJob job) {
		Choice choice = job.choice();
		return (job.state() != ImportJob.State.MAPPING || choice == null) ? null
				: this.people.of(job, choice.mapping()).orElse(null);
	}

	/** Those that were decided in one of the ways the page offers. */
	private static Map<String, Decision> decisions(FilePeople named, Map<String, String> sent) {
		Map<String, Decision> decisions = new LinkedHashMap<>();
		for (FilePeople.Near near : named.near()) {
			String decided = sent.getOrDefault(DECIDE + near.token(), "");
			switch (decided) {
				case NEW -> decisions.put(near.name(), Decision.NEW);
				case LEAVE -> decisions.put(near.name(), Decision.LEAVE);
				default -> near.inTeam()
					.stream()
					.filter((member) -> member.id().toString().equals(decided))
					.findFirst()
					.ifPresent((member) -> decisions.put(near.name(), Decision.same(member.id())));
			}
		}
		return decisions;
	}

	private static String page(OwnJobs.Found found, FilePeople named, Map<String, String> sent, Model model) {
		model.addAttribute("job", found.view());
		model.addAttribute("named", named);
		model.addAttribute("sent", sent);
		model.addAttribute("bases", Basis.values());
		return "exchange/file-people";
	}

}
