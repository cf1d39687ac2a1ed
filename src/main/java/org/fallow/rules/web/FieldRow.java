package org.fallow.rules.web;

import java.util.List;
import java.util.Map;

import org.fallow.rules.RuleBounds;
import org.fallow.rules.RuleEdit;
import org.fallow.rules.RuleField;
import org.fallow.rules.RuleSet;
import org.fallow.wording.Message;
import org.fallow.wording.Problem;

/**
 * One number of a rule set on a page.
 *
 * @param pointer the form field's name
 * @param id for links
 * @param label its name
 * @param why what a safer value means
 * @param unit the unit's name
 * @param value as it stands or was typed
 * @param usual its default
 * @param least least value allowed
 * @param most greatest value allowed
 * @param looser which way is looser
 * @param mark how sure the default is
 * @param fixed whether it cannot be changed
 * @param problems what is wrong with it
 */
public record FieldRow(String pointer, String id, Message label, Message why, String unit, String value, String usual,
		String least, String most, RuleField.Looser looser, RuleField.Mark mark, boolean fixed,
		List<Message> problems) {

	static List<FieldRow> all(RuleSet rules, Map<String, String> typed, List<Problem> problems) {
		Map<String, String> values = RuleEdit.texts(rules);
		Map<String, String> usual = RuleEdit.texts(RuleBounds.defaults(rules));
		return RuleBounds.fields(rules)
			.stream()
			.map((field) -> of(field, typed.getOrDefault(field.pointer(), values.getOrDefault(field.pointer(), "")),
					usual.getOrDefault(field.pointer(), ""), problems))
			.toList();
	}

	private static FieldRow of(RuleField field, String value, String usual, List<Problem> problems) {
		return new FieldRow(field.pointer(), id(field.pointer()), label(field),
				Message.of("rules.why." + field.label()), field.unit().name(), value, usual, field.leastText(),
				field.mostText(), field.looser(), field.mark(), field.isFixed(),
				problems.stream()
					.filter((problem) -> problem.field().equals(field.pointer()))
					.map(Problem::message)
					.map(RuleWords::said)
					.toList());
	}

	/** The same beside another value than the default. */
	FieldRow usually(String other) {
		return new FieldRow(this.pointer, this.id, this.label, this.why, this.unit, this.value, other, this.least,
				this.most, this.looser, this.mark, this.fixed, this.problems);
	}

	private static Message label(RuleField field) {
		String last = field.pointer().substring(field.pointer().lastIndexOf('/') + 1);
		int day = last.chars().allMatch(Character::isDigit) ? Integer.parseInt(last) + 1 : 0;
		return Message.of("rules.field." + field.label(), String.valueOf(day));
	}

	static String id(String pointer) {
		return "field" + pointer.replace('/', '-');
	}

}
