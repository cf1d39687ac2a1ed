/** Tests of signing in and setting up. */
@NullMarked
package org.fallow.team.web;

import org.jspecify.annotations.NullMarked;
