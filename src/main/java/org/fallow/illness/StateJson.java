package org.fallow.illness;

import org.fallow.illness.core.State;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * The state of the fold as text and back, to the last bit of every number. A text bears
 * the number of its version: one of an older version is not read, the fold begins before
 * it; one of a newer version is of a newer Fallow, and nothing is decided from it.
 */
final class StateJson {

	/** Counted up whenever a member of the state changes; 1 had none. */
	static final int VERSION = 2;

	private static final JsonMapper MAPPER = JsonMapper.builder()
		.enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
		.disable(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST)
		.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
		.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
		.build();

	private StateJson() {
	}

	static String write(State state) {
		return MAPPER.writeValueAsString(new Versioned(state, VERSION));
	}

	/**
	 * Reads a state.
	 * @param json what {@link #write} wrote
	 * @return the state; null if it is of an older version
	 * @throws IllegalStateException if it is of a newer version
	 */
	static @Nullable State read(String json) {
		JsonNode tree = MAPPER.readTree(json);
		int version = tree.path("version").asInt(1);
		if (version > VERSION) {
			throw new IllegalStateException("the stored state is of version " + version + " and this Fallow reads "
					+ VERSION + ": a newer Fallow wrote it; run that one");
		}
		return (version < VERSION) ? null : MAPPER.treeToValue(tree, Versioned.class).state();
	}

	private record Versioned(State state, int version) {
	}

}
