package org.fallow.rules;

/**
 * Who wrote the definition of a return path. Its name, its source and its caution are
 * told by the message files, under {@code protocol.} and this name.
 */
public enum Protocol {

	/** Fallow's own definition, with the numbers of {@link DefaultRules}. */
	OURS,
	/** Elliott and others 2020, British Journal of Sports Medicine 54:1174. */
	ELLIOTT_2020,
	/** Salman and others 2021, BMJ 372:m4721. */
	SALMAN_2021

}
