package org.fallow.rules;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;

import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.exc.UnrecognizedPropertyException;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.node.ObjectNode;

/**
 * A rule set as canonical JSON in the manner of RFC 8785: members in the order of their
 * names, no white space, and every number that may have decimals as a string, so that no
 * reader's floating point can change the hash.
 */
public final class RuleJson {

	/** Number of the format written; texts of the first one bear none. */
	static final int FORMAT = RuleFields.newestFormat();

	private static final int FIRST_WITH_A_NUMBER = 2;

	private static final String DRAWN = "/hrv/drawnSds";

	private static final JsonMapper MAPPER = JsonMapper.builder()
		.enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
		.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
		.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
		.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
		.disable(MapperFeature.SORT_CREATOR_PROPERTIES_FIRST)
		.addModule(new SimpleModule().addSerializer(Double.class, new DecimalAsText())
			.addSerializer(Double.TYPE, new DecimalAsText()))
		.build();

	private RuleJson() {
	}

	/**
	 * Writes a rule set.
	 * @param rules the rule set
	 * @return its canonical JSON
	 */
	public static String canonical(RuleSet rules) {
		return MAPPER.writeValueAsString(rules);
	}

	static String canonicalPaths(List<RuleSet.Path> paths) {
		return MAPPER.writeValueAsString(paths);
	}

	/** Reads what misses nothing. */
	static RuleSet read(JsonNode tree) {
		return Objects.requireNonNull(MAPPER.treeToValue(tree, RuleSet.class));
	}

	/**
	 * Reads a rule set. Numbers that came with a later format than the text's may be
	 * missing: they are then the default ones. A text of the first rule text is read as
	 * what it becomes under the second: {@link FirstText}.
	 * @param json what {@link #canonical} wrote
	 * @return the rule set
	 * @throws IllegalArgumentException if a member is unknown or missing, or the text of
	 * a format that this Fallow does not know
	 */
	public static RuleSet parse(String json) {
		try {
			JsonNode tree = MAPPER.readTree(json);
			if (tree instanceof ObjectNode members) {
				RuleSet defaults = DefaultRules.ruleSet();
				int format = format(members);
				if (FirstText.isOf(members)) {
					FirstText.bringUp(members, MAPPER.valueToTree(defaults));
				}
				addIfMissing(members, "workingLevel", defaults.workingLevel());
				addIfMissing(members, "advice", defaults.advice());
				OlderPaths.bringUp(members, MAPPER.valueToTree(defaults));
				addWhatCameLater(members, format);
				drawAsToday(members, format);
			}
			RuleSet rules = read(tree);
			canonical(rules);
			return rules;
		}
		catch (JacksonException ex) {
			throw new IllegalArgumentException("not a rule set: " + told(ex), ex);
		}
		catch (NullPointerException ex) {
			throw new IllegalArgumentException("not a rule set: it is empty", ex);
		}
		catch (NumberFormatException ex) {
			throw new IllegalArgumentException("not a rule set: a number is not finite", ex);
		}
	}

	/**
	 * Whether a text is of the first rule text, which has a tolerance and no line.
	 * @param json a rule set's text
	 * @return false also for what is no rule set
	 */
	public static boolean isOfTheFirstText(String json) {
		try {
			return MAPPER.readTree(json) instanceof ObjectNode members && FirstText.isOf(members);
		}
		catch (JacksonException ex) {
			return false;
		}
	}

	/** The format's number stands in the text, but for the first one's. */
	private static int format(ObjectNode members) {
		JsonNode format = members.remove("format");
		if (format == null) {
			return 1;
		}
		boolean known = format.isInt() && format.intValue() >= FIRST_WITH_A_NUMBER && format.intValue() <= FORMAT;
		if (!known) {
			throw new IllegalArgumentException("not a rule set: it is of format " + format.asString()
					+ ", and this Fallow reads formats 1 to " + FORMAT + "; a newer Fallow wrote it");
		}
		return format.intValue();
	}

	private static void addWhatCameLater(ObjectNode members, int format) {
		RuleTree tree = RuleTree.of(members);
		for (RuleField field : RuleFields.newerThan(format)) {
			if (tree.number(field.pointer()) == null) {
				tree.put(field.pointer(), field.usual());
			}
		}
	}

	/**
	 * The range drawn for single mornings had one allowed width before the third format,
	 * which held under half of the healthy ones. Nothing is decided by it, and no team
	 * chose it: it is drawn as today.
	 */
	private static void drawAsToday(ObjectNode members, int format) {
		RuleTree tree = RuleTree.of(members);
		if (format < FORMAT && tree.number(DRAWN) != null) {
			tree.put(DRAWN, DefaultRules.ruleSet().hrv().drawnSds());
		}
	}

	/** Where it is wrong, as a JSON pointer or a place in the text, and how. */
	private static String told(JacksonException ex) {
		if (ex instanceof DatabindException) {
			StringBuilder pointer = new StringBuilder();
			ex.getPath().forEach((step) -> {
				boolean member = step.getPropertyName() != null;
				pointer.append('/').append(member ? step.getPropertyName() : String.valueOf(step.getIndex()));
			});
			boolean unknown = ex instanceof UnrecognizedPropertyException;
			return pointer + (unknown ? " is no member of a rule set" : " is missing or not what it should be");
		}
		return "not JSON at line " + ex.getLocation().getLineNr() + ", column " + ex.getLocation().getColumnNr();
	}

	private static void addIfMissing(ObjectNode members, String name, Object value) {
		if (!members.has(name)) {
			members.set(name, MAPPER.valueToTree(value));
		}
	}

	private static final class DecimalAsText extends ValueSerializer<Double> {

		@Override
		public void serialize(@Nullable Double value, JsonGenerator json, SerializationContext context) {
			json.writeString(
					BigDecimal.valueOf(value == null ? 0 : value.doubleValue()).stripTrailingZeros().toPlainString());
		}

	}

}
