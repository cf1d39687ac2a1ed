package org.fallow.contact;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.contact.core.Mark;
import org.fallow.contact.core.MarkState;
import org.fallow.contact.core.Matter;
import org.fallow.contact.core.MatterKey;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.ByCoach;
import org.fallow.team.OfAthlete;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What coaches note of words they had. Nothing is overwritten; the last mark of a matter
 * counts. No mark changes a clearance.
 */
@Service
@Transactional
public class Marks {

	/** Days for which an athlete reads a shared note on the own page (own, no source). */
	public static final int SHARED_DAYS = 14;

	private final JdbcClient jdbc;

	private final MarkRows rows;

	private final Needs needs;

	private final Squad squad;

	private final Recording recording;

	private final AthleteAccess access;

	Marks(JdbcClient jdbc, MarkRows rows, Needs needs, Squad squad, Recording recording, AthleteAccess access) {
		this.jdbc = jdbc;
		this.rows = rows;
		this.needs = needs;
		this.squad = squad;
		this.recording = recording;
		this.access = access;
	}

	/**
	 * Stores a mark; the same sending once.
	 * @param id with whom the word is had
	 * @param matter about what; absent if the form named nothing known
	 * @param arose the day it arose; absent likewise
	 * @param state how far the coach has come; absent likewise
	 * @param note what was said, 1 to 1,000 characters
	 * @param shared whether the athlete may read the note
	 * @param submission who sends it, and which sending it is
	 * @return what is wrong; empty if it is stored
	 */
	@ByCoach
	public List<Problem> mark(PersonId id, @Nullable Matter matter, @Nullable LocalDate arose,
			@Nullable MarkState state, String note, boolean shared, Submission submission) {
		Athlete athlete = this.squad.athlete(id);
		String words = ContactText.plain(note);
		List<Problem> problems = new ArrayList<>();
		if (id.equals(submission.actor())) {
			problems.add(Problem.of("", "words.own"));
		}
		if (state == null) {
			problems.add(Problem.of("state", "words.state.missing"));
		}
		ContactText.check(problems, "note", words);
		if (matter == null || arose == null || !stands(athlete, new MatterKey(id, matter, arose))) {
			problems.add(Problem.of("", "words.gone"));
		}
		if (matter == null || arose == null || state == null || !problems.isEmpty()) {
			return problems;
		}
		int stored = this.jdbc
			.sql("""
					insert into contact_mark (athlete_id, id, matter, arose_on, state, note, shared, recorded_at, recorded_on,
						actor_id, request_id) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict do nothing""")
			.params(id.value(), Ids.next(), matter.name(), arose, state.name(), words, shared,
					this.recording.now().atOffset(ZoneOffset.UTC), this.recording.today(athlete),
					submission.actor().value(), submission.requestId())
			.update();
		if (stored == 1) {
			this.access.changed(athlete, TraceSubject.CONTACT);
		}
		return List.of();
	}

	private boolean stands(Athlete athlete, MatterKey key) {
		return this.needs.of(List.of(athlete.id()), this.recording.today(athlete))
			.stream()
			.anyMatch((need) -> need.key().equals(key));
	}

	/**
	 * All marks of an athlete, for coaches.
	 * @param athlete whose
	 * @return newest first
	 */
	@ByCoach
	@Transactional(readOnly = true)
	public List<Mark> of(PersonId athlete) {
		return this.rows.all(athlete);
	}

	/**
	 * What coaches shared with an athlete in the last days.
	 * @param athlete whose
	 * @return newest first
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<SharedNote> shared(PersonId athlete) {
		ZoneId zone = this.squad.athlete(athlete).zone();
		return this.rows.shared(athlete, this.recording.now().minus(SHARED_DAYS, ChronoUnit.DAYS))
			.stream()
			.map((mark) -> new SharedNote(mark.by(), mark.note(), LocalDateTime.ofInstant(mark.at(), zone)))
			.toList();
	}

}
