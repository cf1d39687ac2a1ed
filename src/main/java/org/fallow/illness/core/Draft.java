package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.List;

import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * An episode while a day is being decided. It lives for one day's step only.
 */
final class Draft {

	final String ruleHash;

	final LocalDate openedOn;

	LocalDate firstOnset;

	LocalDate latestOnset;

	LocalDate lengthFrom;

	PathName path;

	PathName floor;

	int stage;

	LocalDate stageSince;

	int counted;

	final boolean tracked;

	boolean symptomsOnly;

	Held held;

	@Nullable LocalDate stage1First;

	@Nullable LocalDate stage1On;

	boolean relapseRunning;

	int badRun;

	@Nullable LocalDate steppedBySymptoms;

	List<FreeMorning> free;

	List<Standing> standing;

	Draft(Episode episode) {
		this.ruleHash = episode.ruleHash();
		this.openedOn = episode.openedOn();
		this.firstOnset = episode.firstOnset();
		this.latestOnset = episode.latestOnset();
		this.lengthFrom = episode.lengthFrom();
		this.path = episode.path();
		this.floor = episode.floor();
		this.stage = episode.stage();
		this.stageSince = episode.stageSince();
		this.counted = episode.counted();
		this.tracked = episode.tracked();
		this.symptomsOnly = episode.symptomsOnly();
		this.held = episode.held();
		this.stage1First = episode.stage1First();
		this.stage1On = episode.stage1On();
		this.relapseRunning = episode.relapseRunning();
		this.badRun = episode.badRun();
		this.steppedBySymptoms = episode.steppedBySymptoms();
		this.free = episode.free();
		this.standing = episode.standing();
	}

	static Draft opened(String ruleHash, LocalDate day, LocalDate onset, Held held) {
		return new Draft(new Episode(ruleHash, day, onset, onset, onset, PathName.VACCINATION, PathName.VACCINATION, 0,
				day, 0, held.rhr() != null, false, held, null, null, false, 0, null, List.of(), List.of()));
	}

	Episode toEpisode() {
		return new Episode(this.ruleHash, this.openedOn, this.firstOnset, this.latestOnset, this.lengthFrom, this.path,
				this.floor, this.stage, this.stageSince, this.counted, this.tracked, this.symptomsOnly, this.held,
				this.stage1First, this.stage1On, this.relapseRunning, this.badRun, this.steppedBySymptoms, this.free,
				this.standing);
	}

	/** Enters a stage anew, 0 for ill: days and bad mornings count from here. */
	void enter(int newStage, LocalDate day) {
		this.stage = newStage;
		this.stageSince = day;
		this.counted = 0;
		this.badRun = 0;
		this.standing = List.of();
		if (newStage == 1) {
			this.stage1First = (this.stage1First == null) ? day : this.stage1First;
			this.stage1On = (this.stage1On == null) ? day : this.stage1On;
		}
	}

	/** Symptoms of illness are back: ill, a new onset, one path longer. */
	void relapse(LocalDate onset, LocalDate day) {
		enter(0, day);
		this.latestOnset = later(this.latestOnset, onset);
		this.lengthFrom = this.latestOnset;
		this.floor = (this.floor.compareTo(longer(this.path)) > 0) ? this.floor : longer(this.path);
		this.stage1On = null;
		this.held = this.held.with(null);
		this.free = List.of();
		this.steppedBySymptoms = day;
	}

	static LocalDate later(LocalDate one, LocalDate other) {
		return one.isAfter(other) ? one : other;
	}

	static PathName longer(PathName path) {
		return switch (path) {
			case VACCINATION, SHORT, STOMACH -> PathName.THREE_WEEK;
			case THREE_WEEK, LONG -> PathName.LONG;
		};
	}

	boolean tracksNow() {
		return this.tracked && !this.symptomsOnly;
	}

	RuleSet.Path path(RuleSet rules) {
		return rules.path(this.path);
	}

}
