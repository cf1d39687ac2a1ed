package org.fallow.platform;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Says in the log, once for each change, how dear room on the home's disk has become. */
final class DiskLog {

	private static final Logger log = LoggerFactory.getLogger(DiskLog.class);

	private DiskRoom.Level told = DiskRoom.Level.ROOMY;

	void tell(DiskRoom room) {
		DiskRoom.Level level = room.level();
		if (level == this.told) {
			return;
		}
		this.told = level;
		switch (level) {
			case ROOMY -> log.info("The disk of the home has room again: {} MB are free", room.megabytes());
			case LOW -> log.warn("Less than 10 % of the disk of the home is free: {} MB", room.megabytes());
			case SHORT ->
				log.error("Less than 2 % of the disk of the home is free: {} MB; make room soon", room.megabytes());
			case FULL ->
				log.error("The disk of the home is full: {} MB are free; entries are refused until there is room",
						room.megabytes());
		}
	}

}
