package org.fallow.entry;

/**
 * A morning as it is read before its symptoms are: {@link FeltSymptoms#feltOn} puts them
 * to it.
 *
 * @param entry the entry, without symptoms
 * @param revision which of its day, from 1 on
 */
public record RevisedMorning(MorningEntry entry, int revision) {
}
