/**
 * Imports of files of mornings: the job, its staged rows and its summary.
 */
@NullMarked
package org.fallow.exchange.imports;

import org.jspecify.annotations.NullMarked;
