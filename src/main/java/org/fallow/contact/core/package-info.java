/**
 * Who needs a word, in which order and why. Pure: no clock, database, locale or chance.
 */
@NullMarked
@NamedInterface("core")
package org.fallow.contact.core;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
