/**
 * What is answered when a page cannot be: one id for the person and for the log.
 */
@NullMarked
package org.fallow.platform.web;

import org.jspecify.annotations.NullMarked;
