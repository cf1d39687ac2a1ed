package org.fallow.illness.core;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import org.fallow.entry.Activity;
import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.Feels;
import org.fallow.entry.FeverMedicine;
import org.fallow.entry.KnownSymptom;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Method;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Severity;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;

/**
 * One worked example of shared/data/golden: its facts and what is expected of each day.
 */
public record GoldenCase(String name, Timeline timeline, List<Map<String, String>> expected) {

	private static final Map<String, Symptom> SYMPTOMS = Map.of("smell", Symptom.SMELL_LOSS, "breathless",
			Symptom.BREATHLESSNESS);

	private static final Map<String, Method> METHODS = Map.of("count30", Method.COUNT_30, "count60", Method.COUNT_60);

	static List<GoldenCase> all() {
		Path folder = SharedData.folder().resolve("golden");
		try (var files = Files.list(folder)) {
			return files.map((file) -> file.getFileName().toString())
				.filter((file) -> file.endsWith(".expected.csv"))
				.map((file) -> file.substring(0, file.indexOf('.')))
				.sorted()
				.map((name) -> read(folder, name))
				.toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static GoldenCase read(Path folder, String name) {
		List<Fact> facts = new ArrayList<>();
		rows(folder.resolve(name + ".mornings.csv")).forEach((row) -> facts.add(morning(row, facts.size())));
		rows(folder.resolve(name + ".events.csv")).forEach((row) -> facts.add(event(row, facts.size())));
		List<Map<String, String>> expected = rows(folder.resolve(name + ".expected.csv")).stream()
			.map(NamedCsvRecord::getFieldsAsMap)
			.toList();
		return new GoldenCase(name, new Timeline(facts), expected);
	}

	private static List<NamedCsvRecord> rows(Path file) {
		try (CsvReader<NamedCsvRecord> csv = CsvReader.builder().ofNamedCsvRecord(file)) {
			return csv.stream().toList();
		}
		catch (IOException ex) {
			throw new UncheckedIOException(ex);
		}
	}

	private static Recorded recorded(String text, LocalDate day, int hour, int order) {
		LocalDate on = text.isEmpty() ? day : LocalDate.parse(text);
		Instant at = on.atTime(hour, 0).plusNanos(order * 1000L).toInstant(ZoneOffset.UTC);
		return new Recorded(at, on);
	}

	private static MorningEntry morning(NamedCsvRecord row, int order) {
		LocalDate day = LocalDate.parse(row.getField("date"));
		String method = row.getField("method");
		return new MorningEntry(day, recorded(row.getField("recorded"), day, 6, order),
				METHODS.getOrDefault(method, METHODS.containsKey(method) ? null : Method.valueOf(upper(method))),
				Posture.valueOf(upper(row.getField("posture"))), number(row.getField("rhr_bpm")),
				number(row.getField("rmssd_ms")), false, null, symptoms(row.getField("symptoms")),
				row.getField("fever24h").equals("1"),
				row.getField("fever_medicine").isEmpty() ? FeverMedicine.NONE
						: FeverMedicine.valueOf(upper(row.getField("fever_medicine"))),
				true, Feels.valueOf(upper(row.getField("feels"))), null, List.of(), null);
	}

	private static List<ReportedSymptom> symptoms(String text) {
		if (text.isEmpty()) {
			return List.of();
		}
		return Arrays.stream(text.split(";")).map((part) -> {
			String[] codeAndSeverity = part.trim().split(":");
			return ReportedSymptom.of(symptom(codeAndSeverity[0]), Severity.valueOf(upper(codeAndSeverity[1])));
		}).toList();
	}

	private static Symptom symptom(String code) {
		Symptom special = SYMPTOMS.get(code);
		return (special != null) ? special
				: Arrays.stream(Symptom.values())
					.filter((s) -> s.name().equals(upper(code)))
					.findFirst()
					.orElse(Symptom.OTHER);
	}

	private static Fact event(NamedCsvRecord row, int order) {
		LocalDate day = LocalDate.parse(row.getField("day"));
		Recorded recorded = recorded(row.getField("recorded"), day, 12, order);
		String arg = row.getField("arg");
		String value = row.getField("value");
		return switch (row.getField("kind")) {
			case "report" -> new IllnessEvent.Report(day, recorded, reportKind(arg),
					value.isEmpty() ? null : Integer.valueOf(value), null);
			case "run" -> new SessionLog(String.valueOf(order), day, recorded, Activity.RUN, 30, null, null,
					arg.isEmpty() ? List.of() : List.of(afterSession(arg)), false, null);
			case "hold" -> new IllnessEvent.Hold(day, recorded, "golden");
			case "clear" -> new IllnessEvent.Cleared(day, value.isEmpty() ? null : LocalDate.parse(value), recorded,
					ceiling(arg), "a clinician", "physician", null);
			case "withdraw" -> new IllnessEvent.Withdrawal(day, recorded, "golden");
			case "stricter" -> new IllnessEvent.Stricter(day, day, recorded, ceiling(arg), "golden");
			case "symptoms_only" -> new IllnessEvent.SymptomsOnly(day, recorded, "golden");
			case "med_on" -> new MedicineChange(day, recorded, true);
			case "med_off" -> new MedicineChange(day, recorded, false);
			case "known" -> new KnownSymptom(day, day.plusDays(KnownSymptom.DAYS - 1L), recorded, symptom(arg),
					Severity.valueOf(upper(value)));
			default -> throw new IllegalArgumentException("unknown event kind " + row);
		};
	}

	private static ReportKind reportKind(String arg) {
		return arg.equals("above") ? ReportKind.ABOVE_NECK : ReportKind.valueOf(upper(arg));
	}

	private static AfterSession afterSession(String arg) {
		return Arrays.stream(AfterSession.values())
			.filter((a) -> a.name().equals(upper(arg)))
			.findFirst()
			.orElse(AfterSession.OTHER);
	}

	private static Clearance ceiling(String arg) {
		return switch (arg) {
			case "Rest" -> Clearance.REST;
			case "Easy" -> Clearance.EASY_ONLY;
			case "Full" -> Clearance.FULL_TRAINING;
			default -> throw new IllegalArgumentException("unknown ceiling " + arg);
		};
	}

	private static String upper(String text) {
		return text.toUpperCase(Locale.ROOT);
	}

	private static Double number(String text) {
		return text.isEmpty() ? null : Double.valueOf(text);
	}

	@Override
	public String toString() {
		return this.name;
	}

}
