/**
 * Tests of the import pages.
 */
@NullMarked
package org.fallow.exchange.web;

import org.jspecify.annotations.NullMarked;
