package org.fallow.entry;

/**
 * How bad a symptom is, in the athlete's own judgement, mildest first.
 */
public enum Severity {

	MILD, MODERATE, SEVERE

}
