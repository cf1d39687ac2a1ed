/**
 * The pages of imports.
 */
@NullMarked
package org.fallow.exchange.web;

import org.jspecify.annotations.NullMarked;
