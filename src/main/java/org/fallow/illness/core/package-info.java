/**
 * The fold from an athlete's facts to a day's assessment: episodes, gates, stages, holds
 * and clearances. Pure: no clock, database, locale or chance.
 */
@NullMarked
@NamedInterface("core")
package org.fallow.illness.core;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
