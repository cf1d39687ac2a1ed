package org.fallow.rules;

import java.time.LocalDate;
import java.util.List;

import org.junit.jupiter.api.Test;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

class RuleBookTest {

	private static final LocalDate MAY = LocalDate.of(2026, 5, 1);

	private static final LocalDate JUNE = LocalDate.of(2026, 6, 1);

	private static RuleBook.Entry entry(LocalDate from, String hash) {
		return new RuleBook.Entry(from, hash, DefaultRules.ruleSet());
	}

	@Test
	void takesARuleSetFromItsDayOn() {
		RuleBook book = new RuleBook(List.of(entry(MAY, "first"), entry(JUNE, "second")));
		assertThat(book.on(MAY.minusDays(1)).hash()).as("before the first one's day").isEqualTo("first");
		assertThat(book.on(JUNE.minusDays(1)).hash()).isEqualTo("first");
		assertThat(book.on(JUNE).hash()).isEqualTo("second");
		assertThat(book.on(JUNE.plusYears(300)).hash()).isEqualTo("second");
	}

	@Test
	void findsTheRuleSetAnEpisodeKeeps() {
		RuleBook book = new RuleBook(List.of(entry(MAY, "first"), entry(JUNE, "second")));
		assertThat(book.ofHash("first").from()).isEqualTo(MAY);
		assertThatIllegalArgumentException().isThrownBy(() -> book.ofHash("third")).withMessageContaining("third");
	}

	@Test
	void refusesABookThatIsEmptyOrOutOfOrder() {
		assertThatIllegalArgumentException().isThrownBy(() -> new RuleBook(List.of()));
		assertThatIllegalArgumentException()
			.isThrownBy(() -> new RuleBook(List.of(entry(JUNE, "second"), entry(MAY, "first"))));
		assertThat(new RuleBook(List.of(entry(MAY, "first"), entry(MAY, "again"))).on(MAY).hash()).isEqualTo("again");
	}

	/**
	 * ACSM, Garber 2011, MSSE 43:1334 (R): moderate is 64 to 76 % of HRmax, vigorous 77
	 * to 95. Stage 1 stays within moderate, Stage 2 below the middle of vigorous.
	 */
	@Test
	void keepsTheFirstStagesBelowTheMiddleOfVigorous() {
		for (RuleSet.Path path : DefaultRules.ruleSet().paths()) {
			assertThat(path.stages().get(0).heartRateCeiling()).as(path.name().name()).isLessThanOrEqualTo(0.76);
			assertThat(path.stages().get(1).heartRateCeiling()).as(path.name().name()).isLessThan((0.77 + 0.95) / 2);
		}
	}

}
