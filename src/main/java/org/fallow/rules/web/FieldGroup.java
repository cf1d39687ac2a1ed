package org.fallow.rules.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.fallow.rules.PathName;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;

/**
 * Numbers of a rule set that belong together.
 *
 * @param id for links
 * @param head what they are
 * @param path which path they are of; empty for all others
 * @param rows the numbers
 */
public record FieldGroup(String id, Message head, String path, List<FieldRow> rows) {

	private static final int STAGE_PARTS = 5;

	static List<FieldGroup> of(RuleSet rules, List<FieldRow> rows) {
		Map<String, List<FieldRow>> groups = new LinkedHashMap<>();
		rows.forEach((row) -> groups.computeIfAbsent(group(row.pointer()), (key) -> new ArrayList<>()).add(row));
		return groups.entrySet()
			.stream()
			.map((group) -> new FieldGroup(FieldRow.id(group.getKey()), head(group.getKey()), path(group.getKey()),
					group.getValue()))
			.toList();
	}

	/** {@code /gates}, {@code /paths/2} or {@code /paths/2/stages/0}. */
	private static String group(String pointer) {
		String[] parts = pointer.split("/");
		if (!parts[1].equals("paths")) {
			return "/" + parts[1];
		}
		boolean stage = parts.length >= STAGE_PARTS;
		return "/paths/" + parts[2] + (stage ? "/stages/" + parts[4] : "");
	}

	private static String path(String group) {
		String[] parts = group.split("/");
		return parts[1].equals("paths") ? PathName.values()[Integer.parseInt(parts[2])].name() : "";
	}

	private static Message head(String group) {
		String[] parts = group.split("/");
		if (parts.length >= STAGE_PARTS) {
			return Message.of("rules.group.stage", String.valueOf(Integer.parseInt(parts[4]) + 1));
		}
		return Message.of(parts[1].equals("paths") ? "rules.group.path" : "rules.group." + parts[1]);
	}

}
