/**
 * The athlete's forms: morning entry and session log.
 */
@NullMarked
package org.fallow.entry.web;

import org.jspecify.annotations.NullMarked;
