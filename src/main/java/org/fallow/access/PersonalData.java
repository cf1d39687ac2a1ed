package org.fallow.access;

import java.util.List;

/**
 * What a module keeps about people: one bean a module. Whoever hands a person their data,
 * or erases it, asks every such bean and so reaches what modules added since keep; a
 * table that points at a person and that no bean names fails the build.
 */
@FunctionalInterface
public interface PersonalData {

	/**
	 * The tables of this module that hold data of people.
	 * @return in an order in which rows may be taken away: what points at another table
	 * comes before it
	 */
	List<PersonalTable> tables();

}
