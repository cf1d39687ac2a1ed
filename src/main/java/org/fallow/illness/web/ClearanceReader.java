package org.fallow.illness.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.illness.NewClearance;
import org.fallow.illness.core.ClinicianWord;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;

/**
 * From a clearance form as typed to a clearance, with a problem at each field where that
 * fails.
 */
final class ClearanceReader {

	private static final Map<String, Clearance> SCOPES = Map.of("REST", Clearance.REST, "EASY", Clearance.EASY_ONLY,
			"FULL", Clearance.FULL_TRAINING);

	private final ClearanceForm form;

	private final BindingResult result;

	private final LocalDate today;

	ClearanceReader(ClearanceForm form, BindingResult result, LocalDate today) {
		this.form = form;
		this.result = result;
		this.today = today;
	}

	/** What a coach records; null if the form has problems. */
	@Nullable NewClearance recorded() {
		Optional<LocalDate> until = Problems.day(this.result, "until", this.form.until());
		ClinicianWord word = word();
		return clearance(until.orElse(null), word);
	}

	/** What an athlete tells, for some days; null if the form has problems. */
	@Nullable NewClearance told(int days) {
		Optional<LocalDate> until = Problems.day(this.result, "until", this.form.until());
		LocalDate last = this.today.plusDays(days - 1L);
		return clearance(until.orElse(last), ClinicianWord.toldByTheAthlete());
	}

	private @Nullable NewClearance clearance(@Nullable LocalDate until, @Nullable ClinicianWord word) {
		Optional<LocalDate> spoke = Problems.day(this.result, "day", this.form.day());
		Optional<LocalDate> from = Problems.day(this.result, "from", this.form.from());
		Clearance ceiling = SCOPES.get(Problems.words(this.form.scope()));
		if (from.isEmpty() && !this.result.hasFieldErrors("from")) {
			this.result.rejectValue("from", "clearance.from.missing");
		}
		if (ceiling == null) {
			this.result.rejectValue("scope", "clearance.scope");
		}
		if (spoke.isPresent() && spoke.get().isAfter(this.today)) {
			this.result.rejectValue("day", "entry.day.future");
		}
		if (this.result.hasErrors() || ceiling == null || word == null) {
			return null;
		}
		return new NewClearance(from.orElseThrow(), until, ceiling, Problems.words(this.form.who()),
				Problems.words(this.form.role()), note(spoke), word);
	}

	private @Nullable ClinicianWord word() {
		Optional<ClinicianWord.By> by = Problems.oneOf(ClinicianWord.By.class, this.form.by())
			.filter((one) -> one != ClinicianWord.By.ATHLETE);
		Optional<LocalDate> examinedOn = Problems.day(this.result, "examinedOn", this.form.examinedOn());
		List<ReportedSymptom> examined = examined();
		boolean more = this.form.saysNoIllness() || !examined.isEmpty();
		if (by.isEmpty()) {
			this.result.rejectValue("by", "clearance.by");
		}
		if (examinedOn.isPresent() && examinedOn.get().isAfter(this.today)) {
			this.result.rejectValue("examinedOn", "clearance.examined.future");
		}
		String field = this.form.saysNoIllness() ? "noIllness" : "examined";
		if (more && by.isPresent() && by.get() != ClinicianWord.By.PHYSICIAN) {
			this.result.rejectValue(field, "clearance.physician");
		}
		if (more && examinedOn.isEmpty() && !this.result.hasFieldErrors("examinedOn")) {
			this.result.rejectValue("examinedOn", "clearance.examined.missing");
		}
		return this.result.hasErrors() ? null
				: new ClinicianWord(by.orElseThrow(), examinedOn.orElse(null), this.form.saysNoIllness(), examined);
	}

	/**
	 * Those ticked, at the mildest severity: only what the morning page ticks as
	 * unchanged is that, a red flag ticked as any other is severe.
	 */
	private List<ReportedSymptom> examined() {
		List<ReportedSymptom> examined = new ArrayList<>();
		for (String code : this.form.named()) {
			Optional<Symptom> symptom = Problems.oneOf(Symptom.class, code)
				.filter(ClinicianWord.CAN_BE_EXAMINED::contains);
			if (symptom.isEmpty()) {
				this.result.rejectValue("examined", "clearance.examined.unknown");
			}
			symptom.ifPresent((one) -> examined.add(ReportedSymptom.of(one, Severity.MILD)));
		}
		return examined;
	}

	private String note(Optional<LocalDate> spoke) {
		String words = Problems.words(this.form.note());
		return spoke.map((day) -> (day + " " + words).strip()).orElse(words);
	}

}
