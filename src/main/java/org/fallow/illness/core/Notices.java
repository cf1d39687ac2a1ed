package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.RhrFlag;
import org.fallow.entry.MorningEntry;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;

/**
 * What people should be told besides the clearance; nothing here changes a decision.
 */
final class Notices {

	private Notices() {
	}

	static List<Message> of(DayFold fold) {
		List<Message> notices = new ArrayList<>();
		RhrFlag flag = fold.rhr.flag();
		MorningEntry entry = fold.entry;
		if (flag != null && flag.isHigh() && entry != null && !fold.sickness(entry).isSick()) {
			notices.add(Message.of("advised.ask-symptoms"));
		}
		if (flag == RhrFlag.LOW) {
			notices.add(Message.of("advised.low"));
		}
		if (fold.rhr.provisional()) {
			notices.add(Message.of("advised.provisional", fold.rhr.n()));
		}
		if (fold.rhr.drift()) {
			notices.add(Message.of("advised.drift"));
		}
		if (entry != null && entry.unsure()) {
			notices.add(Message.of("advised.unsure"));
		}
		if (entry != null && flag != null && !entry.tags().isEmpty() && flag != RhrFlag.WITHIN) {
			notices.add(Message.of("advised.tags"));
		}
		episode(fold, notices);
		return notices;
	}

	private static void episode(DayFold fold, List<Message> notices) {
		Draft episode = fold.episode;
		if (episode == null) {
			return;
		}
		MorningEntry entry = fold.entry;
		if (episode.tracksNow() && fold.rhr.reading() != null && fold.rhr.dev() == null) {
			notices.add(Message.of("advised.method-changed"));
		}
		if (episode.symptomsOnly) {
			notices.add(Message.of("advised.symptoms-only"));
		}
		if (episode.stage1First == null && since(fold, episode.firstOnset) > fold.rules.advice().clinicianIllDays()) {
			notices.add(Message.of("advised.clinician-long"));
		}
		if (feverMornings(fold, episode.firstOnset) >= fold.rules.advice().clinicianFeverDays() || (entry != null
				&& entry.temperatureC() != null && entry.temperatureC() >= fold.rules.advice().highFeverCelsius())) {
			notices.add(Message.of("advised.clinician-fever"));
		}
		if (episode.latestOnset.isAfter(episode.firstOnset)) {
			notices.add(Message.of("advised.clinician-relapse"));
		}
		RuleSet.Path path = episode.path(fold.rules);
		int least = path.illDays() + path.stages().stream().mapToInt(RuleSet.Stage::days).sum();
		if (since(fold, episode.firstOnset) > fold.rules.advice().stalledFactor() * least) {
			notices.add(Message.of("advised.stalled"));
		}
	}

	private static long since(DayFold fold, LocalDate day) {
		return fold.day.toEpochDay() - day.toEpochDay();
	}

	private static long feverMornings(DayFold fold, LocalDate from) {
		return fold.known.mornings(from, fold.day.plusDays(1))
			.values()
			.stream()
			.filter((morning) -> fold.sickness(morning.effective()).fever())
			.count();
	}

}
