package org.fallow.illness.core;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.fallow.baseline.RhrFlag;
import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.Recorded;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.fallow.rules.Clearance;
import org.fallow.rules.DefaultRules;
import org.fallow.rules.RuleBook;
import org.fallow.wording.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import static org.assertj.core.api.Assertions.assertThat;

/**
 * Lives the athletes of docs/stories.md, a day at a time as a server does, and holds
 * every column of every row against what the core says. The page was written from the
 * rule text by hand; nothing in it is copied from output.
 */
class ToldStoriesTest {

	private static final RuleBook BOOK = RuleBook.of(DefaultRules.ruleSet());

	private static final Map<Clearance, String> CLEARANCES = Map.of(Clearance.REFER, "Refer", Clearance.REST, "Rest",
			Clearance.NOT_ASSESSED, "Not assessed", Clearance.EASY_ONLY, "Easy only", Clearance.FULL_TRAINING,
			"Full training");

	private static final Pattern SLIP = Pattern
		.compile("slip of (.+?)(?: on day (\\d+))? at ([0-9]{2}:[0-9]{2}(?::[0-9]{2})?)");

	static List<ToldAthlete> athletes() {
		return ToldAthlete.all();
	}

	@Test
	void tellsThirtyStories() {
		assertThat(athletes().stream().map(ToldAthlete::story).distinct().count()).isGreaterThanOrEqualTo(30);
		assertThat(athletes()).doesNotHaveDuplicates().allSatisfy((one) -> assertThat(one.lastDay()).isNotNegative());
	}

	@ParameterizedTest
	@MethodSource("athletes")
	void saysWhatThePageSays(ToldAthlete athlete) {
		Telling telling = new Telling(athlete.usual().isEmpty() ? 0 : athlete.usual().get(1));
		for (int day = -athlete.before(); day < 0; day++) {
			int place = Math.floorMod(day, athlete.usual().size());
			telling.tell(day, String.valueOf(athlete.usual().get(place)));
		}
		LocalDate adultFrom = athlete.born().plusYears(18);
		List<DayAssessment> lived = new ArrayList<>();
		List<String> differ = new ArrayList<>();
		for (int day = -athlete.before(); day <= athlete.lastDay(); day++) {
			List<String> refused = new ArrayList<>();
			ToldAthlete.Row row = athlete.rows().get(day);
			for (String told : (row == null) ? List.<String>of() : row.told()) {
				tell(telling, day, told, athlete, refused);
			}
			DayAssessment lastDay = live(lived, new Timeline(telling.facts(), adultFrom), day);
			if (row != null) {
				compare(row, lastDay, refused, "day " + day, differ);
			}
		}
		assertThat(differ).as(athlete.toString()).isEmpty();
		List<DayAssessment> whole = Course.of(new Timeline(telling.facts(), adultFrom), BOOK,
				Story.day(athlete.lastDay()));
		assertThat(whole).as("law 1").isEqualTo(lived.subList(lived.size() - whole.size(), lived.size()));
	}

	private static DayAssessment live(List<DayAssessment> lived, Timeline known, int day) {
		List<Fact> facts = known.facts()
			.stream()
			.filter((fact) -> !fact.recorded().on().isAfter(Story.day(day)))
			.toList();
		State before = lived.isEmpty() ? State.before(Story.day(day)) : lived.get(lived.size() - 1).state();
		List<DayAssessment> one = Course.from(before, new Timeline(facts, known.adultFrom()), BOOK, Story.day(day));
		assertThat(one).hasSize(1);
		lived.add(one.get(0));
		return one.get(0);
	}

	private static void tell(Telling telling, int day, String told, ToldAthlete athlete, List<String> refused) {
		Matcher slip = SLIP.matcher(told);
		if (!slip.matches()) {
			telling.tell(day, told);
			return;
		}
		int of = (slip.group(2) == null) ? day : Integer.parseInt(slip.group(2));
		Timeline known = new Timeline(telling.facts(), athlete.born().plusYears(18));
		Recorded now = Telling.recorded(day, LocalTime.parse(slip.group(3)));
		SlipCase asked = slip(tick(known, day, slip.group(1)), Story.day(of), now, known, athlete.coached());
		Message refusal = SlipCheck.refusal(asked);
		if (refusal == null) {
			telling.facts().add(new IllnessEvent.Slip(now.on(), now, asked.tick(), SlipCheck.terms(asked)));
		}
		else {
			String[] code = refusal.code().split("\\.");
			refused.add("slip refused (" + words(code[code.length - 1]) + ")");
		}
	}

	/** Of the morning's entry, or where that does not have it of today's session. */
	private static Tick tick(Timeline known, int day, String what) {
		String code = Telling.code(what);
		for (Fact fact : known.facts()) {
			if (fact instanceof SessionLog log && log.day().equals(Story.day(day))
					&& log.after().contains(AfterSession.valueOf(code))) {
				return Tick.of(log.key(), AfterSession.valueOf(code));
			}
		}
		return Tick.of(Symptom.valueOf(code));
	}

	private static SlipCase slip(Tick tick, LocalDate day, Recorded now, Timeline known, boolean coached) {
		Timeline then = new Timeline(
				known.facts().stream().filter((fact) -> fact.recorded().compareTo(now) <= 0).toList(),
				known.adultFrom());
		Recorded first = SlipCheck.firstRecorded(then, tick, now.on());
		List<Fact> before = then.facts()
			.stream()
			.filter((fact) -> first != null && fact.recorded().compareTo(first) < 0)
			.toList();
		List<Fact> with = new ArrayList<>(then.facts());
		with.add(new IllnessEvent.Slip(now.on(), now, tick, SlipTerms.AT_ONCE));
		return new SlipCase(tick, day, now, then, last(before, then, now), last(with, then, now), BOOK, coached);
	}

	private static DayAssessment last(List<Fact> facts, Timeline known, Recorded now) {
		List<DayAssessment> days = Course.withoutForecast(new Timeline(facts, known.adultFrom()), BOOK, now.on());
		return days.isEmpty() ? Course.nothing(BOOK, now.on()) : days.get(days.size() - 1);
	}

	private static void compare(ToldAthlete.Row row, DayAssessment is, List<String> refused, String day,
			List<String> differ) {
		differ(day, "clearance", row.clearance(), CLEARANCES.get(is.clearance()), differ);
		differ(day, "stage", row.stage(), stage(is.state().episode()), differ);
		differ(day, "heart rate", row.heartRate(), heartRate(is.rhr()), differ);
		differ(day, "why", row.why().toString(),
				is.reasons().stream().map((reason) -> words(reason.code())).sorted().toList().toString(), differ);
		List<String> told = new ArrayList<>(refused);
		is.notices().forEach((notice) -> told.add(words(notice.code())));
		for (String besides : row.besides()) {
			boolean absent = besides.startsWith("without ");
			String what = absent ? besides.substring("without ".length()) : besides;
			if (told.contains(what) == absent) {
				differ.add(day + ", besides: page says \"" + besides + "\", Fallow tells " + told);
			}
		}
		List<String> said = row.besides().stream().filter((one) -> one.startsWith("slip refused")).toList();
		differ(day, "refused", said.toString(), refused.toString(), differ);
		differ(day, "next", row.next(), next(is.gate()), differ);
	}

	private static void differ(String day, String column, String page, String core, List<String> differ) {
		if (!page.equals(core)) {
			differ.add(day + ", " + column + ": page \"" + page + "\", Fallow \"" + core + "\"");
		}
	}

	/** "reason.above-the-line" is "above the line". */
	private static String words(String code) {
		return code.substring(code.indexOf('.') + 1).replace('-', ' ');
	}

	private static String stage(Episode episode) {
		return (episode == null) ? ""
				: ((episode.stage() == 0) ? "ill" : String.valueOf(episode.stage())) + ", "
						+ ((episode.path().name().equals("THREE_WEEK")) ? "three-week"
								: episode.path().name().toLowerCase(Locale.ROOT));
	}

	private static String heartRate(RhrEvidence rhr) {
		RhrFlag flag = rhr.flag();
		String measured = (flag != null) ? flag.name().toLowerCase(Locale.ROOT).replace('_', ' ') : kept(rhr);
		String above = (rhr.above() != null) ? "above the line" : "";
		return (measured.isEmpty() || above.isEmpty()) ? measured + above : measured + ", " + above;
	}

	private static String kept(RhrEvidence rhr) {
		RhrFlag kept = rhr.keptFlag();
		return (kept != null && kept.isHigh()) ? "kept high" : (rhr.keptLow() ? "kept low" : "");
	}

	private static String next(GateSheet gate) {
		if (gate == null) {
			return "";
		}
		LocalDate earliest = gate.earliest();
		return (earliest == null) ? "none" : String.valueOf(earliest.toEpochDay() - Story.DAY_0.toEpochDay());
	}

}
