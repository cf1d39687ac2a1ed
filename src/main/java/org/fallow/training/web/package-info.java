/** Pages of programmes and of what an athlete does of them. */
@NullMarked
package org.fallow.training.web;

import org.jspecify.annotations.NullMarked;
