package org.fallow.entry.web;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.fallow.entry.FreeWords;
import org.fallow.entry.Meanwhile;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.StoredMorning;
import org.fallow.entry.Symptom;
import org.jspecify.annotations.Nullable;

/**
 * The morning entry as typed: everything is text, so that a wrong value comes back as it
 * was written.
 *
 * @param day the morning
 * @param method how measured
 * @param posture how placed
 * @param rhr resting heart rate
 * @param rmssd RMSSD
 * @param rr RR intervals
 * @param temperature body temperature
 * @param symptoms severity by symptom code, ticked ones only
 * @param otherSymptom a symptom in own words
 * @param otherSeverity how bad that is
 * @param fever whether there was fever
 * @param feverMedicine medicine that lowers fever
 * @param eatingNormally true, false or empty
 * @param feels how the athlete feels
 * @param soreness whether sore from training
 * @param tags circumstances
 * @param note words
 * @param requestId this form's sending
 * @param revision the revision it was built on
 * @param redFlagConfirmed true once red flags were asked again
 * @param allWell true when the one-tap button was pressed
 * @param repeated true once a measurement of low quality was asked for again
 * @param counted beats counted over the time that the method names, instead of a heart
 * rate
 * @param otherIllness NO where the symptom in own words belongs to no illness; YES or
 * empty otherwise
 * @param wordsAsked the words that were asked about: they name a listed symptom, and
 * something else was meant
 * @param meanwhile YES, NO or empty: ill during the mornings without an entry before
 * @param meanwhileSince since when
 */
public record MorningForm(@Nullable String day, @Nullable String method, @Nullable String posture, @Nullable String rhr,
		@Nullable String rmssd, @Nullable String rr, @Nullable String temperature,
		@Nullable Map<String, String> symptoms, @Nullable String otherSymptom, @Nullable String otherSeverity,
		@Nullable Boolean fever, @Nullable String feverMedicine, @Nullable String eatingNormally,
		@Nullable String feels, @Nullable Boolean soreness, @Nullable List<String> tags, @Nullable String note,
		@Nullable String requestId, @Nullable String revision, @Nullable Boolean redFlagConfirmed,
		@Nullable Boolean allWell, @Nullable Boolean repeated, @Nullable String counted, @Nullable String otherIllness,
		@Nullable String wordsAsked, @Nullable String meanwhile, @Nullable String meanwhileSince) {

	private static final String YES = "YES";

	private static final String NO = "NO";

	static MorningForm empty(String day, @Nullable String method, @Nullable String posture, String requestId) {
		return new MorningForm(day, method, posture, null, null, null, null, Map.of(), null, null, false, "NONE", null,
				null, false, List.of(), null, requestId, "0", false, false, false, null, null, null, null, null);
	}

	/**
	 * The form that corrects a stored entry. With RR intervals the two numbers stay
	 * empty, since they are worked out from the intervals.
	 */
	static MorningForm correcting(StoredMorning stored, String requestId) {
		MorningEntry entry = stored.entry();
		String rr = intervals(stored);
		Map<String, String> symptoms = new TreeMap<>();
		String other = null;
		String otherSeverity = null;
		String otherIllness = null;
		for (var symptom : entry.symptoms()) {
			if (symptom.symptom().isInOwnWords()) {
				otherIllness = symptom.symptom().isComplaint() ? NO : YES;
				other = symptom.text();
				otherSeverity = symptom.severity().name();
			}
			else {
				symptoms.put(symptom.symptom().name(), symptom.severity().name());
			}
		}
		return new MorningForm(entry.day().toString(), name(entry.method()), name(entry.posture()),
				(rr == null) ? number(entry.rhrBpm()) : null, (rr == null) ? number(entry.rmssdMs()) : null, rr,
				number(entry.temperatureC()), symptoms, other, otherSeverity, entry.feverLast24h(),
				entry.feverMedicine().name(),
				(entry.eatingNormally() == null) ? null : entry.eatingNormally().toString(), name(entry.feels()),
				entry.soreness() != null, entry.tags().stream().map(Enum::name).toList(), entry.note(), requestId,
				String.valueOf(stored.revision()), false, false, false, null, otherIllness, other,
				answer(entry.meanwhile()), since(entry.meanwhile()));
	}

	private static @Nullable String answer(@Nullable Meanwhile meanwhile) {
		return (meanwhile == null) ? null : meanwhile.ill() ? YES : NO;
	}

	private static @Nullable String since(@Nullable Meanwhile meanwhile) {
		return (meanwhile == null || meanwhile.since() == null) ? null : meanwhile.since().toString();
	}

	private static @Nullable String intervals(StoredMorning stored) {
		List<Integer> rr = stored.rrMs();
		return rr.isEmpty() ? null : rr.stream().map(String::valueOf).collect(Collectors.joining(" "));
	}

	private static @Nullable String name(@Nullable Enum<?> value) {
		return (value == null) ? null : value.name();
	}

	private static @Nullable String number(@Nullable Double value) {
		return (value == null) ? null : new BigDecimal(value.toString()).stripTrailingZeros().toPlainString();
	}

	/** The same, with what is ticked among the symptoms. */
	MorningForm with(Map<String, String> chosen) {
		return new MorningForm(this.day, this.method, this.posture, this.rhr, this.rmssd, this.rr, this.temperature,
				chosen, this.otherSymptom, this.otherSeverity, this.fever, this.feverMedicine, this.eatingNormally,
				this.feels, this.soreness, this.tags, this.note, this.requestId, this.revision, this.redFlagConfirmed,
				this.allWell, this.repeated, this.counted, this.otherIllness, this.wordsAsked, this.meanwhile,
				this.meanwhileSince);
	}

	/** The same, built on another revision and sent as a new one. */
	MorningForm basedOn(int newer, String newRequestId) {
		return new MorningForm(this.day, this.method, this.posture, this.rhr, this.rmssd, this.rr, this.temperature,
				this.symptoms, this.otherSymptom, this.otherSeverity, this.fever, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.tags, this.note, newRequestId,
				String.valueOf(newer), this.redFlagConfirmed, this.allWell, this.repeated, this.counted,
				this.otherIllness, this.wordsAsked, this.meanwhile, this.meanwhileSince);
	}

	/** The same, asked once to be measured again. */
	MorningForm askedToRepeat() {
		return new MorningForm(this.day, this.method, this.posture, this.rhr, this.rmssd, this.rr, this.temperature,
				this.symptoms, this.otherSymptom, this.otherSeverity, this.fever, this.feverMedicine,
				this.eatingNormally, this.feels, this.soreness, this.tags, this.note, this.requestId, this.revision,
				this.redFlagConfirmed, this.allWell, true, this.counted, this.otherIllness, this.wordsAsked,
				this.meanwhile, this.meanwhileSince);
	}

	int basedOn() {
		String text = Typed.words(this.revision);
		return text.matches("\\d{1,6}") ? Integer.parseInt(text) : 0;
	}

	Map<String, String> ticked() {
		return (this.symptoms == null) ? Map.of() : this.symptoms;
	}

	/** Red flags among what is ticked. */
	List<Symptom> redFlags() {
		return ticked().keySet()
			.stream()
			.flatMap((code) -> Typed.oneOf(Symptom.class, code).stream())
			.filter(Symptom::isRedFlag)
			.toList();
	}

	boolean saysNoIllness() {
		return NO.equals(this.otherIllness);
	}

	boolean saysIllMeanwhile() {
		return YES.equals(this.meanwhile);
	}

	/** Whether it was answered about an illness meanwhile. */
	boolean saysMeanwhile() {
		return saysIllMeanwhile() || NO.equals(this.meanwhile);
	}

	/**
	 * What the words name and is not ticked, where it was not asked yet whether it is
	 * meant.
	 */
	List<Symptom> toAsk() {
		String words = Typed.words(this.otherSymptom);
		if (words.isEmpty() || words.equals(Typed.words(this.wordsAsked))) {
			return List.of();
		}
		return FreeWords.named(words).stream().filter((symptom) -> !ticked().containsKey(symptom.name())).toList();
	}

	/** Whether a box is ticked; a browser sends nothing of one that is not. */
	static boolean isTrue(@Nullable Boolean box) {
		return Boolean.TRUE.equals(box);
	}

	/** Whether anything speaks against "all well". */
	boolean saysUnwell() {
		return !ticked().isEmpty() || !Typed.words(this.otherSymptom).isEmpty()
				|| !Typed.words(this.otherSeverity).isEmpty() || isTrue(this.fever)
				|| !(Typed.words(this.feverMedicine).isEmpty() || "NONE".equals(this.feverMedicine))
				|| "false".equals(this.eatingNormally)
				|| !(Typed.words(this.feels).isEmpty() || "WELL".equals(this.feels));
	}

}
