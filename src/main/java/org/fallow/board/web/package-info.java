/**
 * The board's pages.
 */
@NullMarked
package org.fallow.board.web;

import org.jspecify.annotations.NullMarked;
