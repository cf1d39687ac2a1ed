package org.fallow.entry;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Checks a morning before it is stored. Every problem is told, not only the first.
 */
final class MorningCheck {

	private static final double LOWEST_RMSSD = 0.001;

	private static final double LOWEST_TEMPERATURE = 30;

	private static final double HIGHEST_TEMPERATURE = 45;

	private final List<Problem> problems = new ArrayList<>();

	private MorningCheck() {
	}

	static List<Problem> of(NewMorning morning, LocalDate today, Source source) {
		MorningCheck check = new MorningCheck();
		Days.check(check.problems, "day", morning.day(), today, source);
		check.measurement(morning);
		check.symptoms(morning.symptoms());
		Words.check(check.problems, "note", morning.note());
		return check.problems;
	}

	private void measurement(NewMorning morning) {
		range("rhr", "entry.rhr.range", morning.rhrBpm(), MorningEntry.LOWEST_RHR, MorningEntry.HIGHEST_RHR);
		range("rmssd", "entry.rmssd.range", morning.rmssdMs(), LOWEST_RMSSD, MorningEntry.HIGHEST_RMSSD);
		range("temperature", "entry.temperature.range", morning.temperatureC(), LOWEST_TEMPERATURE,
				HIGHEST_TEMPERATURE);
		boolean measured = morning.rhrBpm() != null || morning.rmssdMs() != null;
		if (measured && morning.method() == null) {
			this.problems.add(Problem.of("method", "entry.method.missing"));
		}
		if (measured && morning.posture() == null) {
			this.problems.add(Problem.of("posture", "entry.posture.missing"));
		}
	}

	private void range(String field, String code, @Nullable Double value, double lowest, double highest) {
		if (value != null && !(value >= lowest && value <= highest)) {
			this.problems.add(Problem.of(field, code, lowest, highest));
		}
	}

	private void symptoms(List<ReportedSymptom> symptoms) {
		long different = symptoms.stream().map(ReportedSymptom::symptom).distinct().count();
		if (different < symptoms.size()) {
			this.problems.add(Problem.of("symptoms", "entry.symptoms.twice"));
		}
		for (ReportedSymptom reported : symptoms) {
			String text = reported.text();
			if (reported.symptom().isInOwnWords() && (text == null || text.isBlank())) {
				this.problems.add(Problem.of("otherSymptom", "entry.other-symptom.missing"));
			}
			if (reported.symptom() == Symptom.OTHER_COMPLAINT && text != null && FreeWords.speakOfARedFlag(text)) {
				this.problems.add(Problem.of("otherSymptom", "entry.other-symptom.no-complaint"));
			}
			Words.check(this.problems, "otherSymptom", text);
		}
	}

}
