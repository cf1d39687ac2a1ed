package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Judges the return path from everything seen since onset. Lengths run from the latest
 * onset to the last symptomatic morning before Stage 1, both days counted; a well morning
 * in between does not shorten them (the safer reading).
 */
final class PathJudge {

	private final RuleSet rules;

	private boolean above;

	private boolean stomach;

	private boolean other;

	private boolean fever;

	private boolean covid;

	private boolean covidEntered;

	private boolean asthma;

	private final AfterVaccination vaccination;

	private @Nullable LocalDate lastSick;

	private @Nullable LocalDate lastCold;

	private final Span feverDays = new Span();

	private final Span chestDays = new Span();

	private PathJudge(RuleSet rules) {
		this.rules = rules;
		this.vaccination = new AfterVaccination(rules.limits());
	}

	static PathEvidence judge(Draft episode, Known known, RuleSet rules, LocalDate day) {
		PathJudge judge = new PathJudge(rules);
		for (Morning morning : known.mornings(episode.firstOnset, day.plusDays(1))) {
			judge.see(morning, known, episode);
		}
		for (IllnessEvent.Report report : known.events(IllnessEvent.Report.class)) {
			if (isOf(episode, report)) {
				judge.see(report);
				judge.measure(report, episode);
			}
		}
		judge.covidEntered = judge.covid && isEnteredSinceCovid(episode, known, day);
		return judge.evidence(episode, known);
	}

	/** Whether a morning was entered after COVID-19 was reported first. */
	private static boolean isEnteredSinceCovid(Draft episode, Known known, LocalDate day) {
		Recorded first = null;
		for (IllnessEvent.Report report : known.events(IllnessEvent.Report.class)) {
			boolean counts = report.kind() == ReportKind.COVID && isOf(episode, report);
			first = (counts && first == null) ? report.recorded() : first;
		}
		for (Morning morning : known.mornings(episode.firstOnset, day.plusDays(1))) {
			for (MorningEntry entry : morning.revisions()) {
				if (first != null && entry.recorded().compareTo(first) > 0) {
					return true;
				}
			}
		}
		return false;
	}

	private static boolean isOf(Draft episode, IllnessEvent.Report report) {
		return !report.day().isBefore(episode.firstOnset) || !report.recorded().on().isBefore(episode.openedOn);
	}

	/**
	 * The latest symptomatic morning since the latest onset; the onset if there is none.
	 */
	static LocalDate lastSick(Draft episode, Known known, RuleSet rules, LocalDate day) {
		LocalDate last = episode.latestOnset;
		for (Morning morning : known.mornings(episode.latestOnset, day.plusDays(1))) {
			if (known.sickness(morning.effective(), rules).isSick()) {
				last = morning.day();
			}
		}
		return last;
	}

	private void see(Morning morning, Known known, Draft episode) {
		LocalDate day = morning.day();
		Sickness sick = known.sickness(morning.effective(), this.rules);
		this.above |= sick.aboveTheNeck();
		this.stomach |= sick.stomach();
		this.asthma |= sick.asthma();
		this.other |= sick.redFlag() || (sick.other() && !sick.cramped() && !sick.asthma());
		this.fever |= sick.fever() || sick.medicineForIllness();
		this.vaccination.see(morning, sick);
		if (isMeasured(day, episode) && sick.isSick()) {
			this.lastSick = day;
			this.lastCold = sick.loneMildCough() ? this.lastCold : day;
			this.feverDays.add(day, sick.fever() || sick.medicineForIllness());
			this.chestDays.add(day, sick.chest());
		}
	}

	private static boolean isMeasured(LocalDate day, Draft episode) {
		return !day.isBefore(episode.lengthFrom) && (episode.stage1On == null || day.isBefore(episode.stage1On));
	}

	/** Who reports being ill is ill on the day of the report. */
	private void measure(IllnessEvent.Report report, Draft episode) {
		LocalDate told = report.recorded().on();
		if (isMeasured(told, episode)) {
			this.lastSick = latest(this.lastSick, told);
			this.lastCold = latest(this.lastCold, told);
		}
	}

	private static LocalDate latest(@Nullable LocalDate known, LocalDate told) {
		return (known == null || known.isBefore(told)) ? told : known;
	}

	/** Severe is below the neck, also where it is reported as a cold. */
	private void see(IllnessEvent.Report report) {
		Integer worst = report.worst();
		boolean severe = worst != null && worst > this.rules.limits().moderateWorst();
		switch (report.kind()) {
			case ABOVE_NECK -> {
				this.above = true;
				this.other |= severe;
			}
			case STOMACH -> this.stomach = true;
			case FEVER -> this.fever = true;
			case COVID -> {
				this.covid = true;
				this.other |= severe;
			}
			default -> this.other = true;
		}
		this.vaccination.see(report);
	}

	private PathEvidence evidence(Draft episode, Known known) {
		long ill = days(this.lastSick, episode);
		long cold = days(this.lastCold, episode);
		boolean relapsed = !episode.latestOnset.equals(episode.firstOnset);
		LocalDate explained = relapsed ? null : this.vaccination.day(known, episode.firstOnset, ill);
		PathName own = judged(ill, cold, explained != null);
		PathName judged = later(later(own, episode.floor), episode.path);
		return new PathEvidence(this.above, this.stomach, this.other, this.fever, this.covid, isUntold(), this.asthma,
				explained, ill, cold, this.feverDays.days(), this.chestDays.days(), episode.floor, episode.path,
				judged);
	}

	private static long days(@Nullable LocalDate last, Draft episode) {
		return (last == null) ? 0 : last.toEpochDay() - episode.lengthFrom.toEpochDay() + 1;
	}

	private PathName judged(long ill, long cold, boolean vaccinated) {
		RuleSet.Limits limits = this.rules.limits();
		boolean nothingElse = !this.other && !this.fever;
		boolean noWorseThanACold = nothingElse && !this.stomach && !this.asthma && !isUntold()
				&& ill <= limits.covidColdDays();
		if ((this.covid && !noWorseThanACold) || this.feverDays.days() >= limits.feverDays()
				|| this.chestDays.days() > limits.chestDays() || ill > limits.illDays()) {
			return PathName.LONG;
		}
		if (vaccinated) {
			return PathName.VACCINATION;
		}
		if (this.covid || !nothingElse || !isOfOneSort()) {
			return PathName.THREE_WEEK;
		}
		if (this.stomach) {
			return (ill <= limits.stomachDays()) ? PathName.STOMACH : PathName.THREE_WEEK;
		}
		return (cold <= limits.shortDays()) ? PathName.SHORT : PathName.THREE_WEEK;
	}

	/**
	 * COVID-19 of which nothing is known, though there was a morning to tell it: not
	 * taken as no worse than a cold (the safer reading). Before that morning nothing
	 * opens.
	 */
	private boolean isUntold() {
		return this.covidEntered && !this.above;
	}

	/** A cold, a stomach or an asthma, and only one of them. */
	private boolean isOfOneSort() {
		return (this.above ? 1 : 0) + (this.stomach ? 1 : 0) + (this.asthma ? 1 : 0) == 1;
	}

	private static PathName later(PathName one, PathName other) {
		return (one.compareTo(other) >= 0) ? one : other;
	}

	/** First to last day of something, both counted. */
	private static final class Span {

		private @Nullable LocalDate first;

		private @Nullable LocalDate last;

		void add(LocalDate day, boolean seen) {
			if (seen) {
				this.first = (this.first == null) ? day : this.first;
				this.last = day;
			}
		}

		long days() {
			return (this.first == null || this.last == null) ? 0 : this.last.toEpochDay() - this.first.toEpochDay() + 1;
		}

	}

}
