package org.fallow.platform;

import java.util.Objects;

import org.junit.jupiter.api.Test;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.session.Session;
import org.springframework.session.SessionRepository;

import static org.assertj.core.api.Assertions.assertThat;

/** Two pages of one session that are asked for at the same time. */
@DatabaseTest
class SessionsAtOnceTests {

	@Autowired
	private SessionRepository<? extends Session> sessions;

	@Test
	void mayBothBeTheFirstToKeepSomething() {
		keepBoth(this.sessions);
	}

	private static <S extends Session> void keepBoth(SessionRepository<S> sessions) {
		S begun = sessions.createSession();
		sessions.save(begun);
		S one = Objects.requireNonNull(sessions.findById(begun.getId()));
		S other = Objects.requireNonNull(sessions.findById(begun.getId()));
		one.setAttribute("token", "one");
		other.setAttribute("token", "other");
		sessions.save(one);
		sessions.save(other);
		assertThat((String) Objects.requireNonNull(sessions.findById(begun.getId())).getAttribute("token"))
			.isEqualTo("other");
	}

}
