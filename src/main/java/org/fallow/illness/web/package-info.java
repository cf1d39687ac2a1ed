/**
 * Pages of an athlete's day, illness and return, and of what coaches record about them.
 */
@NullMarked
package org.fallow.illness.web;

import org.jspecify.annotations.NullMarked;
