/**
 * Who is asking: people's ids, the current person, and the database told about them.
 */
@NullMarked
package org.fallow.access;

import org.jspecify.annotations.NullMarked;
