package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.entry.MorningEntry;
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

	private boolean moreThanMild;

	private boolean stomach;

	private boolean other;

	private boolean fever;

	private boolean covid;

	private @Nullable LocalDate lastSick;

	private final Span feverDays = new Span();

	private final Span chestDays = new Span();

	private PathJudge(RuleSet rules) {
		this.rules = rules;
	}

	static PathEvidence judge(Draft episode, Known known, RuleSet rules, LocalDate day) {
		PathJudge judge = new PathJudge(rules);
		for (Morning morning : known.mornings(episode.firstOnset, day.plusDays(1))) {
			judge.see(morning.effective(), known, episode);
		}
		for (IllnessEvent.Report report : known.events(IllnessEvent.Report.class)) {
			if (!report.day().isBefore(episode.firstOnset) || !report.recorded().on().isBefore(episode.openedOn)) {
				judge.see(report);
				judge.measure(report, episode);
			}
		}
		return judge.evidence(episode);
	}

	/**
	 * The latest symptomatic morning since the latest onset; the onset if there is none.
	 */
	static LocalDate lastSick(Draft episode, Known known, RuleSet rules, LocalDate day) {
		LocalDate last = episode.latestOnset;
		for (Morning morning : known.mornings(episode.latestOnset, day.plusDays(1))) {
			if (known.sickness(morning.effective(), rules.opening().feverCelsius()).isSick()) {
				last = morning.day();
			}
		}
		return last;
	}

	private void see(MorningEntry entry, Known known, Draft episode) {
		Sickness sick = known.sickness(entry, this.rules.opening().feverCelsius());
		this.above |= sick.aboveTheNeck();
		this.moreThanMild |= sick.moreThanMild();
		this.stomach |= sick.stomach();
		this.other |= sick.other() || sick.redFlag();
		this.fever |= sick.fever() || sick.medicineForIllness();
		boolean measured = !entry.day().isBefore(episode.lengthFrom)
				&& (episode.stage1On == null || entry.day().isBefore(episode.stage1On));
		if (measured && sick.isSick()) {
			this.lastSick = entry.day();
			this.feverDays.add(entry.day(), sick.fever() || sick.medicineForIllness());
			this.chestDays.add(entry.day(), sick.chest());
		}
	}

	/** Who reports being ill is ill on the day of the report. */
	private void measure(IllnessEvent.Report report, Draft episode) {
		LocalDate told = report.recorded().on();
		LocalDate last = this.lastSick;
		boolean measured = !told.isBefore(episode.lengthFrom)
				&& (episode.stage1On == null || told.isBefore(episode.stage1On));
		if (measured && (last == null || last.isBefore(told))) {
			this.lastSick = told;
		}
	}

	private void see(IllnessEvent.Report report) {
		switch (report.kind()) {
			case ABOVE_NECK -> {
				this.above = true;
				Integer worst = report.worst();
				this.moreThanMild |= worst != null && worst > this.rules.limits().mildWorst();
			}
			case STOMACH -> this.stomach = true;
			case FEVER -> this.fever = true;
			case COVID -> this.covid = true;
			default -> this.other = true;
		}
	}

	private PathEvidence evidence(Draft episode) {
		LocalDate last = this.lastSick;
		long ill = (last == null) ? 0 : last.toEpochDay() - episode.lengthFrom.toEpochDay() + 1;
		PathName judged = later(later(judged(ill), episode.floor), episode.path);
		return new PathEvidence(this.above, this.moreThanMild, this.stomach, this.other, this.fever, this.covid, ill,
				this.feverDays.days(), this.chestDays.days(), episode.floor, episode.path, judged);
	}

	private PathName judged(long ill) {
		RuleSet.Limits limits = this.rules.limits();
		if (this.covid || this.feverDays.days() >= limits.feverDays() || this.chestDays.days() > limits.chestDays()
				|| ill > limits.illDays()) {
			return PathName.LONG;
		}
		boolean onlyOneSort = this.above != this.stomach && !this.other && !this.fever;
		if (onlyOneSort && this.above && !this.moreThanMild && ill <= limits.shortDays()) {
			return PathName.SHORT;
		}
		return (onlyOneSort && this.stomach && ill <= limits.stomachDays()) ? PathName.STOMACH : PathName.THREE_WEEK;
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
