/**
 * Signing in and out, and setting Fallow up.
 */
@NullMarked
package org.fallow.team.web;

import org.jspecify.annotations.NullMarked;
