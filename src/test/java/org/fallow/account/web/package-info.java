/** Tests of signing in and setting up. */
@NullMarked
package org.fallow.account.web;

import org.jspecify.annotations.NullMarked;
