/**
 * The invented demo squad: reads its files and loads them in the profile {@code demo}.
 */
@NullMarked
package org.fallow.exchange.demo;

import org.jspecify.annotations.NullMarked;
