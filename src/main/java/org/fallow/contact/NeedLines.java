package org.fallow.contact;

import java.util.List;

import org.fallow.contact.core.MarkState;

/**
 * The worklist as pages show it.
 *
 * @param open who needs a word, the most urgent first
 * @param off what a mark of the last days took off the list, the newest mark first
 */
public record NeedLines(List<NeedLine> open, List<NeedLine> off) {

	/** How many lines are shown at once; the rest is folded away. */
	private static final int AT_ONCE = 5;

	/** Copies the lists. */
	public NeedLines {
		open = List.copyOf(open);
		off = List.copyOf(off);
	}

	/**
	 * The first lines of the list.
	 * @return those shown at once
	 */
	public List<NeedLine> first() {
		return this.open.subList(0, Math.min(AT_ONCE, this.open.size()));
	}

	/**
	 * The lines folded away.
	 * @return empty for a short list
	 */
	public List<NeedLine> rest() {
		return this.open.subList(Math.min(AT_ONCE, this.open.size()), this.open.size());
	}

	/**
	 * What coaches can say of a matter.
	 * @return in the order of buttons
	 */
	public List<MarkState> states() {
		return List.of(MarkState.values());
	}

}
