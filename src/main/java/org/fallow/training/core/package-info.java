/**
 * Programmes and what becomes of a session for an athlete who is ill or on the way back;
 * ceilings, loads, endurance minutes. Pure: no clock, database, locale or chance.
 */
@NullMarked
@NamedInterface("core")
package org.fallow.training.core;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
