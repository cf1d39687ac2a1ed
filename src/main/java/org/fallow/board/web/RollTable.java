package org.fallow.board.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import org.fallow.platform.Figures;
import org.fallow.platform.Markup;
import org.fallow.platform.PageSentences;
import org.fallow.training.PartsWords;
import org.fallow.training.core.Version;
import org.jspecify.annotations.Nullable;

/**
 * The rows of the session roll, written here for the same reason as those of the board.
 */
class RollTable {

	private static final int LETTERS_OF_A_ROW = 400;

	private final PageSentences words;

	private final PartsWords parts;

	private final String context;

	private final Map<String, String> lines = new HashMap<>();

	/**
	 * The rows of one page.
	 * @param words in the reader's language
	 * @param parts likewise
	 * @param context path of the application, before links
	 */
	RollTable(PageSentences words, PartsWords parts, String context) {
		this.words = words;
		this.parts = parts;
		this.context = context;
	}

	Written write(RollSession roll) {
		Markup to = new Markup(roll.lines().size() * LETTERS_OF_A_ROW);
		roll.lines().forEach((line) -> row(line, to));
		return new Written(roll, to.html());
	}

	private void row(RollLine line, Markup to) {
		to.open("tr", "role", "row", "class", (line.version() == Version.CLINICIAN_FIRST) ? "row-refer" : null);
		to.open("th", "scope", "row", "role", "rowheader", "class", "row-head");
		to.open("a", "href", this.context + "/athletes/" + line.athleteId() + "/sessions");
		to.text(line.name()).close().close();
		to.open("td", "role", "cell", "class", "whole");
		to.open("strong").text(this.words.said("version." + line.version())).close().text(" ");
		to.said("span", "under", instead(line)).text(" ");
		to.said("span", "under", (line.ranToday() > 0) ? this.words.said("roll.ran", line.ranToday()) : null);
		line.logged().forEach((logged) -> logged(logged, to));
		to.close();
		to.open("td", "role", "cell", "class", "whole");
		if (line.reason() != null) {
			to.open("span").text(this.words.said(line.reason().code(), line.reason().arguments())).close();
		}
		to.close().close();
	}

	/** Day, session, minutes, effort, ticks and note of a session lately logged. */
	private void logged(LoggedSession logged, Markup to) {
		List<String> told = new ArrayList<>();
		told.add(this.words.said("activity." + logged.activity()));
		if (logged.minutes() != null) {
			told.add(this.words.said("sessions.minutes", logged.minutes()));
		}
		if (logged.effort() != null) {
			told.add(this.words.said("athlete.sessions.effort-of", Figures.argument(logged.effort())));
		}
		logged.after().forEach((noticed) -> told.add(this.words.said(noticed.code(), noticed.arguments())));
		if (logged.note() != null) {
			told.add(logged.note());
		}
		String comma = this.words.said("list.comma");
		to.text(" ").open("span", "class", "under", "dir", "auto");
		to.text(this.words.said("roll.logged", logged.day(), String.join(comma, told))).close();
	}

	private @Nullable String instead(RollLine line) {
		if (line.instead() == null || line.version() == Version.AS_PROGRAMMED) {
			return null;
		}
		String parts = this.lines.computeIfAbsent(line.instead(),
				(one) -> Objects.requireNonNullElse(this.parts.said(one), one));
		return this.words.said("roll.instead", line.minutes(), parts);
	}

	/**
	 * A session and the rows of its table.
	 *
	 * @param roll who runs what
	 * @param rows well-formed HTML, one row for each line
	 */
	public record Written(RollSession roll, String rows) {
	}

}
