package org.fallow.illness.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.fallow.illness.AssessedDay;
import org.fallow.illness.core.DayAssessment;
import org.fallow.illness.core.Episode;
import org.fallow.illness.core.GateSheet;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.Intensity;
import org.fallow.rules.PathName;
import org.fallow.rules.Protocol;
import org.fallow.rules.RuleBook;
import org.fallow.rules.RuleSet.Path;
import org.fallow.rules.RuleSet.Stage;
import org.fallow.wording.Message;
import org.jspecify.annotations.Nullable;

/**
 * A stage as pages name it, whichever protocol it comes from. Its figures are those of
 * the rule set that decides.
 *
 * @param number 0 for ill, -1 for a hold
 * @param name in full
 * @param shortName for tables
 * @param means what to do in it, sentence by sentence
 */
public record StageView(int number, Message name, Message shortName, List<Message> means) {

	/** What lies over any stage: a clinician hold. */
	static final StageView HOLD = new StageView(-1, Message.of("span.HOLD"), Message.of("span.HOLD.mark"),
			List.of(Message.of("next.CLEARANCE")));

	private static final int OWN_STAGES = 3;

	/**
	 * A stage of a path.
	 * @param path the path
	 * @param stage 0 for ill, else the stage's number
	 * @return its view
	 */
	static StageView of(Path path, int stage) {
		if (stage == 0) {
			return new StageView(0, Message.of("stage.ILL"), shortName(0), List.of(Message.of("stage.ILL.means")));
		}
		return new StageView(stage, name(path, stage), shortName(stage), means(path, stage));
	}

	/** All stages of a path, the first one first. */
	static List<StageView> all(Path path) {
		return IntStream.rangeClosed(1, path.stages().size()).mapToObj((stage) -> of(path, stage)).toList();
	}

	/**
	 * The path an episode is on, by the rule set it keeps.
	 * @param book the team's rule sets
	 * @param hash the rule set's hash
	 * @param name which path
	 * @return the path; the default one should the team have no such rule set
	 */
	static Path path(RuleBook book, String hash, PathName name) {
		return book.find(hash).map(RuleBook.Entry::rules).orElseGet(DefaultRules::ruleSet).path(name);
	}

	/** The path of an assessment's open episode; null without one. */
	static @Nullable Path path(DayAssessment assessment, RuleBook book) {
		Episode episode = assessment.state().episode();
		return (episode == null) ? null : path(book, episode.ruleHash(), episode.path());
	}

	/** What the next gate of an assessment leads to. */
	static Message next(GateSheet gate, @Nullable Path path) {
		return (gate.closes() || path == null) ? Message.of("next.CLOSED") : name(path, gate.to());
	}

	/**
	 * The short name of a day's stage.
	 * @param day the day
	 * @return its name; null without an episode
	 */
	public static @Nullable Message shortName(AssessedDay day) {
		Integer stage = day.stage();
		return (stage == null) ? null : shortName(stage.intValue());
	}

	/**
	 * The short name of what a day's next gate leads to.
	 * @param day the day
	 * @param book the team's rule sets
	 * @return a stage, or the close; null without an episode
	 */
	public static @Nullable Message nextShort(AssessedDay day, RuleBook book) {
		Integer next = day.nextGate();
		PathName name = day.path();
		if (next == null || name == null) {
			return null;
		}
		boolean closes = next > path(book, day.ruleHash(), name).stages().size();
		return closes ? Message.of("next.CLOSED.short") : shortName(next.intValue());
	}

	private static Message shortName(int stage) {
		return (stage == 0) ? Message.of("stage.ILL.short") : Message.of("stage.short", String.valueOf(stage));
	}

	private static Message name(Path path, int stage) {
		if (path.definedBy() == Protocol.OURS && path.stages().size() == OWN_STAGES) {
			return Message.of("stage." + stage);
		}
		if (stage == path.stages().size()) {
			return Message.of("stage.watched", String.valueOf(stage));
		}
		Stage own = path.stages().get(stage - 1);
		Intensity highest = (own.highest() == null) ? Intensity.EASY : own.highest();
		List<Object> arguments = new ArrayList<>(List.of(String.valueOf(stage), highest.name()));
		StringBuilder code = new StringBuilder("stage.named");
		if (own.longRunMinutes() != null) {
			code.append("-minutes");
			arguments.add(String.valueOf(own.longRunMinutes()));
		}
		if (own.effortCeiling() != null) {
			code.append("-effort");
			arguments.add(plain(own.effortCeiling()));
		}
		return Said.of(new Message(code.toString(), arguments));
	}

	private static List<Message> means(Path path, int number) {
		Stage stage = path.stages().get(number - 1);
		if (number == path.stages().size()) {
			return List.of(Message.of("stage.means.watched"));
		}
		List<Message> means = new ArrayList<>();
		boolean strides = stage.highest() == Intensity.STRIDES;
		means.add(Message.of(strides ? "stage.means.strides" : "stage.means.easy"));
		means.add((stage.volumeShare() < 1) ? Message.of("stage.means.volume", percent(stage.volumeShare()))
				: Message.of("stage.means.volume-usual"));
		if (stage.effortCeiling() != null) {
			means.add(Message.of(strides ? "stage.means.effort-strides" : "stage.means.effort",
					plain(stage.effortCeiling())));
		}
		if (stage.heartRateCeiling() != null) {
			means.add(Message.of(strides ? "stage.means.heart-rate-strides" : "stage.means.heart-rate",
					percent(stage.heartRateCeiling())));
		}
		minutes(stage, means);
		return Said.all(means);
	}

	private static void minutes(Stage stage, List<Message> means) {
		if (stage.firstRunMinutes().size() == 1) {
			means.add(Message.of("stage.means.first-run", String.valueOf(stage.firstRunMinutes().get(0))));
		}
		else if (!stage.firstRunMinutes().isEmpty()) {
			String days = stage.firstRunMinutes().stream().map(String::valueOf).collect(Collectors.joining(", "));
			means.add(Message.of("stage.means.first-runs", days));
		}
		if (stage.longRunMinutes() != null) {
			means.add(Message.of("stage.means.minutes", String.valueOf(stage.longRunMinutes())));
		}
	}

	private static String percent(double share) {
		return String.valueOf(Math.round(Math.floor(share * 1000) / 10));
	}

	private static String plain(double value) {
		return (value == Math.rint(value)) ? String.valueOf((long) value) : String.format(Locale.ROOT, "%.1f", value);
	}

	/**
	 * How a rule set's stage is drawn, so that neighbours differ.
	 * @param day the day
	 * @param book the team's rule sets
	 * @return {@code HOLD}, {@code ILL}, {@code STAGE_3} for the last stage, else
	 * {@code STAGE_1} and {@code STAGE_2} in turn
	 */
	public static String drawn(AssessedDay day, RuleBook book) {
		if (day.holding()) {
			return "HOLD";
		}
		Integer stage = day.stage();
		PathName name = day.path();
		if (stage == null || stage == 0 || name == null) {
			return "ILL";
		}
		boolean last = stage >= path(book, day.ruleHash(), name).stages().size();
		return last ? "STAGE_3" : (stage % 2 == 1) ? "STAGE_1" : "STAGE_2";
	}

	/**
	 * Whether two days are of one kind: hold, ill, or the same stage.
	 * @param one a day
	 * @param other another day
	 * @return true if they are
	 */
	public static boolean isSame(AssessedDay one, AssessedDay other) {
		return one.inEpisode() == other.inEpisode() && one.holding() == other.holding()
				&& (one.holding() || Objects.equals(one.stage(), other.stage()));
	}

	/** The name of what a day is. */
	static Message name(AssessedDay day, RuleBook book) {
		PathName name = day.path();
		Integer stage = day.stage();
		if (day.holding() || stage == null || name == null) {
			return Message.of(day.holding() ? "span.HOLD" : "span.ILL");
		}
		return of(path(book, day.ruleHash(), name), stage).name();
	}

	/** A mark of a few letters for the same. */
	static Message mark(AssessedDay day) {
		Integer stage = day.stage();
		if (day.holding() || stage == null || stage == 0) {
			return Message.of(day.holding() ? "span.HOLD.mark" : "span.ILL.mark");
		}
		return Message.of("span.stage.mark", String.valueOf(stage));
	}

}
