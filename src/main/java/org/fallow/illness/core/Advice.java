package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.fallow.entry.AfterSession;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * When a clinician is advised, when to stay away from others, and what a long time away
 * means for the way back. None of it is a hold.
 */
final class Advice {

	private Advice() {
	}

	static void add(DayFold fold, List<Message> notices) {
		Draft episode = fold.episode;
		if (episode != null) {
			clinician(fold, episode, notices);
		}
		told(fold, notices);
		Notices.add(notices, hasLasted(fold), "clinician-lasting", fold.rules.advice().clinicianIllDays());
		Notices.add(notices, hasAThroatForLong(fold), "clinician-throat", fold.rules.advice().throatDays());
		Notices.add(notices, isTickedAgain(fold), "clinician-after-session", fold.rules.advice().afterSessionDays());
		stayAway(fold, notices);
		Notices.add(notices, hasBeenLongAway(fold), "long-away", fold.rules.advice().longAwayDays());
	}

	private static void clinician(DayFold fold, Draft episode, List<Message> notices) {
		RuleSet.Advice rules = fold.rules.advice();
		long ill = fold.day.toEpochDay() - episode.firstOnset.toEpochDay();
		Notices.add(notices, episode.stage1First == null && ill > rules.clinicianIllDays(), "clinician-long",
				rules.clinicianIllDays());
		MorningEntry entry = fold.entry;
		Double temperature = (entry == null) ? null : entry.temperatureC();
		boolean highFever = temperature != null && temperature >= rules.highFeverCelsius();
		Notices.add(notices, feverMornings(fold, episode) >= rules.clinicianFeverDays() || highFever, "clinician-fever",
				rules.clinicianFeverDays(), rules.highFeverCelsius());
		Notices.add(notices, episode.latestOnset.isAfter(episode.firstOnset) || isWorseAfterBetter(fold, episode),
				"clinician-relapse");
		Notices.add(notices, fold.known.circumstances().hasCondition(fold.day), "clinician-condition");
		Notices.add(notices, fold.known.circumstances().hasBegunMedicine(episode.firstOnset, fold.day),
				"clinician-medicine");
	}

	/** Of what the entry says, whether there is an episode or not. */
	private static void told(DayFold fold, List<Message> notices) {
		Besides besides = fold.seen.besides();
		Notices.add(notices, besides.severe(), "clinician-complaint");
		Notices.add(notices, besides.limb(), "note-injury");
		MorningEntry entry = fold.entry;
		Notices.add(notices, entry != null && entry.symptoms().stream().anyMatch((one) -> one.symptom().needsAdvice()),
				"clinician-symptom");
	}

	private static int feverMornings(DayFold fold, Draft episode) {
		int feverish = 0;
		for (Morning morning : fold.known.mornings(episode.firstOnset, fold.day.plusDays(1))) {
			feverish += fold.sickness(morning.effective()).fever() ? 1 : 0;
		}
		return feverish;
	}

	/** Sick again this morning, after a symptom-free morning of the same illness. */
	private static boolean isWorseAfterBetter(DayFold fold, Draft episode) {
		return fold.seen.entered() && fold.seen.isSick() && fold.known.mornings(episode.firstOnset, fold.day)
			.stream()
			.anyMatch((morning) -> !fold.sickness(morning.effective()).isSick() && !fold.isReported(morning.day()));
	}

	/** The same symptom on every entered morning for more days than an illness should. */
	private static boolean hasLasted(DayFold fold) {
		if (fold.entry == null || fold.entry.symptoms().isEmpty()) {
			return false;
		}
		Set<Symptom> lasting = EnumSet.allOf(Symptom.class);
		LocalDate first = fold.day;
		for (Morning morning : fold.known.backFrom(fold.day)) {
			lasting.retainAll(symptoms(fold, morning.effective()));
			if (lasting.isEmpty()) {
				break;
			}
			first = morning.day();
		}
		return fold.day.toEpochDay() - first.toEpochDay() > fold.rules.advice().clinicianIllDays();
	}

	/**
	 * A sore throat on every entered morning for more days than it should, and swollen
	 * glands or fatigue on one of them.
	 */
	private static boolean hasAThroatForLong(DayFold fold) {
		if (fold.entry == null) {
			return false;
		}
		LocalDate first = fold.day;
		boolean more = false;
		for (Morning morning : fold.known.backFrom(fold.day)) {
			Set<Symptom> felt = symptoms(fold, morning.effective());
			if (!felt.contains(Symptom.SORE_THROAT)) {
				break;
			}
			first = morning.day();
			more |= felt.contains(Symptom.SWOLLEN_GLANDS) || felt.contains(Symptom.FATIGUE);
		}
		return more && fold.day.toEpochDay() - first.toEpochDay() >= fold.rules.advice().throatDays();
	}

	private static Set<Symptom> symptoms(DayFold fold, MorningEntry entry) {
		return entry.symptoms()
			.stream()
			.filter((symptom) -> !fold.known.isKnown(symptom, entry, fold.rules))
			.map(ReportedSymptom::symptom)
			.collect(Collectors.toCollection(() -> EnumSet.noneOf(Symptom.class)));
	}

	/** The same complaint after sessions of two days within a week. */
	private static boolean isTickedAgain(DayFold fold) {
		List<SessionLog> sessions = fold.known.sessions(fold.day.minusDays(fold.rules.advice().afterSessionDays() - 1L),
				fold.day);
		for (SessionLog one : sessions) {
			for (AfterSession complaint : one.after()) {
				for (SessionLog other : sessions) {
					if (!other.day().equals(one.day()) && other.after().contains(complaint)) {
						return true;
					}
				}
			}
		}
		return false;
	}

	/**
	 * Illness may be catching: away from the group while symptoms show or the illness was
	 * reported and no well morning has come since; after vomiting or diarrhoea two days
	 * more (48 hours: advice of public health services, from memory). After a vaccination
	 * only while fever lasts.
	 */
	private static void stayAway(DayFold fold, List<Message> notices) {
		boolean catching = fold.seen.reported() || isCatching(fold.entry, fold)
				|| (fold.entry == null && isCatching(lastEntry(fold), fold));
		Notices.add(notices, catching, "stay-away");
		boolean stomach = false;
		for (Morning morning : fold.known.lastMornings(fold.rules.advice().stomachApartDays() + 1, fold.day)) {
			stomach |= fold.sickness(morning.effective()).stomach();
		}
		Notices.add(notices, stomach, "stay-away-stomach", 24 * fold.rules.advice().stomachApartDays());
	}

	private static boolean isCatching(@Nullable MorningEntry entry, DayFold fold) {
		if (entry == null) {
			return false;
		}
		Sickness sick = fold.sickness(entry);
		if (isAfterVaccination(fold)) {
			return sick.fever() || sick.medicineForIllness();
		}
		return sick.aboveTheNeck() || sick.opens() || sick.smell();
	}

	private static boolean isAfterVaccination(DayFold fold) {
		return fold.episode != null && fold.episode.path == PathName.VACCINATION;
	}

	private static @Nullable MorningEntry lastEntry(DayFold fold) {
		List<Morning> back = fold.known.backFrom(fold.day);
		return back.isEmpty() ? null : back.get(0).effective();
	}

	/** In a return that began long ago, or back from a long absence. */
	private static boolean hasBeenLongAway(DayFold fold) {
		RuleSet.Advice rules = fold.rules.advice();
		int days = rules.longAwayDays();
		Draft episode = fold.episode;
		boolean returning = episode != null && episode.stage > 0
				&& fold.day.toEpochDay() - episode.firstOnset.toEpochDay() > days;
		return returning || fold.known.circumstances().hasLongAbsenceEnded(fold.day, rules.longAwayToldDays(), days);
	}

}
