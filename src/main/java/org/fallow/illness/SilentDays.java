package org.fallow.illness;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

import org.fallow.access.CurrentPerson;
import org.fallow.access.PersonId;
import org.fallow.access.Purpose;
import org.fallow.entry.Recording;
import org.fallow.illness.BehindRows.Behind;
import org.fallow.platform.OneNode;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

import org.springframework.context.annotation.Configuration;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;

/**
 * Decides the days of which nobody enters anything, soon after each begins in the
 * athlete's zone.
 */
@Configuration(proxyBeanMethods = false)
@EnableScheduling
class SilentDays {

	/** How many athletes are asked for at once. */
	static final int AT_ONCE = 500;

	/** Stands for this work where nodes take turns; drawn once. */
	private static final long WORK = 5_604_727_318_200_391_264L;

	private static final Logger log = LoggerFactory.getLogger(SilentDays.class);

	private final BehindRows rows;

	private final Assessments assessments;

	private final Recording recording;

	private final OneNode oneNode;

	SilentDays(BehindRows rows, Assessments assessments, Recording recording, OneNode oneNode) {
		this.rows = rows;
		this.assessments = assessments;
		this.recording = recording;
		this.oneNode = oneNode;
	}

	/**
	 * Brings each athlete who is behind to the local today, as that athlete, each in a
	 * transaction of its own; nothing where another node is at it.
	 */
	@Scheduled(initialDelayString = "PT1M", fixedDelayString = "PT15M")
	void bringEveryoneToToday() {
		this.oneNode.tryToRun(WORK, this::bringThoseBehind);
	}

	private void bringThoseBehind() {
		SortedSet<PersonId> tried = new TreeSet<>((one, other) -> one.value().compareTo(other.value()));
		SortedSet<PersonId> leftOut = new TreeSet<>(tried.comparator());
		List<Behind> some = behind(leftOut);
		while (!some.isEmpty()) {
			for (Behind athlete : some) {
				if (!tried.add(athlete.athlete()) || !bringToToday(athlete)) {
					leftOut.add(athlete.athlete());
				}
			}
			some = behind(leftOut);
		}
	}

	private List<Behind> behind(SortedSet<PersonId> leftOut) {
		return Purpose.OPERATION.call(() -> {
			SortedMap<String, LocalDate> today = new TreeMap<>();
			for (String zone : this.rows.zones()) {
				try {
					today.put(zone, LocalDate.ofInstant(this.recording.now(), ZoneId.of(zone)));
				}
				catch (DateTimeException ex) {
					log.error("The silent days in zone {} cannot be decided", zone, ex);
				}
			}
			return this.rows.behind(today, leftOut, AT_ONCE);
		});
	}

	private boolean bringToToday(Behind athlete) {
		try {
			CurrentPerson.runAs(athlete.athlete(),
					() -> this.assessments.bringUpTo(List.of(athlete.athlete()), athlete.today()));
			return true;
		}
		catch (RuntimeException ex) {
			log.error("The silent days of athlete {} could not be decided", athlete.athlete(), ex);
			return false;
		}
	}

}
