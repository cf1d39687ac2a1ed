package org.fallow.board.web;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.fallow.training.PartsWords;
import org.fallow.training.core.PlannedSession;

import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/**
 * The squad brief as plain text to be sent. It names nobody: what is sent leaves the
 * walls, so it holds numbers, sessions and the caution alone.
 */
@Component
class BriefText {

	private final MessageSource messages;

	private final PartsWords parts;

	BriefText(MessageSource messages, PartsWords parts) {
		this.messages = messages;
		this.parts = parts;
	}

	String of(LocalDate today, List<GroupBrief> groups, Locale locale) {
		StringBuilder text = new StringBuilder();
		text.append(say(locale, "brief.title")).append(", ").append(day(today, "date.long", locale)).append("\n");
		groups.forEach((group) -> text.append('\n').append(group(group, locale)));
		return text.append('\n').append(say(locale, "caution.short")).append('\n').toString();
	}

	private String group(GroupBrief group, Locale locale) {
		StringBuilder text = new StringBuilder(say(locale, "brief.group", group.name(), group.athletes()) + "\n");
		if (group.cluster() > 0) {
			text.append(say(locale, "brief.cluster", group.cluster(), GroupBrief.CLUSTER_DAYS)).append('\n');
		}
		text.append(line(locale, "brief.referred", group.referred().size()))
			.append(line(locale, "brief.ill", group.ill().size()))
			.append(line(locale, "brief.returning", group.returning().size()))
			.append(line(locale, "brief.away", group.away().size()))
			.append(line(locale, "brief.quiet", group.quiet().size()));
		text.append(say(locale, "brief.key")).append('\n');
		group.keySessions().forEach((one) -> text.append("- ").append(keySession(one, locale)).append('\n'));
		text.append(say(locale, "brief.next")).append('\n');
		group.nextWeek()
			.forEach((one) -> text.append("- ")
				.append(session(one.session(), locale))
				.append(": ")
				.append(this.parts.said(one.parts()))
				.append('\n'));
		return text.toString();
	}

	private String keySession(GroupBrief.KeySession one, Locale locale) {
		return session(one.session(), locale) + ": "
				+ one.counts()
					.stream()
					.map((count) -> say(locale, "brief.count", count.many(), say(locale, "version." + count.version())))
					.collect(Collectors.joining(", "));
	}

	private String session(PlannedSession session, Locale locale) {
		String name = session.name().isEmpty() ? "" : " " + session.name();
		return day(session.day(), "date.weekday", locale) + " " + say(locale, "sessionKind." + session.kind()) + name;
	}

	private String line(Locale locale, String code, int many) {
		return say(locale, code) + ": " + many + "\n";
	}

	private String day(LocalDate day, String pattern, Locale locale) {
		return DateTimeFormatter.ofPattern(say(locale, pattern), locale).format(day);
	}

	private String say(Locale locale, String code, Object... arguments) {
		return this.messages.getMessage(code, arguments, locale);
	}

}
