/**
 * What every module rests on: the home folder, the database, the clock, sentences in the
 * reader's language, markup of long tables, work of one node at a time and a start that
 * fails in one sentence.
 */
@NullMarked
@ApplicationModule(allowedDependencies = { "access" })
package org.fallow.platform;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
