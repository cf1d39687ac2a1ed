package org.fallow.training.core;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import java.util.Set;

import org.fallow.rules.Clearance;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Where an athlete stands today, as far as sessions depend on it.
 *
 * @param today the athlete's day
 * @param clearance of today
 * @param holding whether a clinician hold stands
 * @param back the return; absent without an open episode
 * @param onset first day of the illness; once its episode has closed, the last day of it
 * ill; absent if there was none of late
 * @param awayUntil last day of an absence that runs, such as an injury; absent if none
 * @param racesAgreed days of races for which the coach has given a word since the illness
 */
public record Position(LocalDate today, Clearance clearance, boolean holding, @Nullable Return back,
		@Nullable LocalDate onset, @Nullable LocalDate awayUntil, Set<LocalDate> racesAgreed) {

	/**
	 * Checks that today is told.
	 */
	public Position {
		Objects.requireNonNull(today);
		Objects.requireNonNull(clearance);
		racesAgreed = Set.copyOf(racesAgreed);
	}

	/**
	 * Without a coach's word for any race.
	 * @param today the athlete's day
	 * @param clearance of today
	 * @param holding whether a clinician hold stands
	 * @param back the return; absent without an open episode
	 * @param onset first day of the illness, or last day of a past one
	 * @param awayUntil last day of an absence
	 */
	public Position(LocalDate today, Clearance clearance, boolean holding, @Nullable Return back,
			@Nullable LocalDate onset, @Nullable LocalDate awayUntil) {
		this(today, clearance, holding, back, onset, awayUntil, Set.of());
	}

	/**
	 * The last day ill, from which a race is counted; while ill it is not over yet.
	 * @return absent if there was no illness of late, and while ill
	 */
	public @Nullable LocalDate lastIll() {
		if (this.back == null) {
			return this.onset;
		}
		LocalDate since = this.back.since();
		return (since == null) ? null : since.minusDays(1);
	}

	/**
	 * The same with a coach's word for races.
	 * @param races their days
	 * @return a new position
	 */
	public Position agreed(Set<LocalDate> races) {
		return new Position(this.today, this.clearance, this.holding, this.back, this.onset, this.awayUntil, races);
	}

	/**
	 * Somebody well.
	 * @param today the day
	 * @param clearance of today
	 * @return without an episode
	 */
	public static Position well(LocalDate today, Clearance clearance) {
		return new Position(today, clearance, false, null, null, null);
	}

	/**
	 * Whether the athlete is in a stage of a return, not ill any more.
	 * @return true from the first stage on
	 */
	public boolean isInStage() {
		return this.back != null && this.back.stage() > 0;
	}

	/**
	 * An open return.
	 *
	 * @param stage 0 while ill, else the stage's number
	 * @param stageSince first day in the stage
	 * @param since the day the first stage was reached after the latest onset; absent
	 * while ill
	 * @param path the path, under the rules the episode keeps
	 * @param longAwayDays days away over which the first hard session is lightened
	 */
	public record Return(int stage, LocalDate stageSince, @Nullable LocalDate since, RuleSet.Path path,
			int longAwayDays) {

		/**
		 * Checks the stage.
		 * @throws IllegalArgumentException if the path has none of this number
		 */
		public Return {
			if (stage < 0 || stage > path.stages().size()) {
				throw new IllegalArgumentException("no stage " + stage + " on this path");
			}
		}

		/**
		 * The present stage.
		 * @return absent while ill
		 */
		public RuleSet.@Nullable Stage now() {
			return (this.stage == 0) ? null : this.path.stages().get(this.stage - 1);
		}

		/**
		 * The day in the stage, counting from 1.
		 * @param day a day in it
		 * @return 1 on its first day
		 */
		public int dayInStage(LocalDate day) {
			return (int) ChronoUnit.DAYS.between(this.stageSince, day) + 1;
		}

	}

}
