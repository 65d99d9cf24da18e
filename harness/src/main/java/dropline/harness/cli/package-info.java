/**
 * The command line: what a person types, what they read, and the exit code. Start from
 * {@link dropline.harness.cli.Main}. The only place that prints or ends the process; it computes nothing about a bus.
 */
@NullMarked
package dropline.harness.cli;

import org.jspecify.annotations.NullMarked;
