package org.fallow.account;

import java.time.LocalDate;

import org.fallow.team.Basis;
import org.fallow.team.Consent;
import org.jspecify.annotations.Nullable;

/**
 * That data of an athlete are kept who has not agreed yet.
 *
 * @param said what was noted, and by whom
 * @param since the day, in the athlete's zone
 */
public record OnFile(Consent said, LocalDate since) {

	/**
	 * On whose word.
	 * @return the name of a {@link Basis}, or of the kind of what was noted
	 */
	public String word() {
		Basis basis = this.said.basis();
		return (basis != null) ? basis.name() : this.said.kind().name();
	}

	/**
	 * Which guardian's.
	 * @return the name; absent if none was named
	 */
	public @Nullable String guardian() {
		return this.said.guardian();
	}

}
