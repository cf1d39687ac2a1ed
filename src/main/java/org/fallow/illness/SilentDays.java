package org.fallow.illness;

import java.util.List;

import org.fallow.access.CurrentPerson;
import org.fallow.access.Purpose;
import org.fallow.entry.Recording;
import org.fallow.team.Athlete;
import org.fallow.team.Squad;
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

	private static final Logger log = LoggerFactory.getLogger(SilentDays.class);

	private final Squad squad;

	private final Assessments assessments;

	private final Recording recording;

	SilentDays(Squad squad, Assessments assessments, Recording recording) {
		this.squad = squad;
		this.assessments = assessments;
		this.recording = recording;
	}

	/**
	 * Brings each athlete to the local today, as that athlete, each in a transaction of
	 * its own.
	 */
	@Scheduled(initialDelayString = "PT1M", fixedDelayString = "PT15M")
	void bringEveryoneToToday() {
		for (Athlete athlete : Purpose.OPERATION.call(this.squad::everyone)) {
			try {
				CurrentPerson.runAs(athlete.id(),
						() -> this.assessments.bringUpTo(List.of(athlete.id()), this.recording.today(athlete)));
			}
			catch (RuntimeException ex) {
				log.error("The silent days of athlete {} could not be decided", athlete.id(), ex);
			}
		}
	}

}
