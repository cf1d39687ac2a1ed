package org.fallow.entry;

/**
 * Why an athlete is away for other reasons than illness.
 */
public enum AbsenceKind {

	INJURY, HOLIDAY, OTHER

}
