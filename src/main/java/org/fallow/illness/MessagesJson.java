package org.fallow.illness;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.fallow.wording.Message;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;

/**
 * Messages as text and back: a list of lists, each with the code first and its arguments
 * after it. A day is written as {@code {"day":"2026-11-01"}}, so that it comes back as a
 * day.
 */
final class MessagesJson {

	private static final JsonMapper MAPPER = JsonMapper.shared();

	private static final String DAY = "day";

	private static final String NONE = "[]";

	private MessagesJson() {
	}

	static String write(List<Message> messages) {
		if (messages.isEmpty()) {
			return "[]";
		}
		ArrayNode all = MAPPER.createArrayNode();
		for (Message message : messages) {
			ArrayNode one = all.addArray().add(message.code());
			message.arguments().forEach((argument) -> add(one, argument));
		}
		return all.toString();
	}

	private static void add(ArrayNode to, Object argument) {
		if (argument instanceof LocalDate day) {
			to.addObject().put(DAY, day.toString());
		}
		else if (argument instanceof Integer || argument instanceof Long) {
			to.add(((Number) argument).longValue());
		}
		else if (argument instanceof Number number) {
			to.add(number.doubleValue());
		}
		else {
			to.add((argument instanceof Enum<?> named) ? named.name() : argument.toString());
		}
	}

	static List<Message> read(String json) {
		if (json.equals(NONE)) {
			return List.of();
		}
		List<Message> messages = new ArrayList<>();
		for (JsonNode one : MAPPER.readTree(json)) {
			List<Object> arguments = new ArrayList<>();
			for (int i = 1; i < one.size(); i++) {
				arguments.add(argument(one.get(i)));
			}
			messages.add(new Message(one.get(0).asString(), arguments));
		}
		return messages;
	}

	private static Object argument(JsonNode node) {
		if (node.isObject()) {
			return LocalDate.parse(node.get(DAY).asString());
		}
		if (node.isIntegralNumber()) {
			return node.asLong();
		}
		return node.isNumber() ? node.asDouble() : node.asString();
	}

}
