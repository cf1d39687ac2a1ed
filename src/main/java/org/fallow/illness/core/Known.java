package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.fallow.entry.Fact;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * The facts known by the end of a day, looked at by the day they speak of. It grows as
 * the fold goes on.
 */
final class Known {

	private MorningsByDay mornings = new MorningsByDay();

	private final Readings readings = new Readings(this);

	private SessionsByDay sessions = new SessionsByDay();

	private Circumstances circumstances = new Circumstances();

	private PassedOver passedOver = new PassedOver();

	/** Reports that answers about an illness meanwhile promised. */
	private final List<IllnessEvent.Report> promised = new ArrayList<>();

	private final List<IllnessEvent> events = new ArrayList<>();

	private final Set<LocalDate> slips = new TreeSet<>();

	private final List<Fact> fresh = new ArrayList<>();

	private final @Nullable LocalDate adultFrom;

	private final RuleBook book;

	/** Counts up when earlier mornings may have to be read differently. */
	private int stamp;

	Known(@Nullable LocalDate adultFrom, RuleBook book) {
		this.adultFrom = adultFrom;
		this.book = book;
	}

	/** A copy that can grow by itself, with the mornings and sessions from a day on. */
	Known from(LocalDate day) {
		Known copy = new Known(this.adultFrom, this.book);
		copy.mornings = this.mornings.from(day);
		copy.sessions = this.sessions.from(day);
		copy.circumstances = this.circumstances.copy();
		copy.passedOver = this.passedOver.copy();
		copy.promised.addAll(this.promised);
		copy.events.addAll(this.events);
		copy.slips.addAll(this.slips);
		return copy;
	}

	/** Begins a new day: nothing is fresh yet. */
	void newDay() {
		this.fresh.clear();
	}

	void add(Fact fact) {
		this.fresh.add(fact);
		if (fact instanceof MorningEntry entry) {
			add(entry);
		}
		else if (fact instanceof SessionLog session) {
			this.sessions.add(session);
		}
		else if (fact instanceof KnownSymptom symptom) {
			this.passedOver.add(symptom);
			this.stamp++;
		}
		else if (fact instanceof IllnessEvent event) {
			add(event);
		}
		else if (this.circumstances.add(fact)) {
			this.stamp++;
		}
	}

	private void add(IllnessEvent event) {
		this.events.add(event);
		boolean slip = event instanceof IllnessEvent.Slip || event instanceof IllnessEvent.SlipAccepted;
		if (slip && Slips.of(this, event.recorded().on()) != null) {
			this.slips.add(event.recorded().on());
			this.stamp++;
		}
	}

	private void add(MorningEntry entry) {
		if (!this.mornings.add(entry)) {
			this.stamp++;
		}
		Meanwhile meanwhile = entry.meanwhile();
		if (meanwhile != null && meanwhile.ill()) {
			promise(entry, meanwhile);
		}
	}

	/** Who answers to have been ill meanwhile reports an illness. */
	private void promise(MorningEntry entry, Meanwhile meanwhile) {
		LocalDate told = meanwhile.since();
		LocalDate onset = (told == null || told.isAfter(entry.day()))
				? Silence.firstBefore(entry, this, this.book.on(entry.recorded().on()).rules()) : told;
		IllnessEvent.Report report = new IllnessEvent.Report(onset, entry.recorded(), ReportKind.OTHER, null, null);
		this.promised.add(report);
		this.events.add(report);
		this.fresh.add(report);
	}

	/** Whether a report is no more than an answer about an illness meanwhile. */
	boolean isPromised(IllnessEvent.Report report) {
		for (IllnessEvent.Report one : this.promised) {
			if (one == report) {
				return true;
			}
		}
		return false;
	}

	/** The day the open episode opened on; null while there is none. */
	void during(@Nullable LocalDate openedOn) {
		this.passedOver.during(openedOn);
	}

	int stamp() {
		return this.stamp;
	}

	Readings readings() {
		return this.readings;
	}

	/** Facts recorded on the current day, in the order recorded. */
	List<Fact> fresh() {
		return this.fresh;
	}

	<T extends Fact> List<T> fresh(Class<T> type) {
		return of(type, this.fresh);
	}

	@Nullable MorningEntry morning(LocalDate day) {
		Morning morning = morningOn(day);
		return (morning == null) ? null : morning.effective();
	}

	@Nullable Morning morningOn(LocalDate day) {
		return this.mornings.on(day);
	}

	/** All mornings, oldest first. */
	List<Morning> mornings() {
		return this.mornings.all();
	}

	/** Mornings from a day (inclusive) to a day (exclusive), oldest first. */
	List<Morning> mornings(LocalDate from, LocalDate to) {
		return this.mornings.between(from.toEpochDay(), to.toEpochDay());
	}

	/** The mornings of some days up to a day, that one among them, oldest first. */
	List<Morning> lastMornings(int days, LocalDate to) {
		long end = to.toEpochDay() + 1;
		return this.mornings.between(end - days, end);
	}

	/** Mornings up to a day, inclusive, latest first. */
	List<Morning> backFrom(LocalDate day) {
		return this.mornings.backFrom(day);
	}

	/** Sessions that count, of the days from a day to a day, both inclusive. */
	List<SessionLog> sessions(LocalDate from, LocalDate to) {
		return this.sessions.between(from, to);
	}

	List<IllnessEvent> events() {
		return this.events;
	}

	<T extends IllnessEvent> List<T> events(Class<T> type) {
		return of(type, this.events);
	}

	private static <T> List<T> of(Class<T> type, List<?> all) {
		List<T> found = List.of();
		for (Object one : all) {
			if (type.isInstance(one)) {
				found = found.isEmpty() ? new ArrayList<>(2) : found;
				found.add(type.cast(one));
			}
		}
		return found;
	}

	/** Whether a morning of another day was recorded on the current one. */
	boolean hasLate(LocalDate today) {
		for (Fact fact : this.fresh) {
			if (fact instanceof MorningEntry && !fact.day().equals(today)) {
				return true;
			}
		}
		return false;
	}

	/** Whether a morning of a day was recorded on the current one. */
	boolean isFresh(LocalDate day) {
		for (Fact fact : this.fresh) {
			if (fact instanceof MorningEntry && fact.day().equals(day)) {
				return true;
			}
		}
		return false;
	}

	/** What else is known of the athlete. */
	Circumstances circumstances() {
		return this.circumstances;
	}

	boolean isInjured(LocalDate day) {
		return this.circumstances.isInjured(day);
	}

	/** Whether a rate-lowering medicine is on. */
	boolean isOnMedicine(LocalDate day) {
		return this.circumstances.isOnMedicine(day);
	}

	/** Whether a symptom is a known one, no worse than noted. */
	boolean isKnown(ReportedSymptom symptom, MorningEntry entry, RuleSet rules) {
		return this.passedOver.covers(symptom, entry, this.mornings, rules.told());
	}

	/** Whether a tick of a day was a slip: its morning is in no baseline and no row. */
	boolean isSlip(LocalDate day) {
		return this.slips.contains(day);
	}

	/** Whether the athlete counts as under 18. */
	boolean isMinor(LocalDate day) {
		return this.adultFrom == null || day.isBefore(this.adultFrom);
	}

	Sickness sickness(MorningEntry entry, RuleSet rules) {
		return Sickness.of(entry, this.passedOver, this.mornings, rules);
	}

}
