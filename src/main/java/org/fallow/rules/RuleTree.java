package org.fallow.rules;

import java.math.BigDecimal;
import java.util.List;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A rule set's canonical JSON as a tree whose numbers are reached by pointer (RFC 6901).
 */
final class RuleTree {

	private static final JsonMapper MAPPER = JsonMapper.builder().build();

	private final JsonNode root;

	private RuleTree(JsonNode root) {
		this.root = root;
	}

	static RuleTree of(RuleSet rules) {
		return new RuleTree(MAPPER.readTree(RuleJson.canonical(rules)));
	}

	/** A tree that is no whole rule set yet. */
	static RuleTree of(JsonNode root) {
		return new RuleTree(root);
	}

	/** A tree without any member. */
	static RuleTree empty() {
		return new RuleTree(MAPPER.createObjectNode());
	}

	/** The number at a pointer; null where there is none. */
	@Nullable Double number(String pointer) {
		JsonNode node = this.root.at(pointer);
		if (node.isNumber()) {
			return node.doubleValue();
		}
		return node.isString() ? decimal(node.stringValue()) : null;
	}

	/** Whether the number at a pointer may have decimals. */
	boolean hasDecimals(String pointer) {
		return this.root.at(pointer).isString();
	}

	/** Puts a number in the place of one that is there. */
	void set(String pointer, String number) {
		int cut = pointer.lastIndexOf('/');
		JsonNode parent = this.root.at(pointer.substring(0, cut));
		String name = pointer.substring(cut + 1);
		boolean text = this.root.at(pointer).isString();
		JsonNode value = text ? MAPPER.getNodeFactory().stringNode(number)
				: MAPPER.getNodeFactory().numberNode(new BigDecimal(number));
		if (parent instanceof ObjectNode members) {
			members.set(name, value);
		}
		else if (parent instanceof ArrayNode list) {
			list.set(Integer.parseInt(name), value);
		}
	}

	/**
	 * Adds the number of a group's member, the group too where it is missing; a whole
	 * number is written as one.
	 */
	void put(String pointer, double number) {
		String[] parts = pointer.split("/");
		if (this.root instanceof ObjectNode members) {
			members.withObject("/" + parts[1])
				.set(parts[2], (number == Math.rint(number)) ? MAPPER.getNodeFactory().numberNode((int) number)
						: MAPPER.getNodeFactory().stringNode(text(number)));
		}
	}

	/** The rule set of these numbers and paths. */
	RuleSet rulesWith(List<RuleSet.Path> paths) {
		if (this.root instanceof ObjectNode members) {
			members.set("paths", MAPPER.readTree(RuleJson.canonicalPaths(paths)));
		}
		return RuleJson.read(this.root);
	}

	/**
	 * The rule set of the tree.
	 * @throws IllegalArgumentException if a whole number is wanted and there is none
	 */
	RuleSet rules() {
		return RuleJson.parse(MAPPER.writeValueAsString(this.root));
	}

	/** A number as the canonical text writes it. */
	static String text(double value) {
		BigDecimal plain = Double.isFinite(value) ? BigDecimal.valueOf(value).stripTrailingZeros() : BigDecimal.ZERO;
		return plain.toPlainString();
	}

	/** The number at a pointer as text; empty where there is none. */
	static String text(RuleTree tree, String pointer) {
		Double number = tree.number(pointer);
		return (number == null) ? "" : text(number.doubleValue());
	}

	private static @Nullable Double decimal(String text) {
		try {
			return Double.valueOf(text);
		}
		catch (NumberFormatException ex) {
			return null;
		}
	}

}
