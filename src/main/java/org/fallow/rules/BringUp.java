package org.fallow.rules;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import org.fallow.access.Purpose;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;
import org.fallow.team.Today;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * After an upgrade: a rule set of the first rule text that decides today, or is to decide
 * later, goes on as a new version of its team from the next day, or from its own day.
 * What was decided before stays as it is stored.
 */
@Component
class BringUp {

	private static final Logger log = LoggerFactory.getLogger(BringUp.class);

	private final RuleSets ruleSets;

	private final DraftRows rows;

	private final Squad squad;

	private final TransactionTemplate transactions;

	private final Today today;

	private final Clock clock;

	BringUp(RuleSets ruleSets, DraftRows rows, Squad squad, PlatformTransactionManager transactions, Today today,
			Clock clock) {
		this.ruleSets = ruleSets;
		this.rows = rows;
		this.squad = squad;
		this.transactions = new TransactionTemplate(transactions);
		this.today = today;
		this.clock = clock;
	}

	/** Each team by itself: one whose text cannot be read keeps no other from it. */
	@EventListener(ApplicationReadyEvent.class)
	void bringUp() {
		Purpose.OPERATION.run(() -> {
			for (UUID team : this.ruleSets.teamsWithTheFirstText()) {
				try {
					this.transactions.executeWithoutResult((status) -> bringUp(team));
				}
				catch (RuntimeException ex) {
					log.error("The rule sets of team {} could not be brought up to the present rule text", team, ex);
				}
			}
		});
	}

	private void bringUp(UUID team) {
		this.rows.lockTeam(team);
		LocalDate next = nextDay(team);
		List<RuleVersion> versions = this.ruleSets.versionsOf(team);
		String decides = this.ruleSets.bookOf(team).on(next).hash();
		RuleVersion now = versions.stream()
			.filter((one) -> one.hash().equals(decides) && !one.effectiveFrom().isAfter(next))
			.findFirst()
			.orElseThrow();
		Instant at = this.clock.instant().truncatedTo(ChronoUnit.MICROS);
		versions.stream()
			.filter((one) -> one.firstText() && (one == now || one.effectiveFrom().isAfter(next)))
			.filter((one) -> versions.stream().noneMatch((v) -> Integer.valueOf(one.version()).equals(v.becameOf())))
			.sorted(Comparator.comparing(RuleVersion::effectiveFrom).thenComparing(RuleVersion::version))
			.forEach((one) -> this.ruleSets.addInstead(one, (one == now) ? next : one.effectiveFrom(), at));
	}

	/** The day after the latest today of any athlete whose home the team is. */
	private LocalDate nextDay(UUID team) {
		Stream<LocalDate> todays = this.squad.everyone()
			.stream()
			.filter((athlete) -> athlete.teamId().equals(team))
			.map(this.today::of);
		return Stream.concat(todays, Stream.of(this.today.ofTeam(team)))
			.max(Comparator.naturalOrder())
			.orElseThrow()
			.plusDays(1);
	}

}
