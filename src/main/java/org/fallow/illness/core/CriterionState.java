package org.fallow.illness.core;

/**
 * How a gate's criterion stands on a day.
 */
public enum CriterionState {

	/** Met. */
	MET,
	/** Not met: shuts the gate. */
	NOT_MET,
	/** Does not apply to this athlete or path: shuts nothing. */
	NOT_APPLICABLE,
	/** Cannot be told. Whether it shuts the gate is the criterion's own {@code shuts}. */
	NOT_AVAILABLE

}
