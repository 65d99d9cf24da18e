/** What a person types, what they read, and the exit code. */
@NullMarked
package dropline.harness.cli;

import org.jspecify.annotations.NullMarked;
