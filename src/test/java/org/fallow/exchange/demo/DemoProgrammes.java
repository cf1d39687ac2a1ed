package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * The two invented programmes: Tuesday hard, Thursday easy, Saturday harder or easy,
 * Sunday long; every fourth week less. They go on for four weeks after the season's end.
 */
final class DemoProgrammes {

	static final String HEADER = "group,week,day,session,terrain,time,place,name,parts";

	private static final int WEEKS = 30;

	private static final int RACE_WEEK = 28;

	private static final int TEST_WEEK = 12;

	private DemoProgrammes() {
	}

	static List<String> rows(LocalDate first) {
		List<String> rows = new ArrayList<>(List.of(HEADER));
		for (int week = 0; week < WEEKS; week++) {
			LocalDate monday = first.plusWeeks(week);
			String kind = (week == RACE_WEEK) ? "race"
					: (week == TEST_WEEK) ? "test" : (week % 4 == 3) ? "unloading" : "loading";
			fiveKilometres(rows, monday, kind);
			halfMarathon(rows, monday, kind);
		}
		return rows;
	}

	private static void fiveKilometres(List<String> rows, LocalDate monday, String kind) {
		Group group = new Group(rows, "5 km winter block", kind);
		boolean less = !kind.equals("loading");
		group.add(monday.plusDays(1), "key session,track,18:30,Harbour track,Repeats",
				less ? "15 min easy; 4 x 800 m in 3:20 vo2max, 2 min between; 12 min easy"
						: "15 min easy; 6 x 800 m in 3:20 vo2max, 2 min between; 8 min easy");
		group.add(monday.plusDays(3), "easy run,flat,,,", "42 min easy");
		if (kind.equals("race") || kind.equals("test")) {
			group.add(monday.plusDays(5), kind + ",track,10:00,Harbour track,5 km",
					"15 min easy; 4 x 20 s strides, 1 min between; 5000 m in 22 min race pace; 10 min easy");
		}
		else {
			group.add(monday.plusDays(5), "key session,flat,09:00,Mill lane,Tempo",
					"12 min easy; 3 x 7 min threshold, 1 min between; 10 min easy");
		}
		group.add(monday.plusDays(6), "long run,hill,,,", less ? "45 min easy" : "65 min easy");
	}

	private static void halfMarathon(List<String> rows, LocalDate monday, String kind) {
		Group group = new Group(rows, "Spring half-marathon", kind);
		boolean less = !kind.equals("loading");
		group.add(monday.plusDays(1), "key session,flat,18:30,Harbour gate,Threshold",
				less ? "15 min easy; 2 x 8 min threshold, 2 min between; 15 min easy"
						: "15 min easy; 3 x 8 min threshold, 2 min between; 10 min easy");
		group.add(monday.plusDays(3), "easy run,flat,,,", "42 min easy");
		group.add(monday.plusDays(5), "easy run,flat,09:00,Mill lane,With strides",
				"32 min easy; 4 x 20 s strides, 1 min between; 2 min easy");
		if (kind.equals("race")) {
			group.add(monday.plusDays(6), "race,flat,10:00,Lake road,Half-marathon",
					"10 min easy; 21098 m in 105 min race pace");
		}
		else {
			group.add(monday.plusDays(6), "long run,hill,,,", less ? "75 min easy" : "95 min easy");
		}
	}

	private record Group(List<String> rows, String name, String week) {

		void add(LocalDate day, String session, String parts) {
			String quoted = parts.contains(",") ? '"' + parts + '"' : parts;
			this.rows.add(this.name + "," + this.week + "," + day + "," + session + "," + quoted);
		}

	}

}
