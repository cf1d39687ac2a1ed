package org.fallow.exchange.csv;

import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * What a column of a file of mornings can hold. Each knows the names by which columns
 * usually go, compared without upper case, spaces, underscores or dashes.
 */
public enum ImportField {

	/** Who: the athlete's code in files, or name. */
	PERSON("person", "code", "athlete", "name", "athletecode", "athletename", "id", "personid"),
	/** The morning, as 2026-11-25. */
	DAY("date", "day", "morning"),
	/** The day the row became known, for history only. */
	RECORDED("recorded", "recordedon", "recordedday"),
	/** Resting heart rate, bpm. */
	RHR("rhrbpm", "rhr", "restingheartrate", "restingheartratebpm", "restinghr", "restingpulse"),
	/** RMSSD, ms. */
	RMSSD("rmssdms", "rmssd"),
	/** How the heart rate was taken. */
	METHOD("method", "howmeasured"),
	/** Lying, sitting or standing. */
	POSTURE("posture", "position"),
	/** Body temperature, degrees Celsius. */
	TEMPERATURE("temperature", "temperaturec", "temp"),
	/** Symptoms as code:severity, separated by semicolons or bars. */
	SYMPTOMS("symptoms", "symptom"),
	/** Fever in the last 24 hours, 0 or 1. */
	FEVER("fever24h", "fever"),
	/** Medicine that lowers fever: none, illness or other. */
	FEVER_MEDICINE("fevermedicine", "medicine"),
	/** Eating and drinking normally, 0 or 1. */
	EATING_NORMALLY("eatingnormally", "eating"),
	/** Well, able or unwell. */
	FEELS("feels", "feeling"),
	/** Soreness from training: mild, moderate or severe. */
	SORENESS("soreness"),
	/**
	 * Whether ill during the mornings without an entry before: 0 or 1, or the first day
	 * of the illness.
	 */
	MEANWHILE("meanwhile", "illmeanwhile"),
	/** What else may explain the reading. */
	TAGS("tags", "tag", "circumstances"),
	/** The athlete's words. */
	NOTE("note", "notes", "comment", "comments"),
	/** 1 where the measurement is not to be trusted: kept, never used. */
	UNSURE("unsure", "suspect", "artefact"),
	/** Training group, for people not here yet. */
	GROUP("group", "traininggroup"),
	/** Birth date, for people not here yet. */
	BIRTH_DATE("birthdate", "dateofbirth");

	/** The fields a file cannot do without. */
	public static final Set<ImportField> REQUIRED = Set.of(PERSON, DAY);

	private final List<String> names;

	ImportField(String... names) {
		this.names = List.of(names);
	}

	/**
	 * How well a column's name fits.
	 * @param header the name in the file
	 * @return 0 for the best fit, -1 for none
	 */
	int fit(String header) {
		return this.names.indexOf(header.toLowerCase(Locale.ROOT).replaceAll("[ _-]", ""));
	}

}
