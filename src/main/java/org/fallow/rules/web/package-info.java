/**
 * Pages of rule sets: versions, drafts and their adoption.
 */
@NullMarked
package org.fallow.rules.web;

import org.jspecify.annotations.NullMarked;
