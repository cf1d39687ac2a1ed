package org.fallow.exchange.demo;

import java.time.LocalDate;

import org.fallow.rules.Intensity;

/**
 * One invented session, all of them runs without complaints.
 *
 * @param person code of the athlete
 * @param recorded day it became known
 * @param day day it was run
 * @param minutes duration
 * @param rpe session RPE, CR-10
 * @param intensity highest intensity
 */
record DemoSession(String person, LocalDate recorded, LocalDate day, int minutes, double rpe, Intensity intensity) {
}
