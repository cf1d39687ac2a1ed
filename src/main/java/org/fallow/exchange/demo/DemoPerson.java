package org.fallow.exchange.demo;

import java.time.LocalDate;

/**
 * One invented athlete.
 *
 * @param code names the athlete in all demo files
 * @param name invented
 * @param birthDate invented, moved like every other day
 * @param group training group
 */
record DemoPerson(String code, String name, LocalDate birthDate, String group) {
}
