package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.illness.core.DayRange;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.State;
import org.fallow.rules.DefaultRules;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * What a stored state of the first rule text hands on: its sustained rise or its flag
 * raised for action, which become a stand, the open episode, days out of baselines and a
 * Rest. All else is lived anew from the facts.
 *
 * @param day the day it stands after
 * @param signal whether a signal stood
 * @param episode the open episode; absent if none was open
 * @param out days that never enter a baseline
 * @param restOn latest day whose clearance was Rest on its own account; absent if none
 */
record FirstState(LocalDate day, boolean signal, @Nullable Episode episode, List<DayRange> out,
		@Nullable LocalDate restOn) {

	private static final Logger log = LoggerFactory.getLogger(FirstState.class);

	private static final JsonMapper MAPPER = JsonMapper.builder()
		.disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
		.build();

	FirstState {
		out = List.copyOf(out);
	}

	/**
	 * Reads what the first text wrote. An episode that cannot be read is lived anew, and
	 * a signal then stands (the safer reading).
	 */
	static FirstState read(String json) {
		JsonNode tree = MAPPER.readTree(json);
		LocalDate day = LocalDate.parse(tree.path("day").asString());
		boolean signal = tree.path("rise").path("signal").asBoolean(false)
				|| tree.path("kept").path("raisedForAction").asBoolean(false) || tree.path("above").isString();
		try {
			List<DayRange> out = new ArrayList<>();
			tree.path("out").forEach((range) -> out.add(MAPPER.treeToValue(range, DayRange.class)));
			JsonNode rest = tree.path("restOn");
			return new FirstState(day, signal, episode(tree.path("episode")), out,
					rest.isString() ? LocalDate.parse(rest.stringValue()) : null);
		}
		catch (JacksonException | IllegalArgumentException | NullPointerException ex) {
			log.warn("A stored state of the first rule text, of {}, is lived anew: it cannot be read", day, ex);
			return new FirstState(day, true, null, List.of(), null);
		}
	}

	/**
	 * Members that came later are as if nothing had been seen; a baseline held without a
	 * line gets the lowest one there is (the safer reading).
	 */
	private static @Nullable Episode episode(JsonNode tree) {
		if (!(tree instanceof ObjectNode episode)) {
			return null;
		}
		if (!episode.has("lengthFrom")) {
			episode.set("lengthFrom", episode.get("latestOnset"));
		}
		for (String list : List.of("free", "standing")) {
			episode.putArray(list);
		}
		if (episode.path("held").path("rhr") instanceof ObjectNode rhr && !rhr.has("line")) {
			ObjectNode line = rhr.putObject("line");
			line.put("n", 0).put("bpm", DefaultRules.ruleSet().line().floor()).putNull("upper").putNull("leftOut");
			line.putArray("highest");
		}
		return MAPPER.treeToValue(episode, Episode.class);
	}

	/** The state of its day, as lived anew, going on from here. */
	State goOn(State lived) {
		return lived.goingOn(this.signal ? this.day : null, this.episode, this.out, this.restOn);
	}

}
