package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.util.Locale;

import org.fallow.entry.AbsenceKind;
import org.fallow.illness.core.ReportKind;
import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * One invented event.
 *
 * @param person code of the athlete
 * @param recorded day it became known
 * @param day day it speaks of
 * @param kind report, clear, injury or holiday
 * @param arg a report's kind, a clearance's ceiling
 * @param value a report's worst severity
 * @param until last day of a clearance or absence; absent while open
 * @param note free text; of a clearance who gave it and in which role, with a comma
 */
record DemoEvent(String person, LocalDate recorded, LocalDate day, String kind, String arg, @Nullable Integer value,
		@Nullable LocalDate until, String note) {

	ReportKind reportKind() {
		return this.arg.equals("above") ? ReportKind.ABOVE_NECK : ReportKind.valueOf(this.arg.toUpperCase(Locale.ROOT));
	}

	Clearance ceiling() {
		return switch (this.arg) {
			case "Rest" -> Clearance.REST;
			case "Easy" -> Clearance.EASY_ONLY;
			case "Full" -> Clearance.FULL_TRAINING;
			default -> throw new IllegalArgumentException("no ceiling: " + this.arg);
		};
	}

	AbsenceKind absenceKind() {
		return AbsenceKind.valueOf(this.kind.toUpperCase(Locale.ROOT));
	}

	String who() {
		return this.note.split(",")[0].strip();
	}

	String role() {
		return this.note.split(",")[1].strip();
	}

}
