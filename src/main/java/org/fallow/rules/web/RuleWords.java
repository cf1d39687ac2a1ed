package org.fallow.rules.web;

import java.util.List;

import org.fallow.platform.Figures;
import org.fallow.rules.PathName;
import org.fallow.rules.RuleBounds;
import org.fallow.rules.RuleField;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

import org.springframework.context.support.DefaultMessageSourceResolvable;

/**
 * Problems of rule sets ready for a page: pointers and codes become names, decimals are
 * written the reader's way.
 */
final class RuleWords {

	private RuleWords() {
	}

	static Message said(Message message) {
		return new Message(message.code(), message.arguments().stream().map(RuleWords::named).toList());
	}

	private static Object named(Object argument) {
		if (argument instanceof String text && text.startsWith("/")) {
			String label = text.substring(1).replace('/', '.');
			return new DefaultMessageSourceResolvable(new String[] { "rules.field." + label }, text);
		}
		if (argument instanceof String text && isPath(text)) {
			return new DefaultMessageSourceResolvable("path." + text);
		}
		return Figures.argument(argument);
	}

	private static boolean isPath(String text) {
		return List.of(PathName.values()).stream().anyMatch((name) -> name.name().equals(text));
	}

	/** All problems for the head of a page, those of numbers with a link to them. */
	static List<Told> told(List<Problem> problems, RuleSet rules) {
		List<RuleField> fields = RuleBounds.fields(rules);
		return problems.stream().map((problem) -> told(problem, fields)).toList();
	}

	private static Told told(Problem problem, List<RuleField> fields) {
		Message said = said(problem.message());
		return fields.stream()
			.filter((field) -> field.pointer().equals(problem.field()))
			.findFirst()
			.map((field) -> new Told(FieldRow.id(field.pointer()), "rules.field." + field.label(), said,
					"rules.why." + field.label()))
			.orElseGet(() -> new Told("", "", said, ""));
	}

	/**
	 * A problem at the head of a page.
	 *
	 * @param id the number's place; empty where it is of none
	 * @param label the number's name; empty likewise
	 * @param message what is wrong
	 * @param why what a safer value means; empty likewise
	 */
	public record Told(String id, String label, Message message, String why) {
	}

}
