package org.fallow.exchange.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What happens to whom in the demo season. Names of changes: {@code rhr} bpm added,
 * {@code ln} added to ln RMSSD, {@code fixed} the very reading, {@code symptoms},
 * {@code fever}, {@code medicine}, {@code feels}, {@code tags}, {@code note},
 * {@code eating}, {@code unsure}, {@code method}; {@code days} is {@code calm} (little
 * noise, no morning missed) or {@code silent} (no entries); {@code run} is what is run:
 * {@code none}, {@code easy} or {@code strides}. Spaces are written as underscores, so
 * symptom codes are written with a dash.
 */
final class DemoStories {

	private static final String SPELLS = """
			TR01 2026-06-15..2026-07-11 days=calm
			TR01 2026-07-02..2026-07-04 rhr=2 symptoms=sore-throat:mild;runny-nose:mild feels=able run=none
			TR01 2026-07-05..2026-07-06 run=easy
			TR01 2026-07-07..2026-07-08 run=strides
			TR02 2026-06-15..2026-07-11 days=calm
			TR02 2026-07-02..2026-07-03 rhr=7 symptoms=fatigue:moderate;muscle-aches:mild feels=unwell run=none
			TR02 2026-07-04 run=none
			TR02 2026-07-05..2026-07-11 run=easy
			TR03 2026-06-10..2026-07-11 days=calm
			TR03 2026-06-25..2026-06-26 rhr=11 symptoms=feverish:moderate;fatigue:moderate fever=1 feels=unwell run=none
			TR03 2026-06-27 run=none
			TR03 2026-06-28..2026-07-04 run=easy
			TR03 2026-07-05..2026-07-11 run=strides
			TR04 2026-06-01..2026-07-11 days=calm
			TR04 2026-06-18..2026-06-19 rhr=8 symptoms=cough:moderate;fatigue:mild feels=unwell run=none
			TR04 2026-06-20 run=none
			TR04 2026-06-21..2026-06-27 run=easy
			TR04 2026-06-28 run=none
			TR04 2026-06-29..2026-07-05 run=strides
			TR05 2026-04-01..2026-06-05 days=calm
			TR05 2026-04-09..2026-04-10 rhr=12 symptoms=feverish:severe;muscle-aches:moderate fever=1 feels=unwell run=none
			TR05 2026-04-11 run=none
			TR05 2026-04-12..2026-04-18 run=easy
			TR05 2026-04-19 run=none
			TR05 2026-04-20..2026-04-22 run=strides
			TR05 2026-04-23..2026-04-24 rhr=6 symptoms=fatigue:moderate;cough:moderate feels=unwell run=none
			TR05 2026-04-25..2026-05-03 run=none
			TR05 2026-05-04..2026-05-10 run=easy
			TR05 2026-05-11 run=none
			TR05 2026-05-12..2026-05-18 run=strides
			TR06 2026-03-01..2026-04-20 days=calm
			TR06 2026-03-10 rhr=9 symptoms=palpitations:moderate feels=unwell note=Heart_racing_in_bed
			TR06 2026-03-10..2026-03-24 run=none
			TR06 2026-03-25..2026-04-08 run=easy
			TR07 2026-06-25..2026-07-11 days=calm
			TR07 2026-07-03 symptoms=chest-pain:moderate feels=unwell note=Tight_chest_on_the_stairs
			TR07 2026-07-03..2026-07-11 run=none
			TR09 2026-01-20..2026-01-21 symptoms=runny-nose:mild feels=able
			TR09 2026-03-05..2026-03-06 symptoms=severe-headache:moderate feels=unwell run=none
			TR09 2026-03-07..2026-03-10 run=none days=calm
			TR09 2026-03-10..2026-03-16 run=easy days=calm
			TR09 2026-03-17..2026-03-31 run=easy days=calm
			TR11 2026-06-30..2026-07-11 days=silent run=none
			TR12 2026-04-06..2026-07-11 method=worn rhr=-4 ln=0.08
			TR12 2026-04-06 method=worn note=New_watch,_worn_at_night
			TR13 2026-05-12 fixed=173 ln=1.7 unsure=1 note=Strap_slipped,_reading_cannot_be_right
			TR14 2026-05-11..2026-06-07 run=none
			TR14 2026-06-08..2026-06-14 run=easy
			TR15 2026-06-15..2026-07-11 days=calm
			TR15 2026-07-03..2026-07-11 rhr=7 tags=short_sleep
			TR16 2026-06-15..2026-07-11 days=calm
			TR16 2026-06-30..2026-07-04 ln=-0.40
			TR16 2026-07-05..2026-07-11 ln=-0.55 rhr=1
			TR17 2026-07-05..2026-07-06 symptoms=runny-nose:mild feels=able days=calm
			TR17 2026-07-07..2026-07-07 days=calm
			TR17 2026-07-08..2026-07-09 symptoms=runny-nose:mild;sneezing:mild feels=able days=calm
			TR17 2026-07-10..2026-07-10 days=calm
			TR17 2026-07-11 symptoms=sneezing:mild feels=able days=calm
			TR18 2026-01-05..2026-06-26 days=silent run=none
			TR18 2026-06-27..2026-07-11 days=calm
			TR19 2026-01-25..2026-02-16 days=calm
			TR19 2026-02-03..2026-02-05 rhr=2 symptoms=sore-throat:mild;runny-nose:mild feels=able run=none
			TR19 2026-02-06..2026-02-07 run=easy
			TR19 2026-02-08 run=none
			TR19 2026-02-09..2026-02-10 run=strides
			TR19 2026-07-07 symptoms=sneezing:mild feels=able
			TR19 2026-07-10 symptoms=sneezing:mild feels=able
			TR20 2026-03-05..2026-04-01 days=calm
			TR20 2026-03-17..2026-03-18 rhr=6 symptoms=vomiting:moderate;diarrhoea:moderate eating=0 feels=unwell run=none
			TR20 2026-03-19..2026-03-20 eating=1 run=none
			TR20 2026-03-21..2026-03-22 eating=1 run=easy
			TR20 2026-03-23..2026-03-24 run=strides
			TR21 2026-05-16..2026-05-24 tags=travel;heat run=none
			TR22 2026-02-22 fixed=66 tags=alcohol;late_meal note=Club_dinner
			TR23 2026-05-03 tags=race note=Race_the_day_before
			TR24 2026-01-31 rhr=8 tags=alcohol
			""";

	private static final List<Spell> ALL = SPELLS.lines().map(Spell::parse).toList();

	private DemoStories() {
	}

	/**
	 * What is other than usual.
	 * @param athlete code
	 * @param day the day
	 * @return changes by name; of several spells the later line counts
	 */
	static Map<String, String> of(String athlete, LocalDate day) {
		Map<String, String> changes = new TreeMap<>();
		ALL.stream().filter((spell) -> spell.covers(athlete, day)).forEach((spell) -> changes.putAll(spell.changes()));
		return changes;
	}

}
