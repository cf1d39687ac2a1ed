package org.fallow.entry;

import java.time.LocalDate;

/**
 * A rate-lowering medicine (a beta blocker, for example) begun or stopped. Readings with
 * and without it are different series.
 *
 * @param day the first day with, or without, the medicine
 * @param recorded when it became known
 * @param on true when begun, false when stopped
 */
public record MedicineChange(LocalDate day, Recorded recorded, boolean on) implements Fact {
}
