package org.fallow.rules.web;

import java.util.Arrays;
import java.util.List;

import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.RuleSet;

/**
 * Whose definition a path follows, and which ones could be chosen.
 *
 * @param name the path
 * @param chosen whose it follows
 * @param open those that may be chosen; only ours on the two short paths
 */
public record PathChoice(PathName name, Protocol chosen, List<Protocol> open) {

	static List<PathChoice> all(RuleSet rules) {
		return Arrays.stream(PathName.values()).map((name) -> of(rules.path(name))).toList();
	}

	private static PathChoice of(RuleSet.Path path) {
		return new PathChoice(path.name(), path.definedBy(),
				Arrays.stream(Protocol.values()).filter((protocol) -> protocol.mayDefine(path.name())).toList());
	}

}
