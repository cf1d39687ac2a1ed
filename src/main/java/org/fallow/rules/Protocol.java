package org.fallow.rules;

/**
 * Who wrote the definition of a return path. Its name, its source and its caution are
 * told by the message files, under {@code protocol.} and this name.
 */
public enum Protocol {

	/** Fallow's own definition, with the numbers of {@link DefaultRules}. */
	OURS(PathName.VACCINATION),
	/** Elliott and others 2020, British Journal of Sports Medicine 54:1174. */
	ELLIOTT_2020(PathName.LONG),
	/** Salman and others 2021, BMJ 372:m4721. */
	SALMAN_2021(PathName.THREE_WEEK);

	private final PathName shortest;

	Protocol(PathName shortest) {
		this.shortest = shortest;
	}

	/**
	 * Whether a path may follow it. Elliott 2020 takes six days from the first stage to
	 * full training, fewer than ours for the three-week path, so it is for the long one
	 * only (the safer reading).
	 * @param path the path
	 * @return true if so
	 */
	public boolean mayDefine(PathName path) {
		return path.compareTo(this.shortest) >= 0;
	}

}
