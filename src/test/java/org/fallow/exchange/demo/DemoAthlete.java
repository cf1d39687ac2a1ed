package org.fallow.exchange.demo;

import java.time.LocalDate;

/**
 * One invented athlete of the demo squad and what is normal for them.
 *
 * @param code names the athlete in all files
 * @param name invented
 * @param birthDate invented
 * @param group training group
 * @param method code of how the pulse is taken
 * @param posture code of the posture
 * @param rhr usual resting heart rate, bpm; 0 for none measured
 * @param rhrSd day-to-day standard deviation, bpm
 * @param rmssd usual RMSSD, ms; 0 for none measured
 * @param lnSd day-to-day standard deviation of ln RMSSD
 * @param story what happens to them
 */
record DemoAthlete(String code, String name, LocalDate birthDate, String group, String method, String posture, int rhr,
		double rhrSd, int rmssd, double lnSd, String story) {
}
