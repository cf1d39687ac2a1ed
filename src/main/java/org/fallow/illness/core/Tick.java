package org.fallow.illness.core;

import java.util.Arrays;
import java.util.List;

import org.fallow.entry.AfterSession;
import org.fallow.entry.Fact;
import org.fallow.entry.MorningEntry;
import org.fallow.entry.ReportedSymptom;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Symptom;
import org.jspecify.annotations.Nullable;

/**
 * One tick: a symptom of a morning entry, or what was noticed after a session.
 *
 * @param session key of the session; absent for the morning entry
 * @param code name of the {@link Symptom}, with a session of the {@link AfterSession}
 */
public record Tick(@Nullable String session, String code) {

	/**
	 * Refuses what no list has.
	 * @throws IllegalArgumentException if the list has no such code
	 */
	public Tick {
		Enum<?>[] list = (session == null) ? Symptom.values() : AfterSession.values();
		if (Arrays.stream(list).noneMatch((one) -> one.name().equals(code))) {
			throw new IllegalArgumentException("nothing that can be ticked: " + code);
		}
	}

	/**
	 * A tick of the morning entry.
	 * @param symptom what
	 * @return the tick
	 */
	public static Tick of(Symptom symptom) {
		return new Tick(null, symptom.name());
	}

	/**
	 * A tick of an after-session list.
	 * @param session key of the session
	 * @param noticed what
	 * @return the tick
	 */
	public static Tick of(String session, AfterSession noticed) {
		return new Tick(session, noticed.name());
	}

	/**
	 * The symptom ticked.
	 * @return absent with a session
	 */
	public @Nullable Symptom symptom() {
		return (this.session == null) ? Symptom.valueOf(this.code) : null;
	}

	/**
	 * Whether it is a red flag.
	 * @return true if a hold follows from it
	 */
	public boolean isRedFlag() {
		return (this.session == null) ? Symptom.valueOf(this.code).isRedFlag()
				: AfterSession.valueOf(this.code).isRedFlag();
	}

	/** Whether a fact carries the tick. */
	boolean isOf(Fact fact) {
		if (fact instanceof MorningEntry entry) {
			return this.session == null
					&& entry.symptoms().stream().anyMatch((felt) -> felt.symptom().name().equals(this.code));
		}
		return fact instanceof SessionLog log && log.key().equals(this.session)
				&& log.after().stream().anyMatch((noticed) -> noticed.name().equals(this.code));
	}

	/** The same fact without the tick. */
	Fact takenOff(Fact fact) {
		if (fact instanceof MorningEntry entry) {
			List<ReportedSymptom> left = entry.symptoms()
				.stream()
				.filter((felt) -> !felt.symptom().name().equals(this.code))
				.toList();
			return entry.feeling(left);
		}
		SessionLog log = (SessionLog) fact;
		return log.noticing(log.after().stream().filter((noticed) -> !noticed.name().equals(this.code)).toList());
	}

}
