package org.fallow.entry.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.Mornings;
import org.fallow.entry.NewMorning;
import org.fallow.entry.NewSession;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.Saved;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.entry.Severity;
import org.fallow.entry.SlippedTicks;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Submission;
import org.fallow.entry.Symptom;
import org.fallow.team.Athlete;
import org.fallow.team.Role;
import org.fallow.team.Today;
import org.jspecify.annotations.Nullable;

import org.springframework.stereotype.Component;

/**
 * A red flag works from the first save, even where something else in the form is wrong:
 * the red flags alone are stored beside what stands already, and the form comes back to
 * be finished as a correction.
 */
@Component
class RedFlagsFirst {

	private final Mornings mornings;

	private final Sessions sessions;

	private final SlippedTicks slips;

	private final Today today;

	RedFlagsFirst(Mornings mornings, Sessions sessions, SlippedTicks slips, Today today) {
		this.mornings = mornings;
		this.sessions = sessions;
		this.slips = slips;
		this.today = today;
	}

	/**
	 * Stores the red flags of a morning that is refused, on its day or, where that cannot
	 * be, on today.
	 */
	MorningForm kept(Athlete athlete, MorningForm form, LocalDate earliest) {
		if (form.redFlags().isEmpty()) {
			return form;
		}
		LocalDate day = day(athlete, form.day(), earliest);
		Optional<StoredMorning> stored = this.mornings.latest(athlete.id(), day);
		Set<Symptom> carried = new HashSet<>();
		stored.ifPresent((before) -> before.entry().symptoms().forEach((felt) -> carried.add(felt.symptom())));
		this.slips.of(athlete, day, null).forEach((code) -> carried.remove(Symptom.valueOf(code)));
		int revision = stored.map(StoredMorning::revision).orElse(0);
		if (!carried.containsAll(form.redFlags())) {
			NewMorning kept = with(stored.orElse(null), day, form.redFlags(), carried);
			Saved saved = this.mornings.save(athlete.id(), kept, submission(athlete));
			revision = (saved instanceof Saved.Stored done) ? done.revision() : revision;
		}
		return day.toString().equals(form.day()) ? form.basedOn(revision, Submission.newRequestId().toString()) : form;
	}

	/** What stands, without slips, and the red flags. */
	private static NewMorning with(@Nullable StoredMorning stored, LocalDate day, List<Symptom> redFlags,
			Set<Symptom> carried) {
		List<ReportedSymptom> felt = new ArrayList<>();
		NewMorning base = NewMorning.feeling(day);
		if (stored != null) {
			stored.entry().symptoms().stream().filter((one) -> carried.contains(one.symptom())).forEach(felt::add);
			base = NewMorning.correcting(stored);
		}
		redFlags.stream()
			.filter((flag) -> !carried.contains(flag))
			.forEach((flag) -> felt.add(ReportedSymptom.of(flag, Severity.SEVERE)));
		felt.sort((one, other) -> one.symptom().compareTo(other.symptom()));
		return base.with(felt.toArray(ReportedSymptom[]::new));
	}

	/** Stores the red flags of a session that is refused, likewise. */
	SessionForm kept(Athlete athlete, SessionForm form, LocalDate earliest) {
		if (form.redFlags().isEmpty()) {
			return form;
		}
		LocalDate today = today(athlete);
		SessionLog stored = this.sessions.of(athlete.id(), earliest, today)
			.stream()
			.filter((log) -> log.key().equals(form.key()))
			.findFirst()
			.orElse(null);
		List<AfterSession> noticed = new ArrayList<>(form.redFlags());
		if (stored != null) {
			Set<String> slips = this.slips.of(athlete, stored.day(), stored.key());
			List<AfterSession> carried = stored.after().stream().filter((one) -> !slips.contains(one.name())).toList();
			if (carried.containsAll(noticed)) {
				return form;
			}
			noticed.removeAll(carried);
			noticed.addAll(carried);
		}
		NewSession kept = with(stored, day(athlete, form.day(), earliest), noticed.stream().sorted().toList());
		Saved saved = this.sessions.save(athlete.id(), kept, submission(athlete));
		String key = (saved instanceof Saved.Stored done) ? done.key() : null;
		return (key == null) ? form : form.correcting(key, Submission.newRequestId().toString());
	}

	private static NewSession with(@Nullable SessionLog stored, LocalDate day, List<AfterSession> noticed) {
		if (stored == null) {
			return new NewSession(null, day, Activity.OTHER, null, null, null, noticed, false, null, null);
		}
		return new NewSession(stored.key(), stored.day(), stored.activity(), stored.minutes(), stored.rpe(),
				stored.intensity(), noticed, stored.removed(), stored.note(), null);
	}

	private LocalDate day(Athlete athlete, @Nullable String typed, LocalDate earliest) {
		LocalDate today = today(athlete);
		return Typed.day(typed, "day", new ArrayList<>())
			.filter((day) -> !day.isBefore(earliest) && !day.isAfter(today))
			.orElse(today);
	}

	private LocalDate today(Athlete athlete) {
		return this.today.of(athlete);
	}

	private static Submission submission(Athlete athlete) {
		return Submission.page(athlete.id(), Role.ATHLETE, Submission.newRequestId());
	}

}
