package org.fallow.training;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.fallow.access.PersonId;
import org.fallow.entry.Absence;
import org.fallow.entry.Absences;
import org.fallow.entry.MedicineChange;
import org.fallow.entry.Medicines;
import org.fallow.entry.SessionLog;
import org.fallow.entry.Sessions;
import org.fallow.illness.Assessments;
import org.fallow.illness.core.Episode;
import org.fallow.team.Athlete;

import org.springframework.stereotype.Component;

/** Asks for the backgrounds of many athletes as often as for that of one. */
@Component
class Backgrounds {

	/**
	 * Loading weeks, healthy days and runs before an episode are looked for so far back.
	 */
	static final int DAYS_BACK = 182;

	/**
	 * A race may ask for a coach's word four weeks after an illness, and a little more.
	 */
	private static final int ILL_DAYS_BACK = 56;

	private final Assessments assessments;

	private final Absences absences;

	private final Sessions sessions;

	private final Medicines medicines;

	private final Statements statements;

	private final RaceWords raceWords;

	Backgrounds(Assessments assessments, Absences absences, Sessions sessions, Medicines medicines,
			Statements statements, RaceWords raceWords) {
		this.assessments = assessments;
		this.absences = absences;
		this.sessions = sessions;
		this.medicines = medicines;
		this.statements = statements;
		this.raceWords = raceWords;
	}

	/**
	 * Of athletes who have the same day today.
	 * @param athletes who
	 * @param today their day
	 * @param inEpisode those of them whose latest day is one of an episode
	 */
	Map<PersonId, Background> of(Collection<Athlete> athletes, LocalDate today, Collection<PersonId> inEpisode) {
		List<PersonId> ids = athletes.stream().map(Athlete::id).toList();
		Map<PersonId, Episode> episodes = inEpisode.isEmpty() ? Map.of() : this.assessments.episodes(inEpisode);
		Map<PersonId, LocalDate> lastIll = this.assessments.lastIll(ids, today.minusDays(ILL_DAYS_BACK), today);
		Map<UUID, List<Absence>> away = this.absences.of(ids);
		Map<PersonId, List<RaceWord>> words = this.raceWords.of(ids, today);
		Map<PersonId, Statement> said = this.statements.of(ids);
		Map<PersonId, List<MedicineChange>> taken = this.medicines.of(ids);
		Map<PersonId, List<SessionLog>> logs = logs(ids, today, episodes);
		Map<PersonId, List<LocalDate>> unwell = unwell(episodes);
		Map<PersonId, Background> found = new HashMap<>();
		athletes.forEach((one) -> found.put(one.id(),
				new Background(one, today, episodes.get(one.id()), lastIll.get(one.id()),
						away.getOrDefault(one.id().value(), List.of()), words.getOrDefault(one.id(), List.of()),
						said.getOrDefault(one.id(), Statement.NONE), taken.getOrDefault(one.id(), List.of()),
						logs.getOrDefault(one.id(), List.of()), unwell.getOrDefault(one.id(), List.of()))));
		return found;
	}

	private Map<PersonId, List<SessionLog>> logs(List<PersonId> ids, LocalDate today, Map<PersonId, Episode> episodes) {
		Map<PersonId, List<SessionLog>> logs = new HashMap<>(this.sessions.of(ids, today, today));
		if (!episodes.isEmpty()) {
			logs.putAll(this.sessions.of(episodes.keySet(), first(episodes), today));
		}
		return logs;
	}

	private Map<PersonId, List<LocalDate>> unwell(Map<PersonId, Episode> episodes) {
		if (episodes.isEmpty()) {
			return Map.of();
		}
		LocalDate last = episodes.values().stream().map(Episode::firstOnset).max(LocalDate::compareTo).orElseThrow();
		return this.assessments.unwell(episodes.keySet(), first(episodes), last);
	}

	private static LocalDate first(Map<PersonId, Episode> episodes) {
		return episodes.values()
			.stream()
			.map(Episode::firstOnset)
			.min(LocalDate::compareTo)
			.orElseThrow()
			.minusDays(DAYS_BACK);
	}

}
