package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.MorningEntry;
import org.fallow.entry.Recorded;
import org.fallow.entry.Vaccination;
import org.fallow.rules.RuleSet;
import org.jspecify.annotations.Nullable;

/**
 * Whether a vaccination explains an illness: noted before the first sick morning's entry,
 * once in the rules' days, begun on one of the days after it, and nothing but fever below
 * the limit, symptoms of the whole body and medicine for it. The morning of the
 * vaccination's own day comes before it (the safer reading).
 */
final class AfterVaccination {

	private final RuleSet.Limits limits;

	private boolean more;

	private @Nullable Recorded firstTold;

	AfterVaccination(RuleSet.Limits limits) {
		this.limits = limits;
	}

	void see(Morning morning, Sickness sick) {
		Double temperature = morning.effective().temperatureC();
		this.more |= sick.aboveTheNeck() || sick.stomach() || sick.belowTheNeck() || sick.redFlag() || sick.smell()
				|| (temperature != null && temperature >= this.limits.vaccinationCelsius());
		if (sick.isSick()) {
			for (MorningEntry entry : morning.revisions()) {
				told(entry.recorded());
			}
		}
	}

	void see(IllnessEvent.Report report) {
		this.more |= report.kind() != ReportKind.FEVER;
		told(report.recorded());
	}

	private void told(Recorded recorded) {
		Recorded first = this.firstTold;
		this.firstTold = (first == null || recorded.compareTo(first) < 0) ? recorded : first;
	}

	/**
	 * The day of the vaccination that explains it; null if none does.
	 * @param onset first sick morning
	 * @param sickDays from the onset to the last sick morning, both counted
	 */
	@Nullable LocalDate day(Known known, LocalDate onset, long sickDays) {
		Recorded told = this.firstTold;
		if (this.more || told == null || sickDays > this.limits.vaccinationDays()) {
			return null;
		}
		for (Vaccination noted : known.circumstances().vaccinations()) {
			long after = onset.toEpochDay() - noted.day().toEpochDay();
			if (after > 0 && after <= this.limits.vaccinationWithinDays() && noted.recorded().compareTo(told) < 0
					&& isTheOnlyOne(known, noted)) {
				return noted.day();
			}
		}
		return null;
	}

	/** The last of the days after another one is not free yet (the safer reading). */
	private boolean isTheOnlyOne(Known known, Vaccination noted) {
		for (Vaccination other : known.circumstances().vaccinations()) {
			long before = noted.day().toEpochDay() - other.day().toEpochDay();
			if (before > 0 && before <= this.limits.vaccinationEveryDays()) {
				return false;
			}
		}
		return true;
	}

}
