package org.fallow.contact;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.fallow.access.Ids;
import org.fallow.access.PersonId;
import org.fallow.access.TraceSubject;
import org.fallow.entry.Recording;
import org.fallow.entry.Submission;
import org.fallow.team.Athlete;
import org.fallow.team.AthleteAccess;
import org.fallow.team.OfAthlete;
import org.fallow.team.Role;
import org.fallow.team.Squad;
import org.fallow.wording.Problem;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Messages between an athlete and the coaches who cover the athlete, each about the
 * decision of a day. They are only added.
 */
@Service
@Transactional
public class Threads {

	/** Longest message, characters. */
	public static final int LONGEST = ContactText.LONGEST;

	/** How many days back a message may be about (own, no source). */
	public static final int ABOUT_DAYS = 366;

	private final JdbcClient jdbc;

	private final Squad squad;

	private final Recording recording;

	private final AthleteAccess access;

	Threads(JdbcClient jdbc, Squad squad, Recording recording, AthleteAccess access) {
		this.jdbc = jdbc;
		this.squad = squad;
		this.recording = recording;
		this.access = access;
	}

	/**
	 * Stores a message; the same sending once.
	 * @param id whose thread
	 * @param about day of the decision it is about; absent if none could be read
	 * @param body 1 to 1,000 characters
	 * @param submission who sends it, and which sending it is
	 * @return what is wrong; empty if it is stored
	 */
	@OfAthlete
	public List<Problem> write(PersonId id, @Nullable LocalDate about, String body, Submission submission) {
		Athlete athlete = this.squad.athlete(id);
		LocalDate today = this.recording.today(athlete);
		String words = ContactText.plain(body);
		List<Problem> problems = new ArrayList<>();
		ContactText.check(problems, "body", words);
		if (about == null || about.isAfter(today) || about.isBefore(today.minusDays(ABOUT_DAYS))) {
			problems.add(Problem.of("about", "thread.about.wrong"));
		}
		if (about == null || !problems.isEmpty()) {
			return problems;
		}
		UUID actor = submission.actor().value();
		Role role = submission.actor().equals(id) ? Role.ATHLETE : Role.COACH;
		int stored = this.jdbc
			.sql("""
					insert into contact_message (athlete_id, id, about_on, body, recorded_at, recorded_on, actor_id, actor_name,
						role, request_id)
					values (?, ?, ?, ?, ?, ?, ?, (select name from person where id = ?), ?, ?) on conflict do nothing""")
			.params(id.value(), Ids.next(), about, words, this.recording.now().atOffset(ZoneOffset.UTC), today, actor,
					actor, role.name(), submission.requestId())
			.update();
		if (stored == 1) {
			this.access.changed(athlete, TraceSubject.THREAD);
		}
		return List.of();
	}

	/**
	 * The messages of an athlete.
	 * @param athlete whose
	 * @return newest last
	 */
	@OfAthlete
	@Transactional(readOnly = true)
	public List<ThreadMessage> of(PersonId athlete) {
		return this.jdbc
			.sql("select * from contact_message where athlete_id = any (fallow_entries(?)) order by recorded_at, id")
			.param(athlete.value())
			.query(Threads::message)
			.list();
	}

	private static ThreadMessage message(ResultSet row, int number) throws SQLException {
		return new ThreadMessage(row.getObject("about_on", LocalDate.class), row.getString("body"),
				row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
				new PersonId(row.getObject("actor_id", UUID.class)), row.getString("actor_name"),
				Role.valueOf(row.getString("role")));
	}

}
