package org.fallow.rules;

import java.util.ArrayList;
import java.util.List;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Brings the paths of a rule set's text that was stored before there was a path after
 * vaccinations up to those of today: what is missing is taken from the default rules, and
 * the limit between mild and moderate, which decides nothing any more, goes.
 */
final class OlderPaths {

	private static final String LIMITS = "limits";

	private static final String PATHS = "paths";

	private OlderPaths() {
	}

	static void bringUp(ObjectNode members, JsonNode defaults) {
		if (members.get(LIMITS) instanceof ObjectNode limits && limits.has("mildWorst")) {
			limits.remove("mildWorst");
			for (String name : defaults.get(LIMITS).propertyNames()) {
				if (!limits.has(name)) {
					limits.set(name, defaults.get(LIMITS).get(name));
				}
			}
		}
		JsonNode first = defaults.get(PATHS).get(0);
		if (members.get(PATHS) instanceof ArrayNode paths && isWithoutTheFirst(paths, first)) {
			List<JsonNode> before = new ArrayList<>();
			paths.forEach(before::add);
			paths.removeAll();
			paths.add(first);
			before.forEach(paths::add);
		}
	}

	/** Only the four paths there were before: anything else stays wrong. */
	private static boolean isWithoutTheFirst(ArrayNode paths, JsonNode first) {
		boolean fewer = paths.size() == PathName.values().length - 1;
		return fewer && !paths.get(0).path("name").equals(first.get("name"));
	}

}
