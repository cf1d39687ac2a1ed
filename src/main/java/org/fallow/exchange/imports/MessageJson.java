package org.fallow.exchange.imports;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.fallow.wording.Message;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Messages as JSON text: an array of the code and its arguments, days as objects.
 */
final class MessageJson {

	private static final JsonMapper MAPPER = JsonMapper.builder().build();

	private MessageJson() {
	}

	static String write(Message message) {
		List<Object> parts = new ArrayList<>();
		parts.add(message.code());
		message.arguments()
			.forEach((argument) -> parts.add((argument instanceof LocalDate day) ? Map.of("day", day.toString())
					: (argument instanceof Number) ? argument : argument.toString()));
		return MAPPER.writeValueAsString(parts);
	}

	static Message read(String text) {
		JsonNode parts = MAPPER.readTree(text);
		List<Object> arguments = new ArrayList<>();
		for (int i = 1; i < parts.size(); i++) {
			arguments.add(argument(parts.get(i)));
		}
		return new Message(parts.get(0).asString(), arguments);
	}

	private static Object argument(JsonNode part) {
		if (part.isObject()) {
			return LocalDate.parse(part.get("day").asString());
		}
		return part.isNumber() ? new BigDecimal(part.asString()).stripTrailingZeros() : part.asString();
	}

}
