package org.fallow.exchange.demo;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;

/**
 * One athlete's mornings: usual values, noise, and what the story changes.
 */
final class DemoMornings {

	static final String HEADER = "person,date,rhr_bpm,rmssd_ms,method,posture,symptoms,fever24h,fever_medicine,feels,tags,"
			+ "note,eating_normally,unsure";

	private static final double MISSED = 0.05;

	private static final LocalDate NOBODY_MISSES_FROM = LocalDate.of(2026, 7, 4);

	private final DemoAthlete athlete;

	private final Random random;

	DemoMornings(DemoAthlete athlete) {
		this.athlete = athlete;
		this.random = new Random(athlete.code().hashCode() * 7919L);
	}

	List<String> rows(LocalDate first, LocalDate last) {
		List<String> rows = new ArrayList<>();
		for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
			Map<String, String> story = DemoStories.of(this.athlete.code(), day);
			String days = story.getOrDefault("days", "");
			boolean missed = this.random.nextDouble() < MISSED && story.getOrDefault("symptoms", "").isEmpty()
					&& !story.containsKey("note") && !days.equals("calm") && day.isBefore(NOBODY_MISSES_FROM);
			String row = row(day, story, days.equals("calm") ? 0.55 : 1);
			if (!missed && !days.equals("silent")) {
				rows.add(row);
			}
		}
		return rows;
	}

	private String row(LocalDate day, Map<String, String> story, double noise) {
		boolean drinks = this.random.nextDouble() < 0.1 && weekend(day) && noise == 1 && !story.containsKey("symptoms");
		double season = 0.6 * Math.sin(2 * Math.PI * day.getDayOfYear() / 70.0 + this.athlete.rhr());
		double rhr = this.athlete.rhr() + season + noise * this.athlete.rhrSd() * bounded() + number(story, "rhr")
				+ (drinks ? 3 : 0);
		double ln = noise * this.athlete.lnSd() * bounded() + number(story, "ln") - (drinks ? 0.12 : 0);
		String tags = story.getOrDefault("tags", drinks ? "alcohol" : "").replace(' ', '_');
		return String.join(",", this.athlete.code(), day.toString(), reading(rhr, story), rmssd(ln),
				story.getOrDefault("method", this.athlete.method()), this.athlete.posture(),
				story.getOrDefault("symptoms", "").replace('-', '_'), story.getOrDefault("fever", "0"),
				story.getOrDefault("medicine", "none"), story.getOrDefault("feels", "well"), tags,
				quoted(story.getOrDefault("note", "")), story.getOrDefault("eating", ""),
				story.getOrDefault("unsure", "0"));
	}

	private String reading(double rhr, Map<String, String> story) {
		if (this.athlete.rhr() == 0) {
			return "";
		}
		long step = this.athlete.method().equals("count30") ? 2 : 1;
		return story.getOrDefault("fixed", String.valueOf(Math.round(rhr / step) * step));
	}

	private String rmssd(double ln) {
		if (this.athlete.rmssd() == 0) {
			return "";
		}
		return String.format(Locale.ROOT, "%.1f", this.athlete.rmssd() * Math.exp(ln));
	}

	private double bounded() {
		return Math.max(-2.5, Math.min(2.5, this.random.nextGaussian()));
	}

	private static boolean weekend(LocalDate day) {
		return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
	}

	private static double number(Map<String, String> story, String name) {
		return Double.parseDouble(story.getOrDefault(name, "0"));
	}

	private static String quoted(String text) {
		return text.contains(",") ? '"' + text + '"' : text;
	}

}
