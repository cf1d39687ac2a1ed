package org.fallow.illness;

import org.fallow.illness.core.State;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * The state of the fold as text and back, to the last bit of every number.
 */
final class StateJson {

	private static final JsonMapper MAPPER = JsonMapper.builder()
		.enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
		.disable(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST)
		.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
		.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
		.build();

	private StateJson() {
	}

	static String write(State state) {
		return MAPPER.writeValueAsString(state);
	}

	static State read(String json) {
		return MAPPER.readValue(json, State.class);
	}

}
