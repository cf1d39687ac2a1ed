package org.fallow.illness.core;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.entry.Absence;
import org.fallow.entry.AbsenceKind;
import org.fallow.entry.DeviceChange;
import org.fallow.entry.Fact;
import org.fallow.entry.HealthCondition;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.Vaccination;
import org.jspecify.annotations.Nullable;

/**
 * What is known of an athlete besides mornings, sessions and illness: absences, medicine,
 * conditions, vaccinations and changes about the measuring.
 */
final class Circumstances {

	private final TreeMap<String, Absence> absences = new TreeMap<>();

	private final List<MedicineChange> medicines = new ArrayList<>();

	private final List<HealthCondition> conditions = new ArrayList<>();

	private final List<Vaccination> vaccinations = new ArrayList<>();

	private final List<DeviceChange> deviceChanges = new ArrayList<>();

	Circumstances copy() {
		Circumstances copy = new Circumstances();
		copy.absences.putAll(this.absences);
		copy.medicines.addAll(this.medicines);
		copy.conditions.addAll(this.conditions);
		copy.vaccinations.addAll(this.vaccinations);
		copy.deviceChanges.addAll(this.deviceChanges);
		return copy;
	}

	/** Takes in a fact; answers whether earlier readings may be of another series now. */
	boolean add(Fact fact) {
		if (fact instanceof Absence absence) {
			this.absences.put(absence.key(), absence);
		}
		else if (fact instanceof HealthCondition condition) {
			this.conditions.add(condition);
		}
		else if (fact instanceof Vaccination vaccination) {
			this.vaccinations.add(vaccination);
		}
		else if (fact instanceof MedicineChange change) {
			return this.medicines.add(change);
		}
		else if (fact instanceof DeviceChange change) {
			return this.deviceChanges.add(change);
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

	/**
	 * First morning after the latest change about a way of measuring; null before any.
	 */
	@Nullable LocalDate measuredSince(Method method, LocalDate day) {
		LocalDate since = null;
		for (DeviceChange change : this.deviceChanges) {
			boolean concerns = change.concerns(method) && !change.day().isAfter(day);
			since = (concerns && (since == null || change.day().isAfter(since))) ? change.day() : since;
		}
		return since;
	}

	/** Vaccinations noted, in the order recorded. */
	List<Vaccination> vaccinations() {
		return this.vaccinations;
	}

	/** Whether a rate-lowering medicine was begun on a day or since, and is on. */
	boolean hasBegunMedicine(LocalDate since, LocalDate day) {
		return isOnMedicine(day) && !isOnMedicine(since.minusDays(1));
	}

}
