package org.fallow.illness;

import java.time.LocalDate;

import org.fallow.rules.Clearance;
import org.jspecify.annotations.Nullable;

/**
 * A clinician's clearance as a coach records it.
 *
 * @param from first day it covers, never before today
 * @param until last day it covers, inclusive; absent when open
 * @param ceiling the most the clinician allows: REST, EASY_ONLY or FULL_TRAINING
 * @param who the clinician's name
 * @param role the clinician's role
 * @param note the clinician's words
 */
public record NewClearance(LocalDate from, @Nullable LocalDate until, Clearance ceiling, String who, String role,
		@Nullable String note) {
}
