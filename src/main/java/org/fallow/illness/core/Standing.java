package org.fallow.illness.core;

import java.time.LocalDate;

/**
 * Since when a criterion of the next gate stands as it does.
 *
 * @param code which criterion
 * @param state how it stands
 * @param since first day of the unbroken run of days on which it stood so
 */
public record Standing(String code, CriterionState state, LocalDate since) {
}
