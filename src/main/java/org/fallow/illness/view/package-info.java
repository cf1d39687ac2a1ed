/**
 * A day's assessment as pages read it: codes and values, no sentences and no decisions.
 */
@NullMarked
@NamedInterface("view")
package org.fallow.illness.view;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
