package org.fallow.platform;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;

import org.springframework.context.annotation.Primary;

/**
 * A clock a test sets, for {@code @Import}. It stands still.
 */
@Primary
public class SettableClock extends Clock {

	private Instant instant = Instant.parse("2026-03-01T07:00:00Z");

	/**
	 * Sets the time.
	 * @param day civil day
	 * @param time local time
	 * @param zone where
	 */
	public void set(LocalDate day, LocalTime time, ZoneId zone) {
		this.instant = day.atTime(time).atZone(zone).toInstant();
	}

	/**
	 * Sets seven in the morning, UTC.
	 * @param day civil day
	 */
	public void set(LocalDate day) {
		set(day, LocalTime.of(7, 0), ZoneOffset.UTC);
	}

	/**
	 * Moves the time.
	 * @param by how far; back where negative
	 */
	public void advance(Duration by) {
		this.instant = this.instant.plus(by);
	}

	@Override
	public Instant instant() {
		return this.instant;
	}

	@Override
	public ZoneId getZone() {
		return ZoneOffset.UTC;
	}

	@Override
	public Clock withZone(ZoneId zone) {
		return Clock.fixed(this.instant, zone);
	}

}
