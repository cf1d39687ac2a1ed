/** Tests of signing in and setting up. */
@NullMarked
package org.fallow.training.web;

import org.jspecify.annotations.NullMarked;
