/**
 * Tests of the platform, and the database that every other module's tests run on.
 */
@NullMarked
package org.fallow.platform;

import org.jspecify.annotations.NullMarked;
