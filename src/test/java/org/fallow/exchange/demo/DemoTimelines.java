package org.fallow.exchange.demo;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.fallow.entry.Absence;
import org.fallow.entry.Activity;
import org.fallow.entry.Fact;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.NewMorning;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.exchange.csv.ColumnMapping;
import org.fallow.exchange.csv.CsvFile;
import org.fallow.exchange.csv.MorningFile;
import org.fallow.illness.core.IllnessEvent;
import org.fallow.illness.core.Timeline;

/**
 * The demo files as timelines for the pure fold, each fact known on the day its row says:
 * mornings at 6, events at noon, sessions in the evening.
 */
final class DemoTimelines {

	private final Map<String, List<Fact>> facts = new TreeMap<>();

	private DemoTimelines() {
	}

	static Map<String, Timeline> of(DemoFiles files) {
		DemoTimelines timelines = new DemoTimelines();
		timelines.readMornings(files);
		files.events().forEach((event) -> timelines.add(event.person(), fact(event)));
		files.sessions().forEach((session) -> timelines.add(session.person(), fact(session)));
		Map<String, Timeline> all = new TreeMap<>();
		timelines.facts.forEach((person, list) -> all.put(person, new Timeline(list)));
		return all;
	}

	private void readMornings(DemoFiles files) {
		try {
			Path copy = Files.createTempFile("mornings", ".csv");
			files.writeMornings(copy);
			CsvFile csv = CsvFile.open(copy);
			new MorningFile(csv.headers(), ColumnMapping.guess(csv.headers())).forEachRow(csv, files.last(),
					(row) -> add(row.person(), fact(row.goodMorning())));
			Files.delete(copy);
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private void add(String person, Fact fact) {
		this.facts.computeIfAbsent(person, (code) -> new ArrayList<>()).add(fact);
	}

	private static Recorded recorded(LocalDate day, int hour) {
		Instant at = day.atTime(LocalTime.of(hour, 0)).toInstant(ZoneOffset.UTC);
		return new Recorded(at, day);
	}

	private static MorningEntry fact(NewMorning morning) {
		return new MorningEntry(morning.day(), recorded(morning.day(), 6), morning.method(), morning.posture(),
				morning.rhrBpm(), morning.rmssdMs(), morning.unsure(), morning.temperatureC(), morning.symptoms(),
				morning.feverLast24h(), morning.feverMedicine(), morning.eatingNormally(), morning.feels(),
				morning.soreness(), morning.tags(), morning.note(), Meanwhile.NO);
	}

	private static SessionLog fact(DemoSession session) {
		return new SessionLog(session.day().toString(), session.day(), recorded(session.recorded(), 20), Activity.RUN,
				session.minutes(), session.rpe(), session.intensity(), List.of(), false, null);
	}

	private static Fact fact(DemoEvent event) {
		Recorded recorded = recorded(event.recorded(), 12);
		return switch (event.kind()) {
			case "report" ->
				new IllnessEvent.Report(event.day(), recorded, event.reportKind(), event.value(), event.note());
			case "clear" -> new IllnessEvent.Cleared(event.day(), event.until(), recorded, event.ceiling(), event.who(),
					event.role(), null);
			default -> new Absence(event.day().toString(), event.day(), event.until(), recorded, event.absenceKind(),
					event.note());
		};
	}

}
