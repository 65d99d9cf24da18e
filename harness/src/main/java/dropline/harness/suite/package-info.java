/**
 * A suite: the runs that a pit must stand, written once and repeated after every change. Start from
 * {@link dropline.harness.suite.SuiteFile}, which reads one, and {@link dropline.harness.suite.Holds}, which says what
 * a run is held to. Runs nothing and prints nothing.
 */
@NullMarked
package dropline.harness.suite;

import org.jspecify.annotations.NullMarked;
