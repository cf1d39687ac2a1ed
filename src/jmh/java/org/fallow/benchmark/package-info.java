/**
 * Benchmarks, run by hand with {@code -Pbenchmarks}: each measures Fallow and what one
 * would use instead in one run on the same data and tells the ratio. No build runs them
 * and none of them fails for being slow. docs/performance.md has the results.
 */
package org.fallow.benchmark;
