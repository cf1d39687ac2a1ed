package org.fallow.rules;

import java.util.List;
import java.util.Objects;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonInclude.Include;
import com.fasterxml.jackson.annotation.JsonProperty;
import org.jspecify.annotations.Nullable;

/**
 * Every number a decision depends on. A rule set never changes once it is stored; a new
 * one takes effect from a day, and an open episode keeps its own.
 *
 * @param baseline how an athlete's normal is computed
 * @param flags how far from normal is what
 * @param line the line, and what is above it
 * @param hrv heart-rate variability
 * @param opening when an episode opens, and what is fever
 * @param gates what opens a gate, what steps back
 * @param limits how the path is judged
 * @param workingLevel when a coach may set a working level
 * @param advice when people are told something besides
 * @param slips when a tick may be told to be a slip, and what follows
 * @param words how long somebody's word stands
 * @param told how long what athletes tell of themselves stands, and when they are asked
 * @param paths the return paths, shortest first, one for each {@link PathName}
 */
public record RuleSet(Baseline baseline, Flags flags, Line line, Hrv hrv, Opening opening, Gates gates, Limits limits,
		WorkingLevel workingLevel, Advice advice, SlipRules slips, WordRules words, ToldRules told, List<Path> paths) {

	/** Copies the paths and checks that each name has one, in order. */
	public RuleSet {
		requireAll(baseline, flags, line, hrv, opening, gates, limits, workingLevel, advice, slips, words, told);
		paths = List.copyOf(paths);
		if (!paths.stream().map(Path::name).toList().equals(List.of(PathName.values()))) {
			throw new IllegalArgumentException("a rule set needs one path for each name, shortest first");
		}
	}

	private static void requireAll(Record... groups) {
		for (Record group : groups) {
			Objects.requireNonNull(group, "a group of numbers is missing");
		}
	}

	/**
	 * Number of the format of its text.
	 * @return the same for every rule set that this Fallow writes
	 */
	@JsonProperty(access = JsonProperty.Access.READ_ONLY)
	public int format() {
		return RuleJson.FORMAT;
	}

	/**
	 * The path of a name.
	 * @param name which
	 * @return the path
	 */
	public Path path(PathName name) {
		return this.paths.get(name.ordinal());
	}

	/**
	 * The same rule set with another path of one name.
	 * @param path the path to take
	 * @return a rule set with it
	 */
	public RuleSet with(Path path) {
		List<Path> changed = this.paths.stream().map((own) -> (own.name() == path.name()) ? path : own).toList();
		return new RuleSet(this.baseline, this.flags, this.line, this.hrv, this.opening, this.gates, this.limits,
				this.workingLevel, this.advice, this.slips, this.words, this.told, changed);
	}

	/**
	 * Baseline numbers.
	 *
	 * @param windowDays calendar days before the day
	 * @param fewReadings below this many in the window, older ones are taken
	 * @param fallbackReadings how many of the latest are then taken
	 * @param fallbackDays from how many calendar days
	 * @param provisionalFrom readings from which there is a baseline at all
	 * @param establishedFrom readings from which it is established
	 * @param marginDays days before onset that are already out
	 * @param leastSpreadBpm least spread, bpm
	 * @param madScale factor from MAD to spread
	 * @param leastLnSd least SD of ln RMSSD
	 * @param releaseReadings newer readings that end a held baseline after the close
	 * @param releaseDays days after the close that end it at the latest
	 * @param driftBpm rise of the baseline that is told to the coach, bpm
	 * @param driftDays over how many days
	 */
	public record Baseline(int windowDays, int fewReadings, int fallbackReadings, int fallbackDays, int provisionalFrom,
			int establishedFrom, int marginDays, double leastSpreadBpm, double madScale, double leastLnSd,
			int releaseReadings, int releaseDays, double driftBpm, int driftDays) {
	}

	/**
	 * Deviation flags, bpm.
	 *
	 * @param lowFloor least distance below the baseline that is low
	 * @param lowSpreads spreads below the baseline that are low
	 * @param highFloor least deviation that is high
	 * @param highCeiling greatest limit of high
	 * @param highSpreads spreads in the limit of high
	 * @param veryHigh deviation that is very high
	 * @param restingBpm reading that is very high for anybody lying or sitting
	 * @param standingBpm the same standing
	 * @param askFloor deviation from which, at the earliest, a morning is asked about
	 * @param askCeiling deviation from which it is at the latest
	 * @param askBpm reading that is asked about where there is no baseline
	 * @param keptMornings mornings without a reading over which a flag is kept
	 * @param lowApartDays most days between two low readings that count together
	 */
	public record Flags(double lowFloor, double lowSpreads, double highFloor, double highCeiling, double highSpreads,
			double veryHigh, double restingBpm, double standingBpm, double askFloor, double askCeiling, double askBpm,
			int keptMornings, int lowApartDays) {
	}

	/**
	 * The line, and above the line: readings running that are above even the athlete's
	 * own higher mornings. Bpm are above the baseline.
	 *
	 * @param days calendar days before the day whose readings it looks at
	 * @param leastReadings below this many the line is the ceiling
	 * @param secondFrom readings from which the second-highest counts; with fewer the
	 * highest does, the reading before left out
	 * @param thirdFrom readings from which the third-highest counts
	 * @param margin from there to the line, bpm
	 * @param floor least line, bpm
	 * @param ceiling greatest line, bpm
	 * @param apartDays most days between a reading and the one before
	 * @param pairFloor neither of the two is under this, bpm
	 * @param pairBelow nor further below the line than this, bpm
	 * @param aloneFactor lines at which one reading is enough
	 * @param endsBelow a reading under this ends it, bpm
	 */
	public record Line(int days, int leastReadings, int secondFrom, int thirdFrom, double margin, double floor,
			double ceiling, int apartDays, double pairFloor, double pairBelow, double aloneFactor, double endsBelow) {
	}

	/**
	 * Heart-rate variability, ln RMSSD.
	 *
	 * @param days mornings in the mean, today among them
	 * @param leastReadings readings it needs
	 * @param suppressedSds SDs below the baseline mean that are suppressed
	 * @param drawnSds half-width of the drawn band, SDs
	 */
	public record Hrv(int days, int leastReadings, double suppressedSds, double drawnSds) {
	}

	/**
	 * Opening of an episode.
	 *
	 * @param coldMornings entered mornings running with symptoms above the neck
	 * @param coldWithinDays within how many days
	 * @param feverCelsius temperature from which it is fever
	 * @param restStandsDays days after a rest over which it stands without an entry
	 * @param withdrawalAfterFeverDays mornings back over which fever forbids a withdrawal
	 */
	public record Opening(int coldMornings, int coldWithinDays, double feverCelsius, int restStandsDays,
			int withdrawalAfterFeverDays) {
	}

	/**
	 * Gates and steps back.
	 *
	 * @param untrackedMornings symptom-free mornings where resting heart rate is not
	 * tracked
	 * @param quietFloor least deviation from which a morning is not quiet, bpm, and the
	 * one where readings are few
	 * @param quietSpreads spreads in that deviation
	 * @param quietMargin added to these spreads, bpm
	 * @param badFreeMornings mornings without a bad one, today among them
	 * @param sessionDays days of sessions looked at, today among them
	 * @param badMorningsBack bad mornings that step back
	 * @param symptomStepEvery mornings between two steps back by symptoms
	 */
	public record Gates(int untrackedMornings, double quietFloor, double quietSpreads, double quietMargin,
			int badFreeMornings, int sessionDays, int badMorningsBack, int symptomStepEvery) {
	}

	/**
	 * How the path is judged, days.
	 *
	 * @param shortDays longest illness on the short path
	 * @param stomachDays longest illness on the stomach path
	 * @param feverDays fever from which the long path is taken
	 * @param chestDays chest symptoms over which it is taken
	 * @param illDays any illness over which it is taken
	 * @param moderateWorst greatest reported severity that is not severe, 0 to 10
	 * @param covidColdDays longest COVID-19 without more than symptoms above the neck
	 * that takes the three-week path; 0 for the long path always
	 * @param vaccinationDays longest illness on the vaccination path
	 * @param vaccinationWithinDays days after the vaccination on which it may begin
	 * @param vaccinationEveryDays days in which one vaccination counts
	 * @param vaccinationCelsius temperature from which it is no reaction to it
	 * @param wheezeDays days after a vaccination on which wheeze is a red flag
	 */
	public record Limits(int shortDays, int stomachDays, int feverDays, int chestDays, int illDays, int moderateWorst,
			int covidColdDays, int vaccinationDays, int vaccinationWithinDays, int vaccinationEveryDays,
			double vaccinationCelsius, int wheezeDays) {
	}

	/**
	 * When a coach may set a working level: the gate was shut by resting heart rate alone
	 * on most of the latest symptom-free mornings.
	 *
	 * @param shutMornings mornings on which it was shut
	 * @param ofMornings of this many symptom-free mornings, all of which are needed
	 * @param medianMornings readings in the median that becomes the level
	 * @param mostDeviation deviation from the athlete's own baseline, bpm, from which no
	 * level is set, and a morning is judged by the own baseline
	 */
	public record WorkingLevel(int shutMornings, int ofMornings, int medianMornings, double mostDeviation) {
	}

	/**
	 * When people are told something besides the clearance; none of it decides.
	 *
	 * @param clinicianIllDays days ill over which a clinician is advised
	 * @param clinicianFeverDays mornings with fever from which a clinician is advised
	 * @param highFeverCelsius temperature from which a clinician is advised
	 * @param stalledFactor times a path's least days after which a return has stalled
	 * @param longAwayDays days away over which the return to full training is lightened
	 * @param stomachApartDays days after vomiting or diarrhoea to stay away from others
	 * @param throatDays days of a sore throat with swollen glands or fatigue over which a
	 * clinician is advised
	 * @param afterSessionDays days within which the same yes after sessions on two days
	 * has lasted
	 * @param longAwayToldDays days after a long absence on which it is still told
	 */
	public record Advice(int clinicianIllDays, int clinicianFeverDays, double highFeverCelsius, double stalledFactor,
			int longAwayDays, int stomachApartDays, int throatDays, int afterSessionDays, int longAwayToldDays) {
	}

	/**
	 * A return path.
	 *
	 * @param name which
	 * @param illDays least days from the latest onset to the first stage
	 * @param fromLastSymptom true if these run from the last symptom instead
	 * @param symptomFreeMornings in a row before the first stage
	 * @param eating true if eating and drinking normally is asked for
	 * @param stages in order; the last one is watched, and closes the episode
	 * @param protocol who published this definition; absent for our own
	 */
	public record Path(PathName name, int illDays, boolean fromLastSymptom, int symptomFreeMornings, boolean eating,
			List<Stage> stages, @JsonInclude(Include.NON_NULL) @Nullable Protocol protocol) {

		/** Copies the stages and checks that there is one. */
		public Path {
			Objects.requireNonNull(name);
			protocol = (protocol == Protocol.OURS) ? null : protocol;
			stages = List.copyOf(stages);
			if (stages.isEmpty()) {
				throw new IllegalArgumentException("a path needs a stage");
			}
		}

		/**
		 * Who wrote the definition.
		 * @return {@link Protocol#OURS} where none is named
		 */
		public Protocol definedBy() {
			return (this.protocol == null) ? Protocol.OURS : this.protocol;
		}

		/**
		 * Least days from the day {@link #illDays} run from to the last stage.
		 * @return days, every morning being good
		 */
		public int daysToLastStage() {
			return Math.max(this.illDays, this.symptomFreeMornings)
					+ this.stages.stream().limit(this.stages.size() - 1L).mapToInt(Stage::days).sum();
		}

		/**
		 * Least days from the same day to the close.
		 * @return days, every morning being good
		 */
		public int daysToClose() {
			return daysToLastStage() + this.stages.get(this.stages.size() - 1).days();
		}

	}

	/**
	 * A stage of a path.
	 *
	 * @param days counted days before it can be left
	 * @param clearance clearance of its good days
	 * @param runs runs logged before it can be left upwards
	 * @param effortCeiling greatest session RPE, CR-10; absent where as programmed
	 * @param heartRateCeiling greatest share of HRmax; absent where as programmed
	 * @param highest highest intensity; absent where as programmed
	 * @param volumeShare share of the usual weekly volume
	 * @param longRunShare share of the usual long run
	 * @param longRunMinutes greatest minutes of a run; absent where only the share counts
	 * @param firstRunMinutes greatest minutes of each of the first days' runs, by day in
	 * the stage; empty where only the rest counts
	 * @param borgCeiling greatest rating of perceived exertion on the scale of 6 to 20,
	 * as published; the effort ceiling is what we make of it; absent where none is given
	 */
	public record Stage(int days, Clearance clearance, int runs, @Nullable Double effortCeiling,
			@Nullable Double heartRateCeiling, @Nullable Intensity highest, double volumeShare, double longRunShare,
			@Nullable Integer longRunMinutes, List<Integer> firstRunMinutes,
			@JsonInclude(Include.NON_NULL) @Nullable Integer borgCeiling) {

		/** Copies the minutes. */
		public Stage {
			Objects.requireNonNull(clearance);
			firstRunMinutes = List.copyOf(firstRunMinutes);
		}

	}

}
