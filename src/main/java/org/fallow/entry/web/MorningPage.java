package org.fallow.entry.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;

import jakarta.servlet.http.HttpServletRequest;
import org.fallow.entry.AfterSaving;
import org.fallow.entry.ContextTag;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Feels;
import org.fallow.entry.ExaminedFlags;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.FreeWords;
import org.fallow.entry.KnownSymptoms;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Posture;
import org.fallow.entry.RrSeries;
import org.fallow.entry.Saved;
import org.fallow.entry.Severity;
import org.fallow.entry.SlippedTicks;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.rules.RuleSets;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.Role;
import org.fallow.team.Today;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/**
 * The morning entry, for a phone. Always the signed-in athlete's own: no id in the form
 * is ever looked at.
 */
@Controller
class MorningPage {

	private static final int BACK_FILL_DAYS = 7;

	private static final int REMEMBERED_DAYS = 60;

	private static final String SYMPTOM = "symptom.";

	private final AthleteAccess access;

	private final Mornings mornings;

	private final ExaminedFlags examined;

	private final KnownSymptoms knownSymptoms;

	private final RedFlagsFirst redFlagsFirst;

	private final SlippedTicks slips;

	private final RuleSets ruleSets;

	private final AfterSaving after;

	private final Today today;

	MorningPage(AthleteAccess access, Mornings mornings, ExaminedFlags examined, KnownSymptoms knownSymptoms,
			RedFlagsFirst redFlagsFirst, SlippedTicks slips, RuleSets ruleSets, AfterSaving after, Today today) {
		this.access = access;
		this.mornings = mornings;
		this.examined = examined;
		this.knownSymptoms = knownSymptoms;
		this.redFlagsFirst = redFlagsFirst;
		this.slips = slips;
		this.ruleSets = ruleSets;
		this.after = after;
		this.today = today;
	}

	@GetMapping("/morning")
	String form(@RequestParam(required = false) @Nullable String day, Model model) {
		Athlete athlete = this.access.self();
		LocalDate today = today(athlete);
		LocalDate chosen = chosen(day, today);
		String requestId = Submission.newRequestId().toString();
		Optional<StoredMorning> stored = this.mornings.latest(athlete.id(), chosen);
		MorningForm form = stored
			.map((morning) -> MorningForm.correcting(morning, this.slips.of(athlete, chosen, null), requestId))
			.orElseGet(() -> remembered(athlete, chosen, requestId));
		model.addAttribute("form", form);
		return show(athlete, form, model);
	}

	private static LocalDate chosen(@Nullable String day, LocalDate today) {
		try {
			LocalDate asked = (day == null) ? today : LocalDate.parse(day);
			boolean allowed = !asked.isAfter(today) && !asked.isBefore(today.minusDays(BACK_FILL_DAYS));
			return allowed ? asked : today;
		}
		catch (DateTimeParseException ex) {
			return today;
		}
	}

	/** A new form that remembers how the athlete measured last. */
	private MorningForm remembered(Athlete athlete, LocalDate day, String requestId) {
		List<StoredMorning> last = this.mornings.of(athlete.id(), day.minusDays(REMEMBERED_DAYS), day);
		String method = null;
		String posture = "LYING";
		for (StoredMorning stored : last) {
			Method how = stored.entry().method();
			Posture placed = stored.entry().posture();
			if (how != null && placed != null) {
				method = how.name();
				posture = placed.name();
			}
		}
		return MorningForm.empty(day.toString(), method, posture, requestId);
	}

	@PostMapping("/morning")
	String save(@ModelAttribute MorningForm bound, HttpServletRequest request, Model model,
			RedirectAttributes redirect) {
		Athlete athlete = this.access.self();
		MorningForm form = bound.with(ticked(request));
		MorningReader reader = new MorningReader(form,
				this.ruleSets.on(athlete.teamId(), today(athlete)).opening().feverCelsius());
		List<Problem> problems = reader.problems().isEmpty() ? tooOld(athlete, reader.morning().day())
				: reader.problems();
		if (!problems.isEmpty()) {
			return refused(athlete, form, problems, model);
		}
		if (form.redFlags().isEmpty() && !form.toAsk().isEmpty()) {
			return refused(athlete, form, List.of(), model);
		}
		if (form.redFlags().isEmpty() && reader.isLowQuality() && !MorningForm.isTrue(form.repeated())) {
			return refused(athlete, form.askedToRepeat(), List.of(Problem.of("rr", "morning.rr.repeat")), model);
		}
		return store(athlete, form, reader.morning(), model, redirect);
	}

	private List<Problem> tooOld(Athlete athlete, LocalDate day) {
		LocalDate earliest = today(athlete).minusDays(BACK_FILL_DAYS);
		return day.isBefore(earliest) ? List.of(Problem.of("day", "entry.day.too-old", day, earliest)) : List.of();
	}

	private String store(Athlete athlete, MorningForm form, NewMorning typed, Model model,
			RedirectAttributes redirect) {
		NewMorning morning = keepsDoubt(athlete, typed) ? typed.markedUnsure() : typed;
		Submission submission = Submission.page(athlete.id(), Role.ATHLETE, Typed.requestId(form.requestId()));
		Saved saved = this.mornings.save(athlete.id(), morning, submission);
		if (saved instanceof Saved.AlreadyChanged none && none.revision() == 0) {
			saved = this.mornings.save(athlete.id(), morning.basedOn(0), submission);
		}
		if (saved instanceof Saved.Refused refused) {
			return refused(athlete, form, refused.problems(), model);
		}
		if (saved instanceof Saved.AlreadyChanged changed) {
			MorningForm newer = form.basedOn(changed.revision(), Submission.newRequestId().toString());
			return refused(athlete, newer, List.of(Problem.of("", "entry.changed-elsewhere")), model);
		}
		if (form.redFlags().isEmpty() && FreeWords.speakOfARedFlag(Typed.words(form.otherSymptom()))) {
			redirect.addFlashAttribute("askRedFlags", Typed.words(form.otherSymptom()));
			return "redirect:/morning?day=" + morning.day();
		}
		if (!form.redFlags().isEmpty()) {
			redirect.addFlashAttribute("notice", stored(form));
			return "redirect:/slip";
		}
		redirect.addFlashAttribute("notice",
				form.saysIllMeanwhile() ? Message.of("morning.meanwhile.report") : stored(form));
		if (form.saysIllMeanwhile()) {
			return "redirect:/report";
		}
		return (morning.day().equals(today(athlete)) && this.after.asks(athlete)) ? "redirect:/again"
				: "redirect:/today";
	}

	/** With RR intervals, what they gave and how good they were. */
	private static Message stored(MorningForm form) {
		String text = Typed.words(form.rr());
		if (text.isEmpty()) {
			return Message.of("morning.stored");
		}
		RrSeries series = RrSeries.parse(Typed.intervals(text));
		RrSeries.Figures clean = series.clean();
		return Message.of("morning.stored.rr", series.milliseconds().size(), series.suspects().size(),
				Objects.requireNonNullElse(clean.heartRateBpm(), 0.0), Objects.requireNonNullElse(clean.rmssdMs(), 0.0),
				series.isLowQuality() ? 1 : 0);
	}

	/**
	 * A reading that was not to be trusted does not become so by a correction beside it.
	 */
	private boolean keepsDoubt(Athlete athlete, NewMorning morning) {
		return this.mornings.latest(athlete.id(), morning.day())
			.map(StoredMorning::entry)
			.filter(MorningEntry::unsure)
			.filter((entry) -> Objects.equals(entry.rhrBpm(), morning.rhrBpm()))
			.filter((entry) -> Objects.equals(entry.rmssdMs(), morning.rmssdMs()))
			.isPresent();
	}

	private static Map<String, String> ticked(HttpServletRequest request) {
		Map<String, String> ticked = new TreeMap<>();
		request.getParameterMap().forEach((name, values) -> {
			if (name.startsWith(SYMPTOM)) {
				Arrays.stream(values)
					.filter((severity) -> !severity.isBlank())
					.forEach((severity) -> ticked.merge(name.substring(SYMPTOM.length()), severity,
							(one, other) -> one.equals(Severity.SEVERE.name()) ? one : other));
			}
		});
		return ticked;
	}

	/**
	 * A form that was sent comes back. Red flags in it are stored all the same, and the
	 * page says first what to do.
	 */
	private String refused(Athlete athlete, MorningForm typed, List<Problem> problems, Model model) {
		MorningForm form = this.redFlagsFirst.kept(athlete, typed, today(athlete).minusDays(BACK_FILL_DAYS));
		model.addAttribute("redFlagsKept", !form.redFlags().isEmpty());
		BindingResult result = new BeanPropertyBindingResult(form, "form");
		FormFields.reject(result, problems);
		model.addAttribute("form", form);
		model.addAttribute(BindingResult.MODEL_KEY_PREFIX + "form", result);
		return show(athlete, form, model);
	}

	private String show(Athlete athlete, MorningForm form, Model model) {
		LocalDate today = today(athlete);
		model.addAttribute("today", today);
		model.addAttribute("earliestDay", today.minusDays(BACK_FILL_DAYS));
		model.addAttribute("methods", Method.values());
		model.addAttribute("postures", Posture.values());
		boolean nausea = this.knownSymptoms.of(athlete.id()).stream().anyMatch((k) -> k.symptom() == Symptom.NAUSEA);
		model.addAttribute("symptomGroups", SymptomGroup.all(nausea));
		model.addAttribute("wordsName", form.redFlags().isEmpty() ? form.toAsk() : List.of());
		model.addAttribute("deviceChanges", DeviceChange.What.values());
		model.addAttribute("newRequest", Submission.newRequestId().toString());
		model.addAttribute("redFlagSymptoms", Arrays.stream(Symptom.values()).filter(Symptom::isRedFlag).toList());
		model.addAttribute("examinedFlags", this.examined.on(athlete, today));
		model.addAttribute("severities", Severity.values());
		model.addAttribute("feverMedicines", FeverMedicine.values());
		model.addAttribute("feelsValues", Feels.values());
		model.addAttribute("tags", ContextTag.values());
		model.addAttribute("redFlagsNamed", form.redFlags());
		model.addAttribute("corrects", form.basedOn() > 0);
		hints(athlete, form, today, model);
		if (!model.containsAttribute("redFlagsKept")) {
			model.addAttribute("redFlagsKept", false);
		}
		return "entry/morning";
	}

	/**
	 * The last reading before the day, and the days of the last week without an entry.
	 */
	private void hints(Athlete athlete, MorningForm form, LocalDate today, Model model) {
		LocalDate earliest = today.minusDays(BACK_FILL_DAYS);
		Map<LocalDate, StoredMorning> week = new TreeMap<>();
		this.mornings.of(athlete.id(), earliest.minusDays(BACK_FILL_DAYS), today)
			.forEach((stored) -> week.put(stored.day(), stored));
		LocalDate day = Typed.day(form.day(), "day", new ArrayList<>()).orElse(today);
		int silent = this.ruleSets.on(athlete.teamId(), today).told().silentMornings();
		model.addAttribute("silentFrom", this.mornings.silentBefore(athlete.id(), day, silent).orElse(null));
		model.addAttribute("lastReading",
				week.values()
					.stream()
					.map(StoredMorning::entry)
					.filter((entry) -> entry.day().isBefore(day) && entry.rhrBpm() != null)
					.reduce((earlier, later) -> later)
					.orElse(null));
		model.addAttribute("missing",
				earliest.datesUntil(today)
					.filter((one) -> !week.containsKey(one) && !one.isBefore(athlete.since()) && !one.equals(day))
					.toList());
	}

	private LocalDate today(Athlete athlete) {
		return this.today.of(athlete);
	}

}
