package org.fallow.exchange.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * One athlete's sessions: the group's week, or what the story says is run.
 */
final class DemoSessions {

	static final String HEADER = "person,recorded,day,activity,minutes,rpe,intensity,after,note";

	private static final LocalDate FIRST = LocalDate.of(2026, 1, 5);

	private final DemoAthlete athlete;

	private final Random random;

	DemoSessions(DemoAthlete athlete) {
		this.athlete = athlete;
		this.random = new Random(athlete.code().hashCode() * 104729L);
	}

	List<String> rows(LocalDate first, LocalDate last) {
		List<String> rows = new ArrayList<>();
		for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
			Map<String, String> story = DemoStories.of(this.athlete.code(), day);
			boolean done = this.random.nextDouble() < 0.92;
			int vary = this.random.nextInt(9) - 4;
			String run = story.get("run");
			if (run != null) {
				addReturn(rows, day, run);
			}
			else if (done) {
				addUsual(rows, day, vary);
			}
		}
		return rows;
	}

	private void addReturn(List<String> rows, LocalDate day, String run) {
		if (run.equals("none") || ChronoUnit.DAYS.between(FIRST, day) % 2 != 0) {
			return;
		}
		rows.add(run.equals("easy") ? session(day, 25, 2, "easy") : session(day, 40, 3, "strides"));
	}

	private void addUsual(List<String> rows, LocalDate day, int vary) {
		boolean winter = this.athlete.group().startsWith("5");
		boolean unloading = ChronoUnit.WEEKS.between(FIRST, day) % 4 == 3;
		DayOfWeek weekday = day.getDayOfWeek();
		switch (weekday) {
			case TUESDAY -> rows.add(session(day, 52 + vary, unloading ? 5 : 7, winter ? "vo2max" : "threshold"));
			case THURSDAY -> rows.add(session(day, 42 + vary, 3, "easy"));
			case SATURDAY ->
				rows.add(session(day, (winter ? 45 : 38) + vary, winter ? 6 : 3, winter ? "threshold" : "easy"));
			case SUNDAY -> rows.add(session(day, (winter ? 65 : 95) + 3 * vary - (unloading ? 20 : 0), 4, "easy"));
			default -> {
			}
		}
	}

	private String session(LocalDate day, int minutes, int rpe, String intensity) {
		return String.join(",", this.athlete.code(), day.toString(), day.toString(), "run", String.valueOf(minutes),
				String.valueOf(rpe), intensity, "", "");
	}

}
