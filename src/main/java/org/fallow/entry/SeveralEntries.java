package org.fallow.entry;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.function.BinaryOperator;

import org.jspecify.annotations.Nullable;

/**
 * The facts of an athlete who was entered more than once, read as those of one: by
 * statements that take the rows of all entries, the athlete's own first. The revisions of
 * the other entries are counted on in steps of a million, and their keys begin with their
 * id, so that no row is taken for a revision of another entry's.
 */
public final class SeveralEntries {

	/** Whose rows are read; parameter {@code athlete}. */
	public static final String IDS = "any (fallow_entries(:athlete))";

	/** The key of a row; parameter {@code athlete}. */
	public static final String KEY = "case when athlete_id = :athlete then key else athlete_id || ':' || key end";

	private static final int STEP = 1_000_000;

	/** The revision of a row; parameter {@code athlete}. */
	public static final String REVISION = "case when athlete_id = :athlete then revision else revision + " + STEP
			+ " * (array_position(fallow_entries(:athlete), athlete_id) - 1) end";

	private SeveralEntries() {
	}

	/**
	 * Which entry a row is of.
	 * @param revision its revision as {@link #REVISION} reads it
	 * @return 0 for the athlete's own, from 1 on for the others
	 */
	public static int entry(int revision) {
		return revision / STEP;
	}

	/**
	 * Mornings of several entries. Of a day that only one has, nothing changes. Where
	 * several have it, each revision says what is safer in what all have by then: every
	 * symptom at its worst, any fever or medicine, the higher pulse. So nothing ticked in
	 * one of them is lost, and a later correction in one takes nothing from the other.
	 * @param mornings with their symptoms, as read
	 * @param entries which entry each is of
	 * @return the mornings; those of one instant in the order read
	 */
	public static List<MorningEntry> mornings(List<MorningEntry> mornings, List<Integer> entries) {
		if (entries.stream().allMatch((entry) -> entry == 0)) {
			return mornings;
		}
		List<Integer> order = order(mornings);
		Map<Long, Map<Integer, MorningEntry>> latest = new TreeMap<>();
		List<MorningEntry> read = new ArrayList<>();
		for (int i : order) {
			MorningEntry morning = mornings.get(i);
			Map<Integer, MorningEntry> day = latest.computeIfAbsent(morning.day().toEpochDay(), (d) -> new TreeMap<>());
			day.put(entries.get(i), morning);
			read.add(day.values().stream().reduce(SeveralEntries::safer).orElseThrow().recordedAs(morning.recorded()));
		}
		return read;
	}

	private static List<Integer> order(List<MorningEntry> mornings) {
		List<Integer> order = new ArrayList<>();
		for (int i = 0; i < mornings.size(); i++) {
			order.add(i);
		}
		order.sort(Comparator.comparing((Integer i) -> mornings.get(i).recorded()));
		return order;
	}

	/**
	 * The same of mornings with how they were stored: the revision is that of the
	 * athlete's own entry by then, 0 without one.
	 * @param stored the mornings, by entry, day and revision
	 * @param entries which entry each is of
	 * @return by day, then in the order recorded
	 */
	static List<StoredMorning> stored(List<StoredMorning> stored, List<Integer> entries) {
		if (entries.stream().allMatch((entry) -> entry == 0)) {
			return stored;
		}
		List<MorningEntry> mornings = stored.stream().map(StoredMorning::entry).toList();
		List<MorningEntry> safer = mornings(mornings, entries);
		Map<Long, Integer> own = new TreeMap<>();
		List<StoredMorning> read = new ArrayList<>();
		for (int i : order(mornings)) {
			StoredMorning one = stored.get(i);
			int revision = own.merge(one.day().toEpochDay(), (entries.get(i) == 0) ? one.revision() : 0, Math::max);
			read.add(new StoredMorning(safer.get(read.size()), revision, one.rrMs(), one.actor(), one.source(),
					one.requestId()));
		}
		read.sort(Comparator.comparing(StoredMorning::day));
		return read;
	}

	/**
	 * What is safer in two mornings of a day.
	 * @param one the one
	 * @param other the other
	 * @return the worse of each answer, recorded when the first was
	 */
	static MorningEntry safer(MorningEntry one, MorningEntry other) {
		MorningEntry measured = higher(one, other);
		return new MorningEntry(one.day(), one.recorded(), measured.method(), measured.posture(), measured.rhrBpm(),
				lowerRmssd(measured, one, other), measured.unsure(),
				either(one.temperatureC(), other.temperatureC(), Math::max), symptoms(one, other),
				one.feverLast24h() || other.feverLast24h(), medicine(one.feverMedicine(), other.feverMedicine()),
				either(one.eatingNormally(), other.eatingNormally(), Boolean::logicalAnd),
				either(one.feels(), other.feels(), (a, b) -> (a.compareTo(b) >= 0) ? a : b),
				either(one.soreness(), other.soreness(), (a, b) -> (a.compareTo(b) >= 0) ? a : b), tags(one, other),
				either(one.note(), other.note(), (a, b) -> a.equals(b) ? a : a + "\n" + b),
				either(one.meanwhile(), other.meanwhile(), SeveralEntries::worse));
	}

	private static <T> @Nullable T either(@Nullable T one, @Nullable T other, BinaryOperator<T> both) {
		if (one == null || other == null) {
			return (one == null) ? other : one;
		}
		return both.apply(one, other);
	}

	/** The measurement that counts: one of good quality, then the higher pulse. */
	private static MorningEntry higher(MorningEntry one, MorningEntry other) {
		if (isMeasured(one) != isMeasured(other)) {
			return isMeasured(one) ? one : other;
		}
		if (one.unsure() != other.unsure()) {
			return one.unsure() ? other : one;
		}
		Double a = one.rhrBpm();
		Double b = other.rhrBpm();
		return (a == null || (b != null && b > a)) ? ((b == null) ? one : other) : one;
	}

	private static boolean isMeasured(MorningEntry entry) {
		return entry.rhrBpm() != null || entry.rmssdMs() != null;
	}

	/** The lower RMSSD of those taken in the same way and with the same quality. */
	private static @Nullable Double lowerRmssd(MorningEntry measured, MorningEntry one, MorningEntry other) {
		MorningEntry second = (measured == one) ? other : one;
		boolean same = measured.method() == second.method() && measured.posture() == second.posture()
				&& measured.unsure() == second.unsure();
		return same ? either(measured.rmssdMs(), second.rmssdMs(), Math::min) : measured.rmssdMs();
	}

	private static List<ReportedSymptom> symptoms(MorningEntry one, MorningEntry other) {
		Map<Symptom, ReportedSymptom> worst = new EnumMap<>(Symptom.class);
		for (MorningEntry entry : List.of(one, other)) {
			for (ReportedSymptom felt : entry.symptoms()) {
				worst.merge(felt.symptom(), felt, SeveralEntries::worse);
			}
		}
		return List.copyOf(worst.values());
	}

	private static ReportedSymptom worse(ReportedSymptom one, ReportedSymptom other) {
		String words = either(one.text(), other.text(), (a, b) -> a.equals(b) ? a : a + "; " + b);
		boolean first = one.severity().compareTo(other.severity()) >= 0;
		return new ReportedSymptom(one.symptom(), first ? one.severity() : other.severity(), words);
	}

	private static Meanwhile worse(Meanwhile one, Meanwhile other) {
		if (one.ill() != other.ill()) {
			return one.ill() ? one : other;
		}
		LocalDate since = either(one.since(), other.since(), (a, b) -> a.isBefore(b) ? a : b);
		return one.ill() ? Meanwhile.ill(since) : one;
	}

	private static FeverMedicine medicine(FeverMedicine one, FeverMedicine other) {
		if (one == FeverMedicine.ILLNESS || other == FeverMedicine.ILLNESS) {
			return FeverMedicine.ILLNESS;
		}
		return (one == FeverMedicine.NONE) ? other : one;
	}

	private static List<ContextTag> tags(MorningEntry one, MorningEntry other) {
		EnumSet<ContextTag> tags = EnumSet.noneOf(ContextTag.class);
		tags.addAll(one.tags());
		tags.addAll(other.tags());
		return List.copyOf(tags);
	}

	/**
	 * Other facts of several entries: a session that both have counts once, or one run
	 * would count as two; and that a condition ended, noted in one before the other was
	 * found to be of the same person, ends none that is present in the other.
	 * @param facts as read
	 * @param entries which entry each is of
	 * @param last when the last of the entries was made part of the athlete
	 * @return the facts that count, in the same order
	 */
	public static List<Fact> others(List<Fact> facts, List<Integer> entries, @Nullable Instant last) {
		if (entries.stream().allMatch((entry) -> entry == 0)) {
			return facts;
		}
		List<Fact> read = new ArrayList<>();
		for (int i = 0; i < facts.size(); i++) {
			Fact fact = facts.get(i);
			int entry = entries.get(i);
			boolean twice = fact instanceof SessionLog session && isTwice(session, entry, facts, entries);
			boolean ends = fact instanceof HealthCondition condition && !condition.present()
					&& (last == null || !condition.recorded().at().isAfter(last))
					&& isPresentElsewhere(condition, entry, facts, entries);
			if (!twice && !ends) {
				read.add(fact);
			}
		}
		return read;
	}

	private static boolean isTwice(SessionLog session, int entry, List<Fact> facts, List<Integer> entries) {
		for (int i = 0; i < facts.size(); i++) {
			if (entries.get(i) < entry && facts.get(i) instanceof SessionLog own && isSame(own, session)) {
				return true;
			}
		}
		return false;
	}

	private static boolean isSame(SessionLog one, SessionLog other) {
		return one.day().equals(other.day()) && one.activity() == other.activity()
				&& Objects.equals(one.minutes(), other.minutes()) && Objects.equals(one.rpe(), other.rpe())
				&& one.intensity() == other.intensity() && one.after().equals(other.after())
				&& one.removed() == other.removed();
	}

	private static boolean isPresentElsewhere(HealthCondition ended, int entry, List<Fact> facts,
			List<Integer> entries) {
		Map<Integer, HealthCondition> latest = new TreeMap<>();
		for (int i = 0; i < facts.size(); i++) {
			if (entries.get(i) != entry && facts.get(i) instanceof HealthCondition one && one.kind() == ended.kind()) {
				latest.merge(entries.get(i), one, (a, b) -> b.day().isBefore(a.day()) ? a : b);
			}
		}
		return latest.values().stream().anyMatch(HealthCondition::present);
	}

}
