package org.fallow.team;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

import org.fallow.access.CurrentPerson;
import org.jspecify.annotations.Nullable;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.web.context.request.RequestAttributes;
import org.springframework.web.context.request.RequestContextHolder;

/**
 * The number to tap in an emergency: that of the place which the signed-in person's club
 * has chosen. Pages use it as {@code @emergency}.
 */
@Component("emergency")
@Transactional(readOnly = true)
public class EmergencyNumber {

	/** Shown where no club chose one: that of the European Union and many others. */
	public static final String USUAL = "112";

	private static final Pattern DIALLED = Pattern.compile("\\+?[0-9]{2,15}");

	private static final String KNOWN = EmergencyNumber.class.getName();

	private final JdbcClient jdbc;

	private final CurrentPerson current;

	EmergencyNumber(JdbcClient jdbc, CurrentPerson current) {
		this.jdbc = jdbc;
		this.current = current;
	}

	/**
	 * The number to dial.
	 * @return digits, perhaps with a + before them
	 */
	public String number() {
		return chosen().orElse(USUAL);
	}

	/**
	 * Whether the number is that of the place.
	 * @return false where it is the usual one, which may be wrong there
	 */
	public boolean isChosen() {
		return chosen().isPresent();
	}

	/** Asked once a request. */
	private Optional<String> chosen() {
		RequestAttributes request = RequestContextHolder.getRequestAttributes();
		if (request != null && request.getAttribute(KNOWN, RequestAttributes.SCOPE_REQUEST) instanceof String known) {
			return Optional.of(known).filter((number) -> !number.isEmpty());
		}
		Optional<String> found = ofTheClub();
		if (request != null) {
			request.setAttribute(KNOWN, found.orElse(""), RequestAttributes.SCOPE_REQUEST);
		}
		return found;
	}

	/** An athlete's home club comes first, then those of posts. */
	private Optional<String> ofTheClub() {
		return this.current.id()
			.flatMap((person) -> this.jdbc
				.sql("""
						select c.emergency_number from club c join (
							select t.club_id, 1 as rank from membership m join team t on t.id = m.team_id
								where m.person_id = :person and m.left_at is null
							union all select p.club_id, 2 from post p where p.person_id = :person and p.ended_at is null) own
							on own.club_id = c.id
						where c.emergency_number is not null order by own.rank, c.id limit 1""")
				.param("person", person.value())
				.query(String.class)
				.optional());
	}

	/**
	 * The numbers that clubs chose.
	 * @param clubs which
	 * @return by club, without those that chose none
	 */
	public Map<UUID, String> of(Collection<UUID> clubs) {
		Map<UUID, String> numbers = new LinkedHashMap<>();
		this.jdbc.sql("select id, emergency_number from club where id = any (?) and emergency_number is not null")
			.param(clubs.toArray(UUID[]::new))
			.query((row) -> {
				numbers.put(row.getObject("id", UUID.class), row.getString("emergency_number"));
			});
		return numbers;
	}

	/**
	 * A typed number as it is dialled.
	 * @param typed digits, perhaps with spaces, hyphens or a + before them
	 * @return the digits; empty if they cannot be dialled
	 */
	public static Optional<String> dialled(String typed) {
		String digits = typed.replaceAll("[\\s\u00a0-]", "");
		return DIALLED.matcher(digits).matches() ? Optional.of(digits) : Optional.empty();
	}

	/**
	 * Chooses the number of a club of the signed-in owner.
	 * @param club which
	 * @param number as dialled; absent for none
	 */
	@Transactional
	public void choose(UUID club, @Nullable String number) {
		if (number != null && !DIALLED.matcher(number).matches()) {
			throw new IllegalArgumentException("no number to dial");
		}
		this.jdbc.sql("update club set emergency_number = ? where id = ? and id in (select fallow_clubs_owned())")
			.param(number)
			.param(club)
			.update();
	}

}
