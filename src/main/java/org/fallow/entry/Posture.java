package org.fallow.entry;

/**
 * How the athlete was placed while measuring; readings of different postures are never
 * compared.
 */
public enum Posture {

	LYING, SITTING, STANDING

}
