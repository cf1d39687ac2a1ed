package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

import org.fallow.entry.Absence;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.Fact;
import org.fallow.entry.HealthCondition;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.jspecify.annotations.Nullable;

/**
 * The facts known by the end of a day, looked at by the day they speak of. It grows as
 * the fold goes on.
 */
final class Known {

	private MorningsByDay mornings = new MorningsByDay();

	private final Readings readings = new Readings(this);

	private SessionsByDay sessions = new SessionsByDay();

	private final TreeMap<String, Absence> absences = new TreeMap<>();

	private final List<MedicineChange> medicines = new ArrayList<>();

	private final List<KnownSymptom> knownSymptoms = new ArrayList<>();

	private final List<IllnessEvent> events = new ArrayList<>();

	private final Set<LocalDate> slips = new TreeSet<>();

	private final List<HealthCondition> conditions = new ArrayList<>();

	private final List<Fact> fresh = new ArrayList<>();

	private final @Nullable LocalDate adultFrom;

	/** Counts up when earlier mornings may have to be read differently. */
	private int stamp;

	Known(@Nullable LocalDate adultFrom) {
		this.adultFrom = adultFrom;
	}

	/** A copy that can grow by itself, with the mornings and sessions from a day on. */
	Known from(LocalDate day) {
		Known copy = new Known(this.adultFrom);
		copy.mornings = this.mornings.from(day);
		copy.sessions = this.sessions.from(day);
		copy.absences.putAll(this.absences);
		copy.medicines.addAll(this.medicines);
		copy.knownSymptoms.addAll(this.knownSymptoms);
		copy.conditions.addAll(this.conditions);
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
		else if (fact instanceof Absence absence) {
			this.absences.put(absence.key(), absence);
		}
		else if (fact instanceof MedicineChange change) {
			this.medicines.add(change);
			this.stamp++;
		}
		else if (fact instanceof KnownSymptom symptom) {
			this.knownSymptoms.add(symptom);
			this.stamp++;
		}
		else if (fact instanceof HealthCondition condition) {
			this.conditions.add(condition);
		}
		else if (fact instanceof IllnessEvent event) {
			add(event);
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

	boolean isInjured(LocalDate day) {
		for (Absence absence : this.absences.values()) {
			if (absence.kind() == AbsenceKind.INJURY && absence.covers(day)) {
				return true;
			}
		}
		return false;
	}

	/** Whether an absence of more days than these ended within the days before a day. */
	boolean hasLongAbsenceEnded(LocalDate day, int before, int days) {
		if (this.absences.isEmpty()) {
			return false;
		}
		LocalDate from = day.minusDays(before);
		LocalDate to = day.minusDays(1);
		for (Absence absence : this.absences.values()) {
			LocalDate until = absence.until();
			if (until != null && !until.isBefore(from) && !until.isAfter(to)
					&& until.toEpochDay() - absence.day().toEpochDay() + 1 > days) {
				return true;
			}
		}
		return false;
	}

	/** Whether a condition that makes any illness a clinician's matter is present. */
	boolean hasCondition(LocalDate day) {
		Map<HealthCondition.Kind, HealthCondition> latest = new EnumMap<>(HealthCondition.Kind.class);
		for (HealthCondition condition : this.conditions) {
			if (!condition.day().isAfter(day)) {
				latest.merge(condition.kind(), condition, (a, b) -> b.day().isBefore(a.day()) ? a : b);
			}
		}
		return latest.values().stream().anyMatch(HealthCondition::present);
	}

	/** Whether a symptom is a known one, no worse than noted. */
	boolean isKnown(ReportedSymptom symptom, LocalDate day) {
		return this.knownSymptoms.stream().anyMatch((k) -> k.covers(symptom, day));
	}

	/** Whether a tick of a day was a slip: its morning is in no baseline and no row. */
	boolean isSlip(LocalDate day) {
		return this.slips.contains(day);
	}

	/** Whether the athlete counts as under 18. */
	boolean isMinor(LocalDate day) {
		return this.adultFrom == null || day.isBefore(this.adultFrom);
	}

	/** Whether a rate-lowering medicine is on: the change with the latest day decides. */
	boolean isOnMedicine(LocalDate day) {
		MedicineChange latest = null;
		for (MedicineChange change : this.medicines) {
			if (!change.day().isAfter(day) && (latest == null || !change.day().isBefore(latest.day()))) {
				latest = change;
			}
		}
		return latest != null && latest.on();
	}

	Sickness sickness(MorningEntry entry, double feverCelsius) {
		return Sickness.of(entry, this.knownSymptoms, feverCelsius);
	}

}
