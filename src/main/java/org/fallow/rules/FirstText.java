package org.fallow.rules;

import java.util.List;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Rule sets as they were stored under the first rule text, which had a tolerance and a
 * sustained rise where there is a line now. What both have is kept as a team set it; what
 * is new is the default; what went is dropped.
 */
final class FirstText {

	private static final List<String> GONE_FLAGS = List.of("bandFloor", "bandCeiling", "bandSpreads", "actionFactor",
			"actionDays");

	private static final List<String> NEW_FLAGS = List.of("restingBpm", "standingBpm", "askFloor", "askCeiling",
			"askBpm");

	private static final List<String> GONE_GATES = List.of("quietMornings", "quietLeast");

	private static final List<String> NEW_GATES = List.of("quietFloor", "quietSpreads", "quietMargin");

	private FirstText() {
	}

	/** Only the first text has a sustained rise. */
	static boolean isOf(ObjectNode members) {
		return members.has("cusum") && !members.has("line");
	}

	static void bringUp(ObjectNode members, JsonNode defaults) {
		members.remove("cusum");
		ObjectNode line = ((ObjectNode) defaults.get("line")).deepCopy();
		members.set("line", line);
		exchange(members, defaults, "flags", GONE_FLAGS, NEW_FLAGS);
		exchange(members, defaults, "gates", GONE_GATES, NEW_GATES);
		stayBelowHigh(members, line);
	}

	private static void exchange(ObjectNode members, JsonNode defaults, String group, List<String> gone,
			List<String> added) {
		if (members.get(group) instanceof ObjectNode numbers) {
			numbers.remove(gone);
			added.forEach((name) -> numbers.set(name, defaults.at("/" + group + "/" + name)));
		}
	}

	/**
	 * Where a team's High begins sooner, the line ends sooner too: it stays reachable.
	 */
	private static void stayBelowHigh(ObjectNode members, ObjectNode line) {
		RuleTree tree = RuleTree.of(members);
		Double high = tree.number("/flags/highFloor");
		Double ceiling = tree.number("/line/ceiling");
		if (high != null && ceiling != null && ceiling >= high) {
			line.put("ceiling", RuleTree.text(high - 1));
		}
	}

}
