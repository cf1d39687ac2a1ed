package org.fallow.board.web;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;

import org.fallow.platform.Markup;
import org.fallow.platform.PageSentences;
import org.fallow.rules.Clearance;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * The rows of the squad board. They are written here, because a template asks a good
 * sixty questions for each row, and that was most of the work of a board of five hundred;
 * the table's head and all around it stay in the template.
 */
class BoardTable {

	private static final int LETTERS_OF_A_ROW = 1_000;

	private final PageSentences words;

	private final String context;

	private final LocalDate asOf;

	/**
	 * The rows of one page.
	 * @param words in the reader's language
	 * @param context path of the application, before links
	 * @param asOf the board's day
	 */
	BoardTable(PageSentences words, String context, LocalDate asOf) {
		this.words = words;
		this.context = context;
		this.asOf = asOf;
	}

	String rows(List<BoardRow> rows) {
		Markup to = new Markup(rows.size() * LETTERS_OF_A_ROW);
		rows.forEach((row) -> row(row, to));
		return to.html();
	}

	private void row(BoardRow row, Markup to) {
		to.open("tr", "role", "row", "class", (row.clearance() == Clearance.REFER) ? "row-refer" : null);
		to.open("th", "scope", "row", "role", "rowheader", "class", "row-head");
		to.open("a", "href", this.context + "/athletes/" + row.athleteId() + "?day=" + this.asOf);
		to.text(row.name()).close().said("span", "group-name", row.groupName()).close();
		clearance(row, to);
		why(row, to);
		stage(row, to);
		restingHeartRate(row, to);
		variability(row, to);
		lastEntry(row, to);
		nextStep(row, to);
		to.close();
	}

	/** As {@code fragments/clearance :: badge} writes it elsewhere. */
	private void clearance(BoardRow row, Markup to) {
		String level = row.clearance().name().toLowerCase(Locale.ROOT).replace('_', '-');
		to.open("td", "role", "cell", "class", "whole");
		to.open("span", "class", "clearance clearance-" + level).open("span");
		to.text(this.words.said("clearance." + row.clearance())).close().close().close();
	}

	/** As {@code fragments/clearance :: why} writes it elsewhere. */
	private void why(BoardRow row, Markup to) {
		to.open("td", "role", "cell", "class", "whole");
		if (!row.reasons().isEmpty()) {
			to.open("ul", "class", "why");
			row.reasons().forEach((reason) -> to.open("li").text(said(reason)).close());
			to.close();
		}
		to.said("span", "advised", row.advised() ? this.words.said("board.advised") : null).close();
	}

	/** As {@code fragments/stage :: short} writes it elsewhere. */
	private void stage(BoardRow row, Markup to) {
		Message stage = row.stage();
		cell("board.col.stage", (stage == null) ? "empty" : null, to);
		if (stage != null) {
			to.open("span").open("span", "class", "stage").said("b", "nowrap", said(stage)).text(" ");
			to.said("span", "soft nowrap", numbered("stage.day-short", row.dayInStage())).close().close();
		}
		to.close();
	}

	private void restingHeartRate(BoardRow row, Markup to) {
		cell("board.col.rhr", (row.rhr() == null) ? "number empty" : "number", to);
		if (row.rhr() != null) {
			to.open("span").said("span", "value", numbered("number.bpm", row.rhr())).text(" ");
			to.said("span", "apart", numbered("number.signed", row.rhrDeviation()));
			to.said("span", "under", unless("WITHIN", "rhrFlag.", row.rhrFlag()));
			to.said("span", "under", row.provisional() ? this.words.said("board.provisional") : null).close();
		}
		to.close();
	}

	private void variability(BoardRow row, Markup to) {
		cell("board.col.hrv", (row.hrvState() == null) ? "number empty" : "number", to);
		if (row.hrvState() != null) {
			to.open("span").said("span", "value", numbered("number.ms", row.rmssd()));
			to.said("span", "under", unless("NORMAL", "hrvState.", row.hrvState())).close();
		}
		to.close();
	}

	private void lastEntry(BoardRow row, Markup to) {
		Long quiet = row.quietDays();
		cell("board.col.last", null, to);
		if (row.lastEntry() == null || quiet == null) {
			to.said("span", "soft", this.words.said("board.never"));
		}
		else {
			to.open("span");
			to.said("span", "nowrap",
					(quiet == 0) ? this.words.said("board.this-morning") : this.words.day(row.lastEntry()));
			to.said("span", "under", (quiet > 0) ? this.words.said("board.quiet", quiet) : null).close();
		}
		to.close();
	}

	private void nextStep(BoardRow row, Markup to) {
		Message next = row.nextStage();
		cell("board.col.next", (next == null) ? "empty" : null, to);
		if (next != null) {
			to.open("span");
			to.said("span", "nowrap",
					(row.earliest() == null) ? this.words.said("board.no-date") : this.words.day(row.earliest()));
			to.said("span", "under", said(next)).close();
		}
		to.close();
	}

	/** On a narrow screen a cell stands below its label. */
	private void cell(String label, @Nullable String style, Markup to) {
		to.open("td", "role", "cell", "data-label", this.words.said(label), "class", style);
	}

	private String said(Message message) {
		return this.words.said(message.code(), message.arguments());
	}

	private @Nullable String numbered(String code, @Nullable Number number) {
		return (number == null) ? null : this.words.said(code, number);
	}

	private @Nullable String unless(String usual, String prefix, @Nullable String name) {
		return (name == null || name.equals(usual)) ? null : this.words.said(prefix + name);
	}

}
