package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.baseline.Line;
import org.fallow.baseline.RhrFlag;
import org.fallow.entry.MorningEntry;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * What people should be told besides the clearance; nothing here changes a decision.
 */
final class Notices {

	private Notices() {
	}

	static List<Message> of(DayFold fold, @Nullable LevelOffer level) {
		List<Message> notices = new ArrayList<>();
		numbers(fold, notices);
		Draft episode = fold.episode;
		if (episode != null) {
			episode(fold, episode, level, notices);
		}
		Message noIllness = (episode == null) ? null : NoIllness.told(fold, episode);
		if (noIllness != null) {
			notices.add(noIllness);
		}
		for (Examined examined : fold.clinic.examined()) {
			notices.add(Message.of("advised.examined", examined.ticked().symptom().name(), examined.since(),
					examined.since().plusDays(fold.rules.words().examinedDays() - 1L)));
		}
		slips(fold, notices);
		Advice.add(fold, notices);
		guardian(fold, notices);
		return notices;
	}

	private static void numbers(DayFold fold, List<Message> notices) {
		RhrFlag flag = fold.rhr.flag();
		MorningEntry entry = fold.entry;
		add(notices, asks(fold) && entry != null && !fold.sickness(entry).isSick(), "ask-symptoms");
		boolean again = fold.rhr.tooFastBefore() != null
				|| (fold.rhr.last() != null && fold.rhr.last().flag() == RhrFlag.VERY_HIGH);
		add(notices, flag == RhrFlag.VERY_HIGH && again, "clinician-very-high");
		add(notices, flag == RhrFlag.LOW, "low");
		if (fold.rhr.provisional()) {
			notices.add(Message.of("advised.provisional", fold.rhr.n()));
		}
		add(notices, fold.rhr.drift(), "drift", fold.rules.baseline().driftBpm(), fold.rules.baseline().driftDays());
		add(notices, entry != null && entry.unsure(), "unsure");
		add(notices, entry != null && flag != null && !entry.tags().isEmpty() && flag != RhrFlag.WITHIN, "tags");
		Working working = fold.rhr.working();
		if (working != null) {
			notices.add(Message.of("advised.working-level", working.since()));
		}
	}

	/**
	 * Whether today's reading is asked about: among the athlete's own higher mornings,
	 * above the line or high, or without a baseline a quick one. It decides nothing.
	 */
	private static boolean asks(DayFold fold) {
		RhrEvidence rhr = fold.rhr;
		RuleSet.Flags rules = fold.rules.flags();
		Double reading = rhr.reading();
		Double dev = rhr.dev();
		Line line = rhr.line();
		if (reading == null || dev == null || line == null) {
			return reading != null && reading >= rules.askBpm();
		}
		double from = (line.upper() == null) ? rules.askCeiling()
				: Math.min(rules.askCeiling(), Math.max(rules.askFloor(), line.upper()));
		return dev >= from || rhr.starts() || rhr.above() != null || (rhr.flag() != null && rhr.flag().isHigh());
	}

	private static void episode(DayFold fold, Draft episode, @Nullable LevelOffer level, List<Message> notices) {
		add(notices, episode.tracksNow() && fold.rhr.reading() != null && fold.rhr.dev() == null, "method-changed");
		add(notices, episode.symptomsOnly, "symptoms-only");
		add(notices, level != null && level.possible(), "working-level-possible");
		RuleSet.Path path = episode.path(fold.rules);
		int least = path.illDays();
		for (RuleSet.Stage stage : path.stages()) {
			least += stage.days();
		}
		long since = fold.day.toEpochDay() - episode.firstOnset.toEpochDay();
		add(notices, since > fold.rules.advice().stalledFactor() * least, "stalled",
				fold.rules.advice().stalledFactor());
	}

	/** Told for some days, and for as long as nobody has asked about a red flag. */
	private static void slips(DayFold fold, List<Message> notices) {
		LocalDate unasked = fold.seen.unasked();
		for (IllnessEvent.Slip slip : fold.known.events(IllnessEvent.Slip.class)) {
			boolean lately = slip.day().isAfter(fold.day.minusDays(fold.rules.slips().toldDays()));
			boolean works = Slips.works(slip, fold.known.events());
			add(notices, works && (lately || slip.day().equals(unasked)), "slip", slip.tick().code(), slip.day());
			add(notices, !works && slip.day().equals(fold.day), "slip-waits", slip.tick().code());
		}
	}

	/** Under 18 a guardian is named, on the long path or when advised a clinician too. */
	private static void guardian(DayFold fold, List<Message> notices) {
		if (!fold.seen.minor()) {
			return;
		}
		boolean advised = notices.stream().anyMatch((n) -> n.code().startsWith("advised.clinician"));
		if (fold.episode == null && !advised) {
			return;
		}
		boolean onTheLongPath = fold.episode != null && fold.episode.path == PathName.LONG;
		add(notices, true, (onTheLongPath || advised) ? "guardian-and-clinician" : "guardian");
	}

	/** The figures are those of the rule set. */
	static void add(List<Message> notices, boolean holds, String code, Object... figures) {
		if (holds) {
			notices.add(Message.of("advised." + code, figures));
		}
	}

}
