package org.fallow.training;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;

import org.fallow.rules.Intensity;
import org.fallow.training.core.Part;
import org.fallow.training.core.PlannedSession;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The sessions of a week as text and back. What was not stored by this class is refused
 * by the sessions themselves.
 */
final class SessionsJson {

	private static final JsonMapper MAPPER = JsonMapper.shared();

	private SessionsJson() {
	}

	static String write(List<PlannedSession> sessions) {
		ArrayNode all = MAPPER.createArrayNode();
		for (PlannedSession session : sessions) {
			ObjectNode one = all.addObject();
			one.put("key", session.key());
			one.put("day", session.day().toString());
			one.put("kind", session.kind().name());
			one.put("terrain", session.terrain().name());
			if (session.time() != null) {
				one.put("time", session.time().toString());
			}
			one.put("place", session.place());
			one.put("name", session.name());
			ArrayNode parts = one.putArray("parts");
			session.parts().forEach((part) -> write(parts.addObject(), part));
		}
		return all.toString();
	}

	private static void write(ObjectNode node, Part part) {
		node.put("role", part.role().name());
		node.put("repeats", part.repeats());
		if (part.metres() != null) {
			node.put("metres", part.metres());
		}
		node.put("seconds", part.seconds());
		node.put("intensity", part.intensity().name());
		node.put("recovery", part.recoverySeconds());
	}

	static List<PlannedSession> read(String json) {
		List<PlannedSession> sessions = new ArrayList<>();
		for (JsonNode one : MAPPER.readTree(json)) {
			List<Part> parts = new ArrayList<>();
			one.get("parts").forEach((part) -> parts.add(part(part)));
			JsonNode time = one.get("time");
			sessions.add(new PlannedSession(one.get("key").asString(), LocalDate.parse(one.get("day").asString()),
					PlannedSession.Kind.valueOf(one.get("kind").asString()),
					PlannedSession.Terrain.valueOf(one.get("terrain").asString()),
					(time == null) ? null : LocalTime.parse(time.asString()), one.get("place").asString(),
					one.get("name").asString(), parts));
		}
		return sessions;
	}

	private static Part part(JsonNode node) {
		JsonNode metres = node.get("metres");
		return new Part(Part.Role.valueOf(node.get("role").asString()), node.get("repeats").asInt(),
				(metres == null) ? null : Integer.valueOf(metres.asInt()), node.get("seconds").asInt(),
				Intensity.valueOf(node.get("intensity").asString()), node.get("recovery").asInt());
	}

}
