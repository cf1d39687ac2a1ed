/**
 * Signing in and out, and setting Fallow up.
 */
@NullMarked
package org.fallow.account.web;

import org.jspecify.annotations.NullMarked;
