/**
 * How fast a replay is and how much memory it takes, measured from outside. Start from
 * {@link dropline.scenarios.bench.Benchmarks}; no test runs it and no test asserts a time.
 */
@NullMarked
package dropline.scenarios.bench;

import org.jspecify.annotations.NullMarked;
