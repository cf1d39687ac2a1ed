package org.fallow.illness.core;

import java.time.LocalDate;

import org.fallow.entry.Method;
import org.fallow.entry.Posture;
import org.fallow.entry.Recorded;

/**
 * A clinician's own figure no longer holds.
 *
 * @param day the day it was recorded
 * @param recorded when it was recorded
 * @param method how the readings are taken
 * @param posture how the athlete is placed
 * @param reason why
 */
public record OwnFigureEnded(LocalDate day, Recorded recorded, Method method, Posture posture,
		String reason) implements IllnessEvent {
}
