package org.fallow.rules;

/**
 * The return paths, shortest first; a path only ever changes to a later one.
 */
public enum PathName {

	VACCINATION, SHORT, STOMACH, THREE_WEEK, LONG

}
